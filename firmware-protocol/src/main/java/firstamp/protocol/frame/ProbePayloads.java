package firstamp.protocol.frame;

import firstamp.protocol.codes.CalibrationState;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.codes.MessageType;
import firstamp.protocol.codes.PedalDuty;
import firstamp.protocol.codes.PressKind;
import firstamp.protocol.codes.PressSource;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.message.ProbeMessage.Accepted;
import firstamp.protocol.message.ProbeMessage.Calibration;
import firstamp.protocol.message.ProbeMessage.Capture;
import firstamp.protocol.message.ProbeMessage.Hello;
import firstamp.protocol.message.ProbeMessage.LookResult;
import firstamp.protocol.message.ProbeMessage.Press;
import firstamp.protocol.message.ProbeMessage.Raw;
import firstamp.protocol.message.ProbeMessage.Reading;
import firstamp.protocol.message.ProbeMessage.Refused;
import firstamp.protocol.message.ProbeMessage.Status;
import firstamp.protocol.message.ProbeMessage.SwitchChanged;
import firstamp.protocol.message.ProbeMessage.Trip;
import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.ChannelScale;
import firstamp.protocol.values.ChannelSum;
import firstamp.protocol.values.Check;
import firstamp.protocol.values.Clips;
import firstamp.protocol.values.Fuses;
import firstamp.protocol.values.Inputs;
import firstamp.protocol.values.SelfTest;
import firstamp.protocol.values.SlotPlan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Payloads of the probe's messages, written by visiting and read by type, with the fields in the
 * order of wire-format.md section 3. Reserved bytes are written 0 and not looked at when read.
 */
final class ProbePayloads implements ProbeMessage.Visitor<PayloadWriter> {
  private static final int CONVERSION_LOST = 1;

  private final PayloadWriter out;

  ProbePayloads(PayloadWriter out) {
    this.out = out;
  }

  /** Reads any message but raw, which {@link RawBlock} does; the length was checked. */
  static ProbeMessage read(MessageType type, PayloadReader in) {
    return switch (type) {
      case HELLO -> readHello(in);
      case READING -> readReading(in);
      case LOOK_RESULT -> readLookResult(in);
      case TRIP -> readTrip(in);
      case CAPTURE -> readCapture(in);
      case STATUS -> readStatus(in);
      case ACCEPTED -> new Accepted(Check.code(1, MessageType.class, in.u8()), in.u16());
      case REFUSED ->
          new Refused(
              Check.code(1, MessageType.class, in.u8()),
              in.u16(),
              Check.code(3, RefusalReason.class, in.u8()),
              in.u16());
      case SWITCH_CHANGED ->
          new SwitchChanged(
              Check.code(1, ProbeState.class, in.u8()), Check.code(2, SwitchCause.class, in.u8()));
      case PRESS ->
          new Press(
              Check.code(1, PressSource.class, in.u8()), Check.code(2, PressKind.class, in.u8()));
      case CALIBRATION -> new Calibration(readCalibration(in));
      default ->
          throw new IllegalArgumentException(
              type + " is no message with a fixed payload from the probe");
    };
  }

  private static Hello readHello(PayloadReader in) {
    return new Hello(
        in.u16(),
        in.u32(),
        in.u8(),
        Check.code(4, ProbeState.class, in.u8()),
        new Inputs(in.u8()),
        Check.code(6, StreamKind.class, in.u8()),
        new SelfTest(in.u16()),
        in.u16(),
        readCauseOrNone(in.u8()),
        Check.code(10, CalibrationState.class, in.u8()),
        readScales(in),
        in.u32(),
        in.u32(),
        in.u32(),
        in.u16(),
        Check.code(16, PedalDuty.class, in.u8()),
        new Fuses(in.u8(), in.u8(), in.u8()));
  }

  private static Optional<TripCause> readCauseOrNone(int code) {
    return code == 0 ? Optional.empty() : Optional.of(Check.code(9, TripCause.class, code));
  }

  @Override
  public PayloadWriter hello(Hello hello) {
    out.u16(hello.firmware())
        .u32(hello.bootId())
        .u8(hello.resetCauseBits())
        .code(hello.state())
        .u8(hello.inputs().bits())
        .code(hello.stream())
        .u16(hello.selfTest().bits())
        .u16(hello.latchedTrip())
        .u8(hello.latchedCause().map(TripCause::code).orElse(0))
        .code(hello.calibration());
    writeScales(out, hello.scales());
    return out.u32(hello.calibratedEpochSeconds())
        .u32(hello.hardShortMilliamps())
        .u32(hello.lookMilliohms())
        .u16(hello.silenceMillis())
        .code(hello.pedal())
        .u8(hello.fuses().low())
        .u8(hello.fuses().high())
        .u8(hello.fuses().extended());
  }

  @Override
  public PayloadWriter raw(Raw raw) {
    short[] counts = raw.counts();
    return writeRaw(out, raw.firstSlot(), raw.dropped(), counts, 0, counts.length);
  }

  static PayloadWriter writeRaw(
      PayloadWriter out, int firstSlot, int dropped, short[] counts, int from, int number) {
    return out.u8(firstSlot).u8(number).u16(dropped).packed(counts, from, number);
  }

  private static Reading readReading(PayloadReader in) {
    int dropped = in.u16();
    boolean conversionLost = (in.u16() & CONVERSION_LOST) != 0;
    List<ChannelSum> channels = new ArrayList<>(SlotPlan.CHANNELS);
    for (int channel = 0; channel < SlotPlan.CHANNELS; channel++) {
      channels.add(new ChannelSum(in.u16(), in.u16(), in.u16(), in.u32()));
    }
    return new Reading(dropped, conversionLost, channels);
  }

  @Override
  public PayloadWriter reading(Reading reading) {
    out.u16(reading.dropped()).u16(reading.conversionLost() ? CONVERSION_LOST : 0);
    for (ChannelSum channel : reading.channels()) {
      out.u16(channel.sumCounts())
          .u16(channel.lowestCounts())
          .u16(channel.highestCounts())
          .u32(channel.sumOfSquaresCounts2());
    }
    return out;
  }

  private static LookResult readLookResult(PayloadReader in) {
    return new LookResult(
        Check.code(1, LookOutcome.class, in.u8()),
        in.flag(2, "closes"),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u32(),
        in.u32(),
        new Clips(in.u8()));
  }

  @Override
  public PayloadWriter lookResult(LookResult look) {
    return out.code(look.outcome())
        .u8(look.closes() ? 1 : 0)
        .u16(look.durationMillis())
        .u16(look.zeroISixteenths())
        .u16(look.zeroJSixteenths())
        .u16(look.zeroVSixteenths())
        .u16(look.pairs())
        .u16(look.endVSixteenths())
        .u16(look.endJSixteenths())
        .u32(look.sumVCounts())
        .u32(look.sumJCounts())
        .u8(look.clips().bits())
        .u8(0);
  }

  private static Trip readTrip(PayloadReader in) {
    int number = in.u16();
    TripCause cause = Check.code(2, TripCause.class, in.u8());
    int channel = in.u8();
    int confirmed = in.u8();
    in.skip(1);
    return new Trip(
        number, cause, channel, confirmed, in.u32(), in.u32(), in.u16(), in.u16(), in.u32(),
        in.u32(), in.u16(), in.u16(), in.u16());
  }

  @Override
  public PayloadWriter trip(Trip trip) {
    return out.u16(trip.number())
        .code(trip.cause())
        .u8(trip.channel())
        .u8(trip.confirmed())
        .u8(0)
        .u32(trip.crossedTickMicros())
        .u32(trip.decidedTickMicros())
        .u16(trip.value())
        .u16(trip.limit())
        .u32(trip.i2tCounts2())
        .u32(trip.i2tLimitCounts2())
        .u16(trip.bootLow())
        .u16(trip.limitedConversions())
        .u16(trip.lastVCounts());
  }

  private static Capture readCapture(PayloadReader in) {
    int number = in.u16();
    int first = in.i16();
    Check.range(3, "count", in.u8(), Capture.CONVERSIONS, Capture.CONVERSIONS);
    int missing = in.u8();
    in.skip(2);
    List<Integer> counts = new ArrayList<>(Capture.CONVERSIONS);
    for (int i = 0; i < Capture.CONVERSIONS; i++) {
      counts.add(in.u16());
    }
    return new Capture(number, first, missing, counts);
  }

  @Override
  public PayloadWriter capture(Capture capture) {
    out.u16(capture.number())
        .u16(capture.first())
        .u8(Capture.CONVERSIONS)
        .u8(capture.missing())
        .u16(0);
    capture.counts().forEach(out::u16);
    return out;
  }

  private static Status readStatus(PayloadReader in) {
    return new Status(
        Check.code(1, ProbeState.class, in.u8()),
        new Inputs(in.u8()),
        new SelfTest(in.u16()),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u8(),
        in.u8(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u16(),
        in.u32(),
        new Clips(in.u8()),
        Check.code(17, PedalDuty.class, in.u8()));
  }

  @Override
  public PayloadWriter status(Status status) {
    return out.code(status.state())
        .u8(status.inputs().bits())
        .u16(status.selfTest().bits())
        .u16(status.latchedTrip())
        .u16(status.dropped())
        .u16(status.rejected())
        .u16(status.overruns())
        .u8(status.queueHighest())
        .u8(status.busyPercent())
        .u16(status.stackFreeBytes())
        .u16(status.lateStarts())
        .u16(status.zeroISixteenths())
        .u16(status.zeroJSixteenths())
        .u16(status.zeroVSixteenths())
        .u32(status.conversionsSent())
        .u8(status.clips().bits())
        .code(status.pedal());
  }

  @Override
  public PayloadWriter accepted(Accepted accepted) {
    return out.code(accepted.command()).u16(accepted.commandSequence());
  }

  @Override
  public PayloadWriter refused(Refused refused) {
    return out.code(refused.command())
        .u16(refused.commandSequence())
        .code(refused.reason())
        .u16(refused.detail());
  }

  @Override
  public PayloadWriter switchChanged(SwitchChanged changed) {
    return out.code(changed.state()).code(changed.by());
  }

  @Override
  public PayloadWriter press(Press press) {
    return out.code(press.source()).code(press.kind());
  }

  @Override
  public PayloadWriter calibration(Calibration calibration) {
    return writeCalibration(out, calibration.data());
  }

  static CalibrationData readCalibration(PayloadReader in) {
    return new CalibrationData(in.u32(), readScales(in), readU16s(in), readU16s(in));
  }

  static PayloadWriter writeCalibration(PayloadWriter out, CalibrationData data) {
    out.u32(data.calibratedEpochSeconds());
    writeScales(out, data.scales());
    data.gainUncertaintyE5().forEach(out::u16);
    data.zeroUncertaintyHundredths().forEach(out::u16);
    return out;
  }

  private static List<ChannelScale> readScales(PayloadReader in) {
    List<ChannelScale> scales = new ArrayList<>(SlotPlan.CHANNELS);
    for (int channel = 0; channel < SlotPlan.CHANNELS; channel++) {
      scales.add(new ChannelScale(in.i32(), in.i32()));
    }
    return scales;
  }

  private static void writeScales(PayloadWriter out, List<ChannelScale> scales) {
    for (ChannelScale scale : scales) {
      out.u32(scale.zero()).u32(scale.full());
    }
  }

  private static List<Integer> readU16s(PayloadReader in) {
    List<Integer> values = new ArrayList<>(SlotPlan.CHANNELS);
    for (int channel = 0; channel < SlotPlan.CHANNELS; channel++) {
      values.add(in.u16());
    }
    return values;
  }
}
