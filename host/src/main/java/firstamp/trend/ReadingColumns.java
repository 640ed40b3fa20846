package firstamp.trend;

import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;
import firstamp.pipeline.ReadingFigures;
import java.util.Arrays;

/**
 * Lowest, highest and mean of every quantity of the course in one reading. Not thread-safe: the
 * arrays are used again.
 */
public final class ReadingColumns {
  public final float[] low = new float[Course.Quantity.COUNT];
  public final float[] high = new float[Course.Quantity.COUNT];
  public final float[] mean = new float[Course.Quantity.COUNT];

  /** Fills the arrays; NaN = not measurable. */
  public void of(Reading reading, Scaling scaling) {
    Arrays.fill(low, Float.NaN);
    Arrays.fill(high, Float.NaN);
    Arrays.fill(mean, Float.NaN);
    Channel current = scaling.fine(reading) ? Channel.J : Channel.I;
    quantity(Course.Quantity.SUPPLY_A, reading, scaling, current);
    quantity(Course.Quantity.SUPPLY_V, reading, scaling, Channel.V);
    for (int rail = 1; rail <= 3; rail++) {
      if (ReadingFigures.clipOn(reading, rail)) {
        quantity(Course.Quantity.ofRail(rail), reading, scaling, Channel.ofRail(rail));
      }
    }
    level(Course.Quantity.HEAD_DBV, reading, scaling, Channel.H);
    level(Course.Quantity.METER_DBV, reading, scaling, Channel.M);
  }

  private void quantity(
      Course.Quantity quantity, Reading reading, Scaling scaling, Channel channel) {
    double a = scaling.value(channel, reading.lowest(channel));
    double b = scaling.value(channel, reading.highest(channel));
    set(quantity, Math.min(a, b), Math.max(a, b), scaling.mean(reading, channel));
  }

  private void level(Course.Quantity quantity, Reading reading, Scaling scaling, Channel channel) {
    double dbv = dbv(reading.deviationCounts(channel), scaling, channel);
    set(quantity, dbv, dbv, dbv);
  }

  /** A quiet channel shows the converter's own step noise, never minus infinity. */
  static double dbv(double rmsCounts, Scaling scaling, Channel channel) {
    double perCount = Math.abs(scaling.calibration().scale(channel).perCount());
    return 20 * Math.log10(Math.max(rmsCounts, 1 / Math.sqrt(12)) * perCount);
  }

  private void set(Course.Quantity quantity, double lowest, double highest, double average) {
    low[quantity.ordinal()] = (float) lowest;
    high[quantity.ordinal()] = (float) highest;
    mean[quantity.ordinal()] = (float) average;
  }
}
