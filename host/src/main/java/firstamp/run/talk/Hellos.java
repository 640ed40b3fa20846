package firstamp.run.talk;

import firstamp.model.ProbeHello;
import firstamp.model.TripCause;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.CalibrationData;
import java.util.EnumMap;
import java.util.Map;

/** Turns the probe's hello into the values of the host. */
public final class Hellos {
  /**
   * Standard uncertainty of a calibrated channel's gain when the probe has not said its own: 0.5 %.
   */
  private static final double VALID_GAIN_UNCERTAINTY = 0.005;

  private Hellos() {}

  /** Where the probe was not asked for its uncertainties, or did not answer. */
  public static ProbeHello of(ProbeMessage.Hello hello, String kind) {
    return of(hello, kind, null);
  }

  /**
   * The host's view of a probe.
   *
   * @param kept calibration with the probe's own uncertainties, null = it was not read
   */
  public static ProbeHello of(ProbeMessage.Hello hello, String kind, CalibrationData kept) {
    return new ProbeHello(
        Frame.VERSION,
        hello.firmware() >> 8,
        hello.firmware() & 0xFF,
        hello.bootId(),
        hello.resetCauseBits(),
        WireTerms.state(hello.state()),
        hello.inputs().bits(),
        hello.selfTest().bits(),
        hello.latchedTrip(),
        hello.latchedCause().map(cause -> TripCause.ofWire(cause.code())).orElse(null),
        calibration(hello, kept),
        hello.hardShortMilliamps() / 1000.0,
        hello.lookMilliohms() / 1000.0,
        kind);
  }

  private static Calibration calibration(ProbeMessage.Hello hello, CalibrationData kept) {
    Calibration.Kind kind = WireTerms.calibration(hello.calibration());
    if (kept != null && kind == Calibration.Kind.VALID) {
      return Calibrations.of(kind, kept);
    }
    Map<Channel, ChannelScale> scales = new EnumMap<>(Channel.class);
    Map<Channel, Double> gain = new EnumMap<>(Channel.class);
    Map<Channel, Double> offset = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      firstamp.protocol.values.ChannelScale scale = hello.scales().get(channel.ordinal());
      scales.put(
          channel, new ChannelScale(scale.zero(), scale.full(), Calibration.basePerUnit(channel)));
      gain.put(
          channel,
          kind == Calibration.Kind.VALID
              ? VALID_GAIN_UNCERTAINTY
              : Calibration.BLANK_GAIN_UNCERTAINTY);
      offset.put(channel, 0.5);
    }
    return new Calibration(kind, scales, hello.calibratedEpochSeconds(), gain, offset);
  }
}
