package firstamp.window.watch;

import firstamp.app.Hearing;
import firstamp.bench.Snapshot;
import firstamp.locate.SheetPath;
import firstamp.model.text.Worded;
import firstamp.run.Soak;
import firstamp.window.present.BenchView;
import firstamp.window.present.ModePresenter;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;

/** Why a key of the watching page can do nothing now, in words. Without state. */
final class RefusedKeys {
  private final Words words;
  private final Spoken spoken;

  /** What a key is for. */
  enum Key {
    OFF,
    SEARCH,
    WIRES,
    WHAT_IF,
    LIMIT,
    HANDS_IN,
    SOAK,
    RESTORE,
    MARK,
    SAY,
    SOUND,
    NOTES,
    PICTURE,
    MORE,
    RESULT,
    REPLAY,
    ANSWER
  }

  /**
   * What there is to act on.
   *
   * @param view of the snapshot
   * @param asked whether a question is shown
   * @param strips whether they are shown, and with a limit that can be moved
   * @param pictures whether there is another picture than the strips
   * @param beside whether two courses stand side by side
   * @param over whether it is over
   * @param sound what is heard
   * @param awake why the computer may fall asleep, null = it is kept awake
   */
  record State(
      Snapshot now,
      BenchView view,
      boolean asked,
      Strips strips,
      boolean pictures,
      boolean beside,
      boolean over,
      Hearing.State sound,
      Worded awake) {
    private boolean replay() {
      return now.kind() == Snapshot.Kind.REPLAY;
    }
  }

  /** What the strips offer. */
  enum Strips {
    HIDDEN,
    WITHOUT_LIMIT,
    WITH_LIMIT
  }

  RefusedKeys(Words words) {
    this.words = words;
    spoken = new Spoken(words.locale());
  }

  /** In a sentence; null = the key does what it is for. */
  String why(Key key, State state) {
    String end = reason(key, state);
    if (end != null) {
      return words.get("refused." + end);
    }
    return key == Key.SOAK ? notAlone(state) : null;
  }

  /** Said before anything is ticked: what is ticked keeps no computer awake. */
  private String notAlone(State state) {
    Worded against = Soak.refused(state.now().sheet(), state.awake());
    return against == null ? null : spoken.say(against);
  }

  /** End of the name of the words, null = nothing is against it. */
  private static String reason(Key key, State state) {
    return switch (key) {
      case OFF -> state.view().controls().off() || state.replay() ? null : "off";
      case SEARCH -> SheetPath.hasPath(state.now().sheet()) ? null : "search";
      case WIRES -> state.now().sheet().unknownWires().isEmpty() ? "wires" : null;
      case WHAT_IF -> !state.replay() ? "onlyReplay" : state.beside() ? null : "whatIf";
      case LIMIT ->
          switch (state.strips()) {
            case HIDDEN -> state.asked() ? "asked" : "limitHidden";
            case WITHOUT_LIMIT -> "limit";
            case WITH_LIMIT -> null;
          };
      case HANDS_IN -> notOn(state, "handsIn");
      case SOAK -> notOn(state, "soak");
      case RESTORE -> state.view().controls().restore() == null ? restore(state) : null;
      case MARK -> state.view().controls().mark() ? null : "mark";
      case SAY -> state.replay() ? "notReplay" : state.view().controls().mark() ? null : "mark";
      case SOUND -> sound(state.sound());
      case NOTES ->
          state.view().controls().off()
              ? "notesOn"
              : state.now().marks().isEmpty() ? "notes" : null;
      case PICTURE -> state.pictures() ? null : "picture";
      case MORE -> state.view().folded().isEmpty() ? "more" : null;
      case RESULT -> state.asked() ? "asked" : state.over() ? null : "result";
      case REPLAY -> state.replay() ? null : "onlyReplay";
      case ANSWER -> state.asked() ? "asked" : "answer";
    };
  }

  private static String notOn(State state, String otherwise) {
    return state.replay() ? "notReplay" : ModePresenter.offered(state.now()) ? null : otherwise;
  }

  private static String restore(State state) {
    return state.replay() ? "notReplay" : "restore";
  }

  private static String sound(Hearing.State state) {
    return switch (state) {
      case HEARD, MUTED -> null;
      case NOTHING -> "soundReplay";
      case NOT_WANTED -> "soundNotWanted";
      case NO_DEVICE -> "soundNoDevice";
    };
  }
}
