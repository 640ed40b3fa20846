package firstamp.cli;

import firstamp.model.OffCause;

/** Words of the command line for what happened in a run. */
final class RunWords {
  private RunWords() {}

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
