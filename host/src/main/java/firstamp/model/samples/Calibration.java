package firstamp.model.samples;

import java.util.EnumMap;
import java.util.Map;

/**
 * Scales of all channels, as the probe gives them in its hello.
 *
 * @param kind blank (nominal values), valid or damaged
 * @param scales one per channel
 * @param calibratedEpochSeconds when, seconds since 1970; 0 = never
 * @param gainUncertainty standard uncertainty of the gain, share of the value, per channel
 * @param offsetUncertaintyCounts standard uncertainty of the zero, counts, per channel
 */
public record Calibration(
    Kind kind,
    Map<Channel, ChannelScale> scales,
    long calibratedEpochSeconds,
    Map<Channel, Double> gainUncertainty,
    Map<Channel, Double> offsetUncertaintyCounts) {

  /** State of the probe's calibration record. */
  public enum Kind {
    /** None was made: nominal values, every figure +-5 %. */
    BLANK,
    /** Made and intact. */
    VALID,
    /** The stored record fails its check: arming is refused. */
    DAMAGED
  }

  /** Expanded uncertainty (k = 2) of every figure of a probe that was never calibrated: 5 %. */
  public static final double BLANK_GAIN_UNCERTAINTY = 0.025;

  /** Copies the maps and checks that no channel is missing. */
  public Calibration {
    scales = Map.copyOf(scales);
    gainUncertainty = Map.copyOf(gainUncertainty);
    offsetUncertaintyCounts = Map.copyOf(offsetUncertaintyCounts);
    for (Channel channel : Channel.values()) {
      if (!scales.containsKey(channel)
          || !gainUncertainty.containsKey(channel)
          || !offsetUncertaintyCounts.containsKey(channel)) {
        throw new IllegalArgumentException("calibration without channel " + channel);
      }
    }
  }

  /** Scale of a channel. */
  public ChannelScale scale(Channel channel) {
    return scales.get(channel);
  }

  /** Whether its gain was measured: what only got a zero keeps that of a new box. */
  public boolean calibrated(Channel channel) {
    return kind == Kind.VALID && gainUncertainty.get(channel) < BLANK_GAIN_UNCERTAINTY;
  }

  /** Base units of the wire in one ampere or volt of the channel. */
  public static double basePerUnit(Channel channel) {
    return channel == Channel.H ? 1e9 : 1e6;
  }

  /** The ranges of the normal build, never calibrated (wire-format.md section 2). */
  public static Calibration nominal() {
    Map<Channel, ChannelScale> scales = new EnumMap<>(Channel.class);
    Map<Channel, Double> gain = new EnumMap<>(Channel.class);
    Map<Channel, Double> offset = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      int zero =
          switch (channel) {
            case I, J, V -> 0;
            case R1, R2, R3 -> -20_000_000;
            case H -> -10_000_000;
            case M -> -2_500_000;
          };
      int full =
          switch (channel) {
            case I -> 12_500_000;
            case J -> 400_000;
            case V -> 60_000_000;
            case R1, R2, R3 -> 20_000_000;
            case H -> 10_000_000;
            case M -> 2_500_000;
          };
      scales.put(channel, new ChannelScale(zero, full, basePerUnit(channel)));
      gain.put(channel, BLANK_GAIN_UNCERTAINTY);
      offset.put(channel, 0.5);
    }
    return new Calibration(Kind.BLANK, scales, 0, gain, offset);
  }
}
