package firstamp.pipeline;

import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;

/** What the switch did, when and by whom, and the time that counts from its closing. */
final class SwitchHistory {
  private SwitchState state = SwitchState.OFF;
  private Long closedMicros;
  private Long openedMicros;
  private Long lookStartMicros;
  private Long closesMicros;
  private OffCause offBy;
  private boolean openingSeen;

  /** The probe has reported another state. */
  void changed(ProbeEvent.SwitchChanged event) {
    SwitchState before = state;
    state = event.state();
    if (state == SwitchState.ON) {
      closedMicros = event.micros();
      openedMicros = null;
      openingSeen = false;
      offBy = null;
    } else if (before == SwitchState.ON) {
      opened(event.micros());
    }
    if (open()) {
      offBy = event.by();
    }
  }

  /** It opened; the first of several reports after a closing counts. */
  void opened(long micros) {
    if (closedMicros != null && openedMicros == null) {
      openedMicros = micros;
    }
  }

  /** The volts have shown that it is open. */
  void seen() {
    openingSeen = true;
  }

  void lookBegan(long micros) {
    lookStartMicros = micros;
  }

  void closesAt(long micros) {
    closesMicros = micros;
  }

  double ms(long micros) {
    Long coming = closesMicros != null ? closesMicros : lookStartMicros;
    Long zero = closedMicros != null ? closedMicros : coming;
    return zero == null ? 0 : (micros - zero) / 1000.0;
  }

  SwitchState state() {
    return state;
  }

  /** Whether neither switch nor look path is closed, nor a check under way. */
  boolean open() {
    return state == SwitchState.OFF || state == SwitchState.TRIPPED;
  }

  Long closedMicros() {
    return closedMicros;
  }

  Long openedMicros() {
    return openedMicros;
  }

  OffCause offBy() {
    return offBy;
  }

  boolean openingSeen() {
    return openingSeen;
  }
}
