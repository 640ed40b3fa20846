package firstamp.run;

import firstamp.model.PedalJob;
import firstamp.protocol.codes.PressKind;

/**
 * What a press of the probe box's own pedal makes the host do, by the one job chosen for the run.
 * Nothing else: no press ever switches on, answers, acknowledges or continues.
 */
enum BoxPedal {
  NOTHING,
  OFF,
  MARK;

  /**
   * What follows from a press.
   *
   * @param mayClose the switch is not closed yet, and will be: any press stops that
   */
  static BoxPedal of(PedalJob job, PressKind kind, boolean mayClose) {
    return switch (job) {
      case OFF -> OFF;
      // A foot that goes down is on its way to holding; what comes up again is OFF.
      case HOLD_TO_RUN -> kind == PressKind.TAP ? OFF : NOTHING;
      case MARK ->
          mayClose || kind == PressKind.HELD ? OFF : kind == PressKind.TAP ? MARK : NOTHING;
    };
  }
}
