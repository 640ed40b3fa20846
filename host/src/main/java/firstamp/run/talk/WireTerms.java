package firstamp.run.talk;

import firstamp.model.OffCause;
import firstamp.model.PedalJob;
import firstamp.model.SwitchState;
import firstamp.model.samples.Calibration;
import firstamp.protocol.codes.CalibrationState;
import firstamp.protocol.codes.PedalDuty;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.SwitchCause;

/**
 * The terms of the wire in the host's own, each by name: neither side's order means anything, and a
 * new term does not compile until it has its line here.
 */
public final class WireTerms {
  private WireTerms() {}

  public static SwitchState state(ProbeState state) {
    return switch (state) {
      case OFF -> SwitchState.OFF;
      case CHECK -> SwitchState.CHECK;
      case LOOK -> SwitchState.LOOK;
      case ON -> SwitchState.ON;
      case TRIPPED -> SwitchState.TRIPPED;
    };
  }

  static OffCause cause(SwitchCause cause) {
    return switch (cause) {
      case START -> OffCause.START;
      case USER -> OffCause.USER;
      case RULE -> OffCause.RULE;
      case TIME -> OffCause.TIME;
      case SIGNAL -> OffCause.SIGNAL;
      case BUTTON -> OffCause.BUTTON;
      case PEDAL -> OffCause.PEDAL;
      case TRIP -> OffCause.TRIP;
      case LOOK -> OffCause.LOOK;
      case CHASSIS_CLIP -> OffCause.CHASSIS;
      case HOST_SILENCE -> OffCause.SILENCE;
    };
  }

  public static Calibration.Kind calibration(CalibrationState state) {
    return switch (state) {
      case BLANK -> Calibration.Kind.BLANK;
      case VALID -> Calibration.Kind.VALID;
      case DAMAGED -> Calibration.Kind.DAMAGED;
    };
  }

  public static PedalDuty pedal(PedalJob job) {
    return switch (job) {
      case OFF -> PedalDuty.OFF;
      case HOLD_TO_RUN -> PedalDuty.HOLD_TO_RUN;
      case MARK -> PedalDuty.MARK;
    };
  }
}
