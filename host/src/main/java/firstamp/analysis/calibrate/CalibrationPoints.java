package firstamp.analysis.calibrate;

import firstamp.analysis.statistics.Uncertainty;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The points taken so far, by channel, and the calibration that follows from them. */
public final class CalibrationPoints {
  private final Map<Channel, Map<String, CalibrationPoint>> points = new EnumMap<>(Channel.class);

  /**
   * Adds a point.
   *
   * @param step that took it: taken again, the new point replaces the one before
   */
  public void add(String step, Channel channel, CalibrationPoint point) {
    points.computeIfAbsent(channel, c -> new LinkedHashMap<>()).put(step, point);
  }

  /**
   * The line of every channel that has points.
   *
   * @param before what the probe keeps now
   * @param volts accuracy of the meter on its volts range
   * @param amps accuracy of the meter on its ampere range
   * @param head accuracy of what was put on the head clips
   * @throws CalibrationRefused the points of a channel cannot be
   */
  public List<CalibrationLine> lines(
      Calibration before, MeterAccuracy volts, MeterAccuracy amps, MeterAccuracy head)
      throws CalibrationRefused {
    List<CalibrationLine> lines = new ArrayList<>();
    for (Map.Entry<Channel, Map<String, CalibrationPoint>> entry : points.entrySet()) {
      Channel channel = entry.getKey();
      lines.add(
          CalibrationLine.fit(
              channel,
              before.scale(channel),
              new Uncertainty(before).gain(channel),
              List.copyOf(entry.getValue().values()),
              channel == Channel.H
                  ? head
                  : channel.quantity() == Channel.Quantity.AMPERE ? amps : volts));
    }
    return lines;
  }

  /** The calibration with these lines in it; other channels keep what they have. */
  public static Calibration with(
      Calibration before, List<CalibrationLine> lines, long epochSeconds) {
    Map<Channel, ChannelScale> scales = new EnumMap<>(before.scales());
    Map<Channel, Double> gain = new EnumMap<>(before.gainUncertainty());
    Map<Channel, Double> zero = new EnumMap<>(before.offsetUncertaintyCounts());
    for (CalibrationLine line : lines) {
      scales.put(line.channel(), line.scale());
      gain.put(line.channel(), line.budget().gainShare());
      zero.put(line.channel(), line.budget().zeroCounts());
    }
    return new Calibration(Calibration.Kind.VALID, scales, epochSeconds, gain, zero);
  }
}
