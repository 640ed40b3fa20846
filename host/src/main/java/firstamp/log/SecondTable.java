package firstamp.log;

import firstamp.log.stream.Spans;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Scaling;
import firstamp.model.samples.Zero;

/** Rows of the table of seconds: mean, lowest and highest of each channel in base units. */
final class SecondTable {
  static final String INSERT = insert();

  private static final Channel[] CHANNELS = Channel.values();

  private SecondTable() {}

  /** Values of one row, without power-up and place; null where a channel has nothing. */
  static Object[] row(Spans seconds, int bucket, Calibration calibration, Zero zero) {
    Scaling scaling = new Scaling(calibration, zero);
    Object[] values = new Object[2 + 3 * CHANNELS.length];
    long conversions = 0;
    for (Channel channel : CHANNELS) {
      int c = channel.ordinal();
      int n = seconds.counts[c][bucket];
      conversions += n;
      if (n > 0) {
        double mean = (double) seconds.sums[c][bucket] / n;
        long low = base(scaling, channel, seconds.lowest[c][bucket]);
        long high = base(scaling, channel, seconds.highest[c][bucket]);
        values[2 + 3 * c] = base(scaling, channel, mean);
        // An inverted channel has its highest value at its lowest count.
        values[3 + 3 * c] = Math.min(low, high);
        values[4 + 3 * c] = Math.max(low, high);
      }
    }
    values[0] = seconds.firstBucket + bucket;
    values[1] = conversions;
    return values;
  }

  private static long base(Scaling scaling, Channel channel, double counts) {
    return Math.round(scaling.value(channel, counts) * Calibration.basePerUnit(channel));
  }

  private static String insert() {
    StringBuilder names = new StringBuilder("INSERT INTO second (power_up, place, second,");
    names.append(" conversions");
    StringBuilder marks = new StringBuilder("?,?,?,?");
    for (Channel channel : Channel.values()) {
      String unit =
          switch (channel) {
            case I, J -> "_ua";
            case H -> "_nv";
            default -> "_uv";
          };
      String name = channel.name().toLowerCase(java.util.Locale.ROOT) + unit;
      names.append(", ").append(name).append(", ").append(name).append("_lowest, ");
      names.append(name).append("_highest");
      marks.append(",?,?,?");
    }
    return names + ") VALUES (" + marks + ")";
  }

  /** Second of a conversion. */
  static long of(long index) {
    return Math.floorDiv(index, (long) SamplePlan.CONVERSIONS_PER_SECOND);
  }
}
