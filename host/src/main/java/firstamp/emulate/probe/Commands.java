package firstamp.emulate.probe;

import firstamp.emulate.line.FrameOutput;
import firstamp.protocol.codes.CalibrationState;
import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.MessageType;
import firstamp.protocol.codes.PedalDuty;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.Resend;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.WireCode;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.frame.FrameDecoder;
import firstamp.protocol.frame.Rejected;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.HostMessageVisitor;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.TripLimits;

/** Takes what the host says, checks it against the state, acts and answers. */
public final class Commands implements FrameDecoder.Sink, HostMessageVisitor<Void> {
  private final ProbeMachine machine;
  private final Memory memory;
  private final FrameOutput outlet;
  private final SelfReport report;
  private LineSpeed speed = LineSpeed.FAST;
  private MessageType command;
  private int sequence;
  private int rejectedFrames;

  public Commands(ProbeMachine machine, Memory memory, FrameOutput outlet, int resetCauseBits) {
    this.machine = machine;
    this.memory = memory;
    this.outlet = outlet;
    this.report = new SelfReport(machine, memory, resetCauseBits);
  }

  public LineSpeed speed() {
    return speed;
  }

  @Override
  public void frame(Frame frame) {
    if (frame.message() instanceof HostMessage message) {
      machine.hostHeard();
      command = message.type();
      sequence = frame.sequence();
      message.accept(this);
    } else {
      // A probe's own message is an unknown type here.
      rejectedFrames++;
    }
  }

  @Override
  public void rejected(Rejected rejected) {
    rejectedFrames++;
    if (rejected.field() == Rejected.UNKNOWN) {
      return;
    }
    for (MessageType type : MessageType.values()) {
      if (type.code() == rejected.typeCode() && type.fromHost()) {
        machine.hostHeard();
        command = type;
        sequence = rejected.sequence();
        refuse(rejected.refusal(), rejected.field());
      }
    }
  }

  private Void accept() {
    outlet.send(new ProbeMessage.Accepted(command, sequence), machine.nowMicros());
    return null;
  }

  private Void refuse(RefusalReason reason, int detail) {
    outlet.send(new ProbeMessage.Refused(command, sequence, reason, detail), machine.nowMicros());
    return null;
  }

  private Void refuse(RefusalReason reason, WireCode detail) {
    return refuse(reason, detail.code());
  }

  public void sendHello() {
    outlet.send(report.hello(), machine.nowMicros());
  }

  public void sendStatus() {
    outlet.send(report.status(rejectedFrames), machine.nowMicros());
  }

  @Override
  public Void helloRequest(HostMessage.HelloRequest message) {
    speed = message.speed();
    if (speed == LineSpeed.SLOW && machine.stream().kind() == StreamKind.RAW) {
      machine.stream().choose(StreamKind.NONE);
    }
    sendHello();
    return null;
  }

  @Override
  public Void streamRequest(HostMessage.StreamRequest message) {
    if (message.kind() == StreamKind.RAW && speed == LineSpeed.SLOW) {
      return refuse(RefusalReason.TOO_FAST_FOR_LINE, speed);
    }
    machine.stream().choose(message.kind());
    return accept();
  }

  @Override
  public Void setLimits(HostMessage.SetLimits message) {
    TripLimits now = machine.limits();
    boolean free = machine.state() == ProbeState.OFF || machine.state() == ProbeState.TRIPPED;
    if (machine.state() == ProbeState.CHECK) {
      return refuse(RefusalReason.WRONG_STATE, machine.state());
    }
    int wider = free || now == null ? 0 : WiderLimit.field(now, message.limits());
    if (wider != 0) {
      return refuse(RefusalReason.LIMIT_GETS_WIDER, wider);
    }
    machine.takeLimits(message.limits());
    return accept();
  }

  @Override
  public Void lookRequest(HostMessage.LookRequest message) {
    return notArmable(false, 0) ? null : arm(message.look(), false);
  }

  @Override
  public Void switchOn(HostMessage.SwitchOn message) {
    return notArmable(false, 0) ? null : arm(message.look(), true);
  }

  @Override
  public Void restore(HostMessage.Restore message) {
    return notArmable(true, message.tripNumber()) ? null : arm(message.look(), true);
  }

  private Void arm(LookParameters look, boolean close) {
    accept();
    machine.arm(look, close);
    return null;
  }

  /** Answers with a refusal if something prevents arming. */
  private boolean notArmable(boolean restore, int number) {
    ProbeState state = machine.state();
    if (state == ProbeState.CHECK || state == ProbeState.LOOK) {
      refuse(RefusalReason.BUSY, state);
    } else if (restore && state != ProbeState.TRIPPED || state == ProbeState.ON) {
      refuse(RefusalReason.WRONG_STATE, state);
    } else if (!restore && state == ProbeState.TRIPPED) {
      refuse(RefusalReason.TRIP_LATCHED, memory.latchedNumber());
    } else if (restore && number != memory.latchedNumber()) {
      refuse(RefusalReason.WRONG_NUMBER, memory.latchedNumber());
    } else if (machine.limits() == null) {
      refuse(RefusalReason.NO_LIMITS, 0);
    } else if (!machine.inputs().chassisClipOn()) {
      refuse(RefusalReason.NO_CHASSIS_CLIP, machine.inputs().bits());
    } else if (machine.inputs().buttonDown()) {
      refuse(RefusalReason.BUTTON_DOWN, machine.inputs().bits());
    } else if (machine.footBars()) {
      boolean hold = machine.pedalDuty() == PedalDuty.HOLD_TO_RUN;
      refuse(
          hold ? RefusalReason.FOOT_NOT_DOWN : RefusalReason.BUTTON_DOWN, machine.inputs().bits());
    } else if (memory.calibrationState() == CalibrationState.DAMAGED) {
      refuse(RefusalReason.CALIBRATION_DAMAGED, 0);
    } else if (machine.selfTest().refusesArming()) {
      refuse(RefusalReason.SELF_TEST, machine.selfTest().bits());
    } else {
      return false;
    }
    return true;
  }

  @Override
  public Void switchOff(HostMessage.SwitchOff message) {
    accept();
    machine.off(message.by());
    return null;
  }

  @Override
  public Void heartbeat(HostMessage.Heartbeat message) {
    return null;
  }

  @Override
  public Void sendAgain(HostMessage.SendAgain message) {
    if (message.what() == Resend.TRIP) {
      if (memory.trip() == null || memory.trip().number() != message.tripNumber()) {
        return refuse(RefusalReason.NOTHING_THERE, message.tripNumber());
      }
      accept();
      machine.sendTrip();
      return null;
    }
    if (message.tripNumber() == 0 || machine.capture().number() != message.tripNumber()) {
      return refuse(RefusalReason.NOTHING_THERE, message.tripNumber());
    }
    accept();
    machine.sendCapture();
    return null;
  }

  @Override
  public Void calibrationRead(HostMessage.CalibrationRead message) {
    outlet.send(new ProbeMessage.Calibration(memory.calibration()), machine.nowMicros());
    return null;
  }

  @Override
  public Void calibrationWrite(HostMessage.CalibrationWrite message) {
    if (machine.state() != ProbeState.OFF) {
      return refuse(RefusalReason.WRONG_STATE, machine.state());
    }
    memory.writeCalibration(message.data());
    accept();
    return calibrationRead(null);
  }

  @Override
  public Void statusRequest(HostMessage.StatusRequest message) {
    sendStatus();
    return null;
  }

  @Override
  public Void selfTestRequest(HostMessage.SelfTestRequest message) {
    if (machine.state() != ProbeState.OFF) {
      return refuse(RefusalReason.WRONG_STATE, machine.state());
    }
    machine.repeatSelfTest();
    sendHello();
    return null;
  }

  @Override
  public Void sound(HostMessage.Sound message) {
    return accept();
  }

  @Override
  public Void clearTrip(HostMessage.ClearTrip message) {
    if (machine.state() != ProbeState.TRIPPED) {
      return refuse(RefusalReason.WRONG_STATE, machine.state());
    }
    if (message.tripNumber() != memory.latchedNumber()) {
      return refuse(RefusalReason.WRONG_NUMBER, memory.latchedNumber());
    }
    machine.clearTrip();
    return accept();
  }

  @Override
  public Void setPedal(HostMessage.SetPedal message) {
    if (machine.state() != ProbeState.OFF && machine.state() != ProbeState.TRIPPED) {
      return refuse(RefusalReason.WRONG_STATE, machine.state());
    }
    machine.pedalDuty(message.duty());
    return accept();
  }

  @Override
  public Void readClips(HostMessage.ReadClips message) {
    if (machine.state() != ProbeState.OFF && machine.state() != ProbeState.TRIPPED) {
      return refuse(RefusalReason.WRONG_STATE, machine.state());
    }
    machine.readClips();
    return null;
  }
}
