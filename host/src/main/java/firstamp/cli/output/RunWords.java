package firstamp.cli.output;

import firstamp.model.ClipMove;
import firstamp.model.Happening;
import firstamp.model.OffCause;

/** Words of the command line for what happened in a run. */
final class RunWords {
  private RunWords() {}

  /** What was done, in words. */
  static String happened(Happening what) {
    if (!(what instanceof ClipMove move)) {
      return what instanceof Happening.SetChanged
          ? "changed: " + what.words()
          : what instanceof Happening.LoadStarted ? "started: " + what.words() : what.words();
    }
    String name = move.name() + (move.mode() == null ? "" : " in " + move.mode());
    String by = move.input() == null ? "" : ", " + move.input().words();
    return switch (move.act()) {
      case HELD -> "clip on " + name + by;
      case OFF -> "clip off";
      case THERE -> "signal there at " + name;
      case GONE -> "signal gone at " + name;
      case TYPED -> "level at " + name + ": " + move.levelDbv() + " dBV";
      case BACK -> "last observation taken back";
      case STROKE -> "contact worked: " + name;
      case RESTING -> "clip rests behind " + name;
      case TOUCHED -> "tapping";
      case LEFT -> "tapping ended";
      case MENDED -> "mended: " + name;
    };
  }

  /** Who switched off; null where nothing was on (a look that did not let the switch close). */
  static String offBy(OffCause by) {
    return switch (by) {
      case USER -> "user";
      case RULE -> "rule";
      case TIME -> "time";
      case SIGNAL -> "signal";
      case BUTTON, PEDAL -> "button";
      case TRIP, SILENCE -> "trip";
      case CHASSIS -> "chassis";
      case START -> "reset";
      case LOOK -> null;
    };
  }
}
