package firstamp.protocol.frame;

import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.message.ProbeMessageVisitor;
import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.ChannelScale;
import firstamp.protocol.values.ChannelSum;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Spells a decoded frame as the keys of a vector, so that every accessor is checked against the
 * name of its field. Commands of the host are in {@link HostWireText}.
 */
final class WireText implements ProbeMessageVisitor<String> {
  static String of(Frame frame) {
    String payload =
        frame.message() instanceof ProbeMessage fromProbe
            ? fromProbe.accept(new WireText())
            : ((HostMessage) frame.message()).accept(new HostWireText());
    return "frame.type=%d frame.sequence=%d frame.tick=%d%s"
        .formatted(frame.type().code(), frame.sequence(), frame.tickMicros(), payload);
  }

  static <T> String list(List<T> values, Function<T, Object> part) {
    return values.stream()
        .map(value -> part.apply(value).toString())
        .collect(Collectors.joining(","));
  }

  private static String scales(List<ChannelScale> scales) {
    return " zero="
        + list(scales, ChannelScale::zero)
        + " full="
        + list(scales, ChannelScale::full);
  }

  @Override
  public String hello(ProbeMessage.Hello m) {
    return " firmware=%d boot_id=%d reset_cause=%d state=%d inputs=%d stream=%d self_test=%d"
            .formatted(
                m.firmware(),
                m.bootId(),
                m.resetCauseBits(),
                m.state().code(),
                m.inputs().bits(),
                m.stream().code(),
                m.selfTest().bits())
        + " latched_trip=%d latched_cause=%d calibration=%d"
            .formatted(
                m.latchedTrip(),
                m.latchedCause().map(TripCause::code).orElse(0),
                m.calibration().code())
        + scales(m.scales())
        + " calibrated_s=%d hard_short_ma=%d look_mohm=%d silence_ms=%d pedal=%d fuse_low=%d fuse_high=%d fuse_extended=%d"
            .formatted(
                m.calibratedEpochSeconds(),
                m.hardShortMilliamps(),
                m.lookMilliohms(),
                m.silenceMillis(),
                m.pedal().code(),
                m.fuses().low(),
                m.fuses().high(),
                m.fuses().extended());
  }

  @Override
  public String raw(ProbeMessage.Raw m) {
    short[] counts = m.counts();
    return " first_slot=%d count=%d dropped=%d packed=%s"
        .formatted(
            m.firstSlot(),
            counts.length,
            m.dropped(),
            IntStream.range(0, counts.length)
                .mapToObj(i -> Short.toString(counts[i]))
                .collect(Collectors.joining(",")));
  }

  @Override
  public String reading(ProbeMessage.Reading m) {
    return " dropped=%d flags=%d sum=%s lowest=%s highest=%s squares=%s"
        .formatted(
            m.dropped(),
            m.conversionLost() ? 1 : 0,
            list(m.channels(), ChannelSum::sumCounts),
            list(m.channels(), ChannelSum::lowestCounts),
            list(m.channels(), ChannelSum::highestCounts),
            list(m.channels(), ChannelSum::sumOfSquaresCounts2));
  }

  @Override
  public String lookResult(ProbeMessage.LookResult m) {
    return " result=%d closes=%d duration_ms=%d zero_i=%d zero_j=%d zero_v=%d pairs=%d end_v=%d end_j=%d"
            .formatted(
                m.outcome().code(),
                m.closes() ? 1 : 0,
                m.durationMillis(),
                m.zeroISixteenths(),
                m.zeroJSixteenths(),
                m.zeroVSixteenths(),
                m.pairs(),
                m.endVSixteenths(),
                m.endJSixteenths())
        + " sum_v=%d sum_j=%d clips=%d".formatted(m.sumVCounts(), m.sumJCounts(), m.clips().bits());
  }

  @Override
  public String trip(ProbeMessage.Trip m) {
    return " number=%d cause=%d channel=%d confirmed=%d crossed=%d decided=%d value=%d limit=%d"
            .formatted(
                m.number(),
                m.cause().code(),
                m.channel(),
                m.confirmed(),
                m.crossedTickMicros(),
                m.decidedTickMicros(),
                m.value(),
                m.limit())
        + " i2t=%d i2t_limit=%d boot=%d limited=%d last_v=%d"
            .formatted(
                m.i2tCounts2(),
                m.i2tLimitCounts2(),
                m.bootLow(),
                m.limitedConversions(),
                m.lastVCounts());
  }

  @Override
  public String capture(ProbeMessage.Capture m) {
    return " number=%d first=%d count=16 missing=%d counts=%s"
        .formatted(m.number(), m.first(), m.missing(), list(m.counts(), count -> count));
  }

  @Override
  public String status(ProbeMessage.Status m) {
    return " state=%d inputs=%d self_test=%d latched_trip=%d dropped=%d rejected=%d overruns=%d"
            .formatted(
                m.state().code(),
                m.inputs().bits(),
                m.selfTest().bits(),
                m.latchedTrip(),
                m.dropped(),
                m.rejected(),
                m.overruns())
        + " queue_highest=%d busy_percent=%d stack_free=%d late_starts=%d"
            .formatted(m.queueHighest(), m.busyPercent(), m.stackFreeBytes(), m.lateStarts())
        + " zero_i=%d zero_j=%d zero_v=%d conversions_sent=%d clips=%d pedal=%d"
            .formatted(
                m.zeroISixteenths(),
                m.zeroJSixteenths(),
                m.zeroVSixteenths(),
                m.conversionsSent(),
                m.clips().bits(),
                m.pedal().code());
  }

  @Override
  public String accepted(ProbeMessage.Accepted m) {
    return " type=%d sequence=%d".formatted(m.command().code(), m.commandSequence());
  }

  @Override
  public String refused(ProbeMessage.Refused m) {
    return " type=%d sequence=%d reason=%d detail=%d"
        .formatted(m.command().code(), m.commandSequence(), m.reason().code(), m.detail());
  }

  @Override
  public String switchChanged(ProbeMessage.SwitchChanged m) {
    return " state=%d by=%d".formatted(m.state().code(), m.by().code());
  }

  @Override
  public String press(ProbeMessage.Press m) {
    return " which=%d kind=%d".formatted(m.source().code(), m.kind().code());
  }

  @Override
  public String calibration(ProbeMessage.Calibration m) {
    return calibration(m.data());
  }

  static String calibration(CalibrationData data) {
    return " calibrated_s=%d%s gain_u=%s offset_u=%s"
        .formatted(
            data.calibratedEpochSeconds(),
            scales(data.scales()),
            list(data.gainUncertaintyE5(), u -> u),
            list(data.zeroUncertaintyHundredths(), u -> u));
  }
}
