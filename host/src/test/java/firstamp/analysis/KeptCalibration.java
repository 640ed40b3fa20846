package firstamp.analysis;

import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.protocol.values.CalibrationData;
import java.util.EnumMap;
import java.util.Map;

/** What a drawn box keeps, as the host reads it. */
public final class KeptCalibration {
  private KeptCalibration() {}

  public static Calibration of(CalibrationData kept) {
    Map<Channel, ChannelScale> scales = new EnumMap<>(Channel.class);
    Map<Channel, Double> gain = new EnumMap<>(Channel.class);
    Map<Channel, Double> zero = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      int k = channel.ordinal();
      firstamp.protocol.values.ChannelScale scale = kept.scales().get(k);
      scales.put(
          channel, new ChannelScale(scale.zero(), scale.full(), Calibration.basePerUnit(channel)));
      gain.put(channel, kept.gainUncertaintyE5().get(k) / 1e5);
      zero.put(channel, kept.zeroUncertaintyHundredths().get(k) / 100.0);
    }
    return new Calibration(Calibration.Kind.VALID, scales, 1, gain, zero);
  }
}
