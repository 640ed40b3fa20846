package firstamp.pipeline;

import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;
import java.util.ArrayList;
import java.util.List;

/**
 * One reading in physical units.
 *
 * @param atMs its start, from closing
 * @param probeMs the same from the probe's start
 * @param supplyA supply current
 * @param supplyV volts on the set side
 * @param rails those with a clip on
 * @param headRmsV head, about its mean
 * @param meterRmsV meter, about its mean
 */
public record ReadingFigures(
    double atMs,
    double probeMs,
    double supplyA,
    double supplyV,
    List<RailVolts> rails,
    double headRmsV,
    double meterRmsV) {

  /**
   * A rail.
   *
   * @param rail 1 to 3
   * @param volts against chassis
   */
  public record RailVolts(int rail, double volts) {}

  static ReadingFigures of(Reading reading, Scaling scaling, double atMs) {
    List<RailVolts> rails = new ArrayList<>();
    for (int rail = 1; rail <= 3; rail++) {
      if (clipOn(reading, rail)) {
        rails.add(new RailVolts(rail, scaling.railV(reading, rail)));
      }
    }
    return new ReadingFigures(
        atMs,
        reading.startMicros() / 1000.0,
        scaling.supplyA(reading),
        scaling.supplyV(reading),
        List.copyOf(rails),
        rms(reading, scaling, Channel.H),
        rms(reading, scaling, Channel.M));
  }

  /** An open clip reads full scale, a value no rail has. */
  public static boolean clipOn(Reading reading, int rail) {
    return reading.lowest(Channel.ofRail(rail)) < 1023;
  }

  private static double rms(Reading reading, Scaling scaling, Channel channel) {
    return reading.deviationCounts(channel)
        * Math.abs(scaling.calibration().scale(channel).perCount());
  }
}
