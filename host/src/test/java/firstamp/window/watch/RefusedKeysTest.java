package firstamp.window.watch;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Hearing;
import firstamp.bench.Snapshot;
import firstamp.model.text.Worded;
import firstamp.window.FakeSession;
import firstamp.window.present.BenchPresenter;
import firstamp.window.present.BenchView;
import firstamp.window.watch.RefusedKeys.Key;
import firstamp.window.watch.RefusedKeys.Strips;
import firstamp.window.words.Words;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RefusedKeysTest {
  private final RefusedKeys english = new RefusedKeys(new Words(Locale.ENGLISH));

  private static RefusedKeys.State state(FakeSession.Scene scene) {
    return state(new FakeSession(scene).snapshot(), null);
  }

  private static RefusedKeys.State state(Snapshot now, Worded awake) {
    BenchView view = new BenchPresenter(Locale.ENGLISH).view(now, awake);
    return new RefusedKeys.State(
        now,
        view,
        !view.questions().isEmpty(),
        view.questions().isEmpty() ? Strips.WITH_LIMIT : Strips.HIDDEN,
        false,
        false,
        now.phase() == Snapshot.Phase.ENDED || now.kind() == Snapshot.Kind.REPLAY,
        Hearing.State.HEARD,
        awake);
  }

  private Set<Key> refused(RefusedKeys.State state) {
    return Arrays.stream(Key.values())
        .filter(key -> english.why(key, state) != null)
        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Key.class)));
  }

  @Test
  void whileOnWhatBelongsToAnEndToAReplayOrToAnotherSheetIsRefused() {
    assertThat(refused(state(FakeSession.Scene.HEALTHY)))
        .containsExactlyInAnyOrder(
            Key.SEARCH,
            Key.WIRES,
            Key.WHAT_IF,
            Key.RESTORE,
            Key.NOTES,
            Key.PICTURE,
            Key.MORE,
            Key.RESULT,
            Key.REPLAY,
            Key.ANSWER);
  }

  @Test
  void beforeItIsOnNoModeIsOffered() {
    assertThat(refused(state(FakeSession.Scene.ASKING)))
        .contains(Key.HANDS_IN, Key.SOAK, Key.LIMIT, Key.RESULT)
        .doesNotContain(Key.OFF, Key.SOUND);
  }

  @Test
  void onceItIsOverTheResultAndWordsAreThere() {
    assertThat(refused(state(FakeSession.Scene.OVER)))
        .contains(Key.OFF, Key.HANDS_IN, Key.SOAK, Key.RESTORE)
        .doesNotContain(Key.RESULT, Key.NOTES, Key.MARK, Key.SAY);
  }

  @Test
  void aReplayChangesNothing() {
    assertThat(refused(state(FakeSession.Scene.REPLAY)))
        .contains(Key.HANDS_IN, Key.SOAK, Key.SAY, Key.WHAT_IF, Key.RESTORE)
        .doesNotContain(Key.OFF, Key.REPLAY, Key.MARK, Key.LIMIT);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "HEALTHY | SEARCH   | The job sheet gives no signal path to search.",
        "HEALTHY | WIRES    | The job sheet lists no wire whose place is unknown.",
        "HEALTHY | WHAT_IF  | This key belongs to a replay.",
        "HEALTHY | RESTORE  | R switches on again after the set has switched itself off. It has not.",
        "HEALTHY | NOTES    | Words for marks are typed once the set is off.",
        "HEALTHY | RESULT   | The result is there once the power-up is over.",
        "ASKING  | LIMIT    | First answer the question: 1 is yes, 0 is no.",
        "ASKING  | HANDS_IN | \u201cHands in\u201d is for a set that is on.",
        "ASKING  | SOAK     | Soak is for a set that is on.",
        "OVER    | OFF      | The set is already switched off.",
        "OVER    | SOAK     | Soak is for a set that is on.",
        "REPLAY  | SAY      | Not in a replay: what was logged stays as it is.",
      })
  void aReasonIsASentence(FakeSession.Scene scene, Key key, String said) {
    assertThat(english.why(key, state(scene))).isEqualTo(said);
  }

  @Test
  void inAReplayItIsSaidWhatACompareNeeds() {
    assertThat(english.why(Key.WHAT_IF, state(FakeSession.Scene.REPLAY)))
        .startsWith("Nothing to compare yet: L selects a limit, Up and Down move it, 1 calc");
  }

  @Test
  void noSetIsLeftAloneByAComputerThatMayFallAsleepWhateverIsTicked() {
    Snapshot on = new FakeSession(FakeSession.Scene.HEALTHY).snapshot();
    assertThat(english.why(Key.SOAK, state(on, null))).isNull();
    assertThat(english.why(Key.SOAK, state(on, Worded.asIs("On this system ..."))))
        .isEqualTo("No unattended running while the computer may fall asleep. On this system ...");
    assertThat(
            new RefusedKeys(new Words(Locale.GERMAN))
                .why(Key.SOAK, state(on, Worded.asIs("Auf diesem System ..."))))
        .isEqualTo(
            "Kein Dauerlauf ohne Aufsicht, solange der Rechner einschlafen kann."
                + " Auf diesem System ...");
  }

  @Test
  void everyReasonIsThereInBothLanguages() {
    RefusedKeys german = new RefusedKeys(new Words(Locale.GERMAN));
    for (FakeSession.Scene scene : FakeSession.Scene.values()) {
      RefusedKeys.State state = state(scene);
      for (Key key : Key.values()) {
        String said = english.why(key, state);
        if (said != null) {
          assertThat(german.why(key, state)).as("%s %s", scene, key).isNotEqualTo(said);
        }
      }
    }
  }
}
