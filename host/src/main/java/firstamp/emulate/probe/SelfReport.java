package firstamp.emulate.probe;

import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.rules.Zeros;
import firstamp.protocol.values.Fuses;
import java.util.Optional;

/** What the probe says of itself: its hello and its status. */
final class SelfReport {
  private static final int FIRMWARE = 0x0200;
  private static final long HARD_SHORT_MILLIAMPS = 10_000;
  private static final long LOOK_MILLIOHMS = 330_000;
  private static final int NOT_MEASURED = 0xFFFF;

  private final ProbeMachine machine;
  private final Memory memory;
  private final int resetCauseBits;

  SelfReport(ProbeMachine machine, Memory memory, int resetCauseBits) {
    this.machine = machine;
    this.memory = memory;
    this.resetCauseBits = resetCauseBits;
  }

  ProbeMessage.Hello hello() {
    Optional<TripCause> cause =
        memory.latched() ? Optional.of(memory.trip().cause()) : Optional.empty();
    return new ProbeMessage.Hello(
        FIRMWARE,
        memory.bootId(),
        resetCauseBits,
        machine.state(),
        machine.inputs(),
        machine.stream().kind(),
        machine.selfTest(),
        memory.latchedNumber(),
        cause,
        memory.calibrationState(),
        memory.calibration().scales(),
        memory.calibration().calibratedEpochSeconds(),
        HARD_SHORT_MILLIAMPS,
        LOOK_MILLIOHMS,
        machine.silenceMillis(),
        machine.pedalDuty(),
        Fuses.RIGHT);
  }

  ProbeMessage.Status status(int rejectedFrames) {
    Zeros zeros = machine.zeros();
    int none = ProbeMessage.Status.NO_ZERO;
    return new ProbeMessage.Status(
        machine.state(),
        machine.inputs(),
        machine.selfTest(),
        memory.latchedNumber(),
        0,
        rejectedFrames & 0xFFFF,
        0,
        0,
        0,
        NOT_MEASURED,
        0,
        zeros == null ? none : zeros.iSixteenths(),
        zeros == null ? none : zeros.jSixteenths(),
        zeros == null ? none : zeros.vSixteenths(),
        machine.stream().sent() & 0xFFFF_FFFFL,
        machine.clips(),
        machine.pedalDuty());
  }
}
