package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.Trip;
import firstamp.model.samples.Channel;

/**
 * What the probe saw when it switched off because of the supply current.
 *
 * @param key of the sentences
 * @param value seen
 * @param stated limit on the sheet; the acting one where it states none
 * @param acting limit that was crossed: the stated one in whole steps of the converter
 * @param unit of all three
 */
record CurrentTrip(String key, double value, double stated, double acting, String unit) {
  private static final double I_INTERVAL_S = 250e-6;

  static CurrentTrip of(Trip trip, RunState run) {
    JobSheet.Limits said = run.sheet().limits();
    JobSheet.Limits limits = said == null ? JobSheet.Limits.NONE : said;
    return switch (trip.cause()) {
      case HARD_SHORT -> {
        double level = run.setup().hardShortA();
        // With many volts across the switch the limiter holds less than the level.
        yield trip.limitedMs() == null
            ? new CurrentTrip("hard-short", level, level, level, "A")
            : new CurrentTrip(
                "hard-short-held", run.scaling().value(Channel.I, trip.value()), level, level, "A");
      }
      case I2T -> {
        double step = run.scaling().value(Channel.I, 1) - run.scaling().value(Channel.I, 0);
        double one = step * step * I_INTERVAL_S;
        double acting = trip.i2tLimit() * one;
        yield new CurrentTrip(
            "i2t", trip.i2tSum() * one, or(limits.i2tA2s(), acting), acting, "A2s");
      }
      case MEAN -> ampere("mean", trip, run, limits.runningA(), 16);
      case INRUSH -> ampere("inrush", trip, run, limits.inrushA(), 1);
      case PEAK -> ampere("over-current", trip, run, limits.peakA(), 1);
      case START -> ampere("start", trip, run, limits.startA(), 1);
      default -> ampere("over-current", trip, run, limits.runningA(), 1);
    };
  }

  /** Counts come in parts of one where a mean was judged. */
  private static CurrentTrip ampere(
      String key, Trip trip, RunState run, Double stated, double parts) {
    Channel channel = trip.channelNumber() == Channel.J.ordinal() ? Channel.J : Channel.I;
    double value = run.scaling().value(channel, trip.value() / parts);
    double acting = run.scaling().value(channel, trip.limit() / parts);
    return new CurrentTrip(key, value, or(stated, acting), acting, "A");
  }

  private static double or(Double said, double used) {
    return said == null ? used : said;
  }
}
