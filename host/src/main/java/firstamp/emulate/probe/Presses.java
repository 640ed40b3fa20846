package firstamp.emulate.probe;

import firstamp.emulate.line.FrameOutput;
import firstamp.model.PedalJob;
import firstamp.protocol.codes.PedalDuty;
import firstamp.protocol.codes.PressKind;
import firstamp.protocol.codes.PressSource;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.Inputs;
import java.util.function.Consumer;

/** Button and pedal: tells the host of each press, and switches off at the one that does. */
final class Presses {
  private final FrameOutput outlet;
  private final PressWatch button = new PressWatch();
  private final PressWatch pedal = new PressWatch();
  private PedalDuty duty;

  Presses(FrameOutput outlet, PedalJob job) {
    this.outlet = outlet;
    this.duty =
        switch (job) {
          case OFF -> PedalDuty.OFF;
          case HOLD_TO_RUN -> PedalDuty.HOLD_TO_RUN;
          case MARK -> PedalDuty.MARK;
        };
  }

  PedalDuty duty() {
    return duty;
  }

  void duty(PedalDuty next) {
    duty = next;
  }

  /** Looks at both, every 2 ms. */
  void look(Inputs inputs, long nowMicros, Consumer<SwitchCause> off) {
    PressKind atButton = button.look(inputs.buttonDown(), nowMicros);
    tell(PressSource.BUTTON, atButton, nowMicros);
    if (atButton == PressKind.DOWN) {
      off.accept(SwitchCause.BUTTON);
    }
    PressKind atPedal = pedal.look(inputs.pedalDown(), nowMicros);
    tell(PressSource.PEDAL, atPedal, nowMicros);
    if (atPedal != null && atPedal == pedalOff()) {
      off.accept(SwitchCause.PEDAL);
    }
  }

  private void tell(PressSource source, PressKind kind, long nowMicros) {
    if (kind != null) {
      outlet.send(new ProbeMessage.Press(source, kind), nowMicros);
    }
  }

  /** The press of the pedal that opens; null = none, its release does. */
  private PressKind pedalOff() {
    return switch (duty) {
      case OFF -> PressKind.DOWN;
      case HOLD_TO_RUN -> null;
      case MARK -> PressKind.HELD;
    };
  }

  /** Whether what is down or up keeps the switch from closing. */
  boolean barClosing(Inputs inputs) {
    return duty == PedalDuty.HOLD_TO_RUN ? !pedal.isDown() : inputs.pedalDown();
  }

  /** Whether the foot that must be down for power is up. */
  boolean footLifted() {
    return duty == PedalDuty.HOLD_TO_RUN && !pedal.isDown();
  }
}
