package firstamp.window.watch;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.bench.Snapshot;
import firstamp.window.ChangedSnapshot;
import firstamp.window.FakeSession;
import firstamp.window.HandTime;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A mark and the word that a digit gives it. */
class MarkHandTest {
  private final HandTime time = new HandTime();
  private final FakeSession session = new FakeSession(FakeSession.Scene.HEALTHY);
  private final MarkHand hand = new MarkHand(time, new Words(Locale.ENGLISH));

  /** The session has taken the mark. */
  private void taken() throws Exception {
    List<Snapshot.Mark> marks = new ArrayList<>(session.snapshot().marks());
    marks.add(new Snapshot.Mark(9_000, ""));
    session.set(ChangedSnapshot.of(session.snapshot(), Map.of("marks", marks)));
  }

  @Test
  void theDigitGivesTheWordOnceTheMarkHasItsNumber() throws Exception {
    hand.put(session);
    assertThat(hand.word(4)).isTrue();
    assertThat(session.wishes).containsExactly("mark ");
    taken();
    hand.follow();
    assertThat(session.wishes).containsExactly("mark ", "note 3 hum");
    assertThat(hand.word(4)).as("once").isFalse();
  }

  @Test
  void noDigitIsTakenWithoutAMarkOrLongAfterIt() throws Exception {
    assertThat(hand.word(1)).isFalse();
    hand.put(session);
    time.pass(10_100);
    assertThat(hand.word(1)).isFalse();
    assertThat(hand.says()).isNull();
  }

  @Test
  void saysAllNineWords() {
    for (Locale locale : Words.LANGUAGES) {
      MarkHand other = new MarkHand(time, new Words(locale));
      other.put(session);
      for (int number = 1; number <= 9; number++) {
        assertThat(other.says()).contains(number + "\u00a0");
      }
    }
  }
}
