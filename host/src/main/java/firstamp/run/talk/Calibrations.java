package firstamp.run.talk;

import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.protocol.values.CalibrationData;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The host's calibration to the record that the probe keeps, and back. */
public final class Calibrations {
  private static final double GAIN_PER_UNIT = 1e5;
  private static final double ZERO_PER_COUNT = 100;
  private static final int HIGHEST_U16 = 65_535;

  private Calibrations() {}

  public static CalibrationData data(Calibration calibration) {
    List<firstamp.protocol.values.ChannelScale> scales = new ArrayList<>();
    List<Integer> gain = new ArrayList<>();
    List<Integer> zero = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      ChannelScale scale = calibration.scale(channel);
      scales.add(new firstamp.protocol.values.ChannelScale(scale.zeroBase(), scale.fullBase()));
      gain.add(upwards(calibration.gainUncertainty().get(channel) * GAIN_PER_UNIT));
      zero.add(upwards(calibration.offsetUncertaintyCounts().get(channel) * ZERO_PER_COUNT));
    }
    return new CalibrationData(calibration.calibratedEpochSeconds(), scales, gain, zero);
  }

  /** An uncertainty is never made smaller by rounding; 1e-9 of room for the division before. */
  private static int upwards(double value) {
    return (int) Math.min(HIGHEST_U16, Math.ceil(value - 1e-9));
  }

  public static Calibration of(Calibration.Kind kind, CalibrationData data) {
    Map<Channel, ChannelScale> scales = new EnumMap<>(Channel.class);
    Map<Channel, Double> gain = new EnumMap<>(Channel.class);
    Map<Channel, Double> zero = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      int k = channel.ordinal();
      firstamp.protocol.values.ChannelScale scale = data.scales().get(k);
      scales.put(
          channel, new ChannelScale(scale.zero(), scale.full(), Calibration.basePerUnit(channel)));
      gain.put(channel, data.gainUncertaintyE5().get(k) / GAIN_PER_UNIT);
      zero.put(channel, data.zeroUncertaintyHundredths().get(k) / ZERO_PER_COUNT);
    }
    return new Calibration(kind, scales, data.calibratedEpochSeconds(), gain, zero);
  }
}
