package firstamp.locate.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Spread over 3 dB or a trend says dirty contact: common practice, no source. */
class ContactRunTest {
  @Test
  void spreadOverThreeDecibelsIsADirtyContact() {
    assertThat(ContactRun.strokes("S", List.of(-20.0, -16.9, -18.0)).unsteady()).isTrue();
    assertThat(ContactRun.strokes("S", List.of(-20.0, -17.1, -18.0)).unsteady()).isFalse();
  }

  @Test
  void aTrendIsADirtyContactToo() {
    ContactRun run = ContactRun.strokes("S", List.of(-20.0, -19.6, -19.1, -18.7, -18.2, -17.8));
    assertThat(run.unsteady()).isTrue();
    assertThat(run.sentence().english()).contains("one way");
    assertThat(
            ContactRun.strokes("S", List.of(-20.0, -18.5, -20.1, -18.6, -20.0, -18.4)).unsteady())
        .isFalse();
  }

  @Test
  void touchingMustMoveTheLevelMoreThanItMovesAlone() {
    assertThat(ContactRun.taps("J", List.of(-20.0, -20.3), List.of(-35.0)).unsteady()).isTrue();
    assertThat(ContactRun.taps("J", List.of(-20.0, -32.0), List.of(-35.0)).unsteady()).isFalse();
    assertThat(ContactRun.taps("J", List.of(-20.0, -20.3), List.of(-20.5)).factor()).isLessThan(1);
  }

  @Test
  void needsThreeStrokes() {
    assertThatThrownBy(() -> ContactRun.strokes("S", List.of(-20.0, -10.0)))
        .hasMessageContaining("3 figures");
  }
}
