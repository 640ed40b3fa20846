package firstamp.protocol.frame;

import firstamp.protocol.codes.TripCause;
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
import firstamp.protocol.message.ProbeMessageVisitor;
import firstamp.protocol.values.ChannelSum;

/**
 * Payloads of the probe's messages, written by visiting, with the fields in the order of
 * wire-format.md section 3. Reserved bytes are written 0.
 */
final class ProbePayloads implements ProbeMessageVisitor<PayloadWriter> {
  static final int CONVERSION_LOST = 1;

  private final PayloadWriter out;

  ProbePayloads(PayloadWriter out) {
    this.out = out;
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
    CalibrationFields.writeScales(out, hello.scales());
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
    return CalibrationFields.write(out, calibration.data());
  }
}
