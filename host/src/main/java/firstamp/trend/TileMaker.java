package firstamp.trend;

import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.log.stream.Overview;
import firstamp.log.stream.StreamSink;
import firstamp.model.ProbeEvent;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.ReadingReducer;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Scaling;

/**
 * Makes tiles of a logged power-up: buckets of 10 ms out of the stream itself, exactly as a live
 * course has them; wider ones out of the log's pyramid.
 *
 * <p>The pyramid keeps no rms. In a wide bucket the level is that of a tone between its lowest and
 * highest value: right for a tone, for noise up to 12 dB too loud. Every verdict is made from the
 * stream, never from this.
 */
final class TileMaker {
  private static final double PEAK_TO_PEAK_OF_RMS = 2 * Math.sqrt(2);

  private final PowerUpReader reader;
  private final Scaling scaling;
  private final long originIndex;

  /**
   * A maker.
   *
   * @param originIndex conversion index at course time 0, a multiple of 160
   */
  TileMaker(PowerUpReader reader, Scaling scaling, long originIndex) {
    this.reader = reader;
    this.scaling = scaling;
    this.originIndex = originIndex;
  }

  private static long conversions(long ms) {
    return ms * SamplePlan.CONVERSIONS_PER_SECOND / 1000;
  }

  /** Buckets of 10 ms. */
  CourseTile fine(long fromMs, int buckets) throws LogException {
    CourseTile tile = new CourseTile(buckets);
    long from = originIndex + conversions(fromMs);
    ReadingColumns columns = new ReadingColumns();
    java.util.function.Consumer<Reading> each =
        reading -> {
          long bucket = (reading.firstIndex() - from) / SamplePlan.CONVERSIONS_PER_READING;
          if (bucket >= 0 && bucket < buckets) {
            columns.of(reading, scaling);
            for (int q = 0; q < Course.Quantity.COUNT; q++) {
              tile.set((int) bucket, q, columns.low[q], columns.high[q], columns.mean[q]);
            }
          }
        };
    ReadingReducer reducer = new ReadingReducer(each);
    reader.values(
        from,
        from + (long) buckets * SamplePlan.CONVERSIONS_PER_READING,
        new StreamSink() {
          @Override
          public void conversions(ConversionBlock block) {
            reducer.accept(block.firstIndex(), block.counts(), 0, block.counts().length);
          }

          @Override
          public void reading(Reading reading) {
            each.accept(reading);
          }

          @Override
          public void event(ProbeEvent event) {
            // Values only.
          }
        });
    return tile;
  }

  /** Buckets of any width that is four times a width of the pyramid. */
  CourseTile wide(long fromMs, long bucketMs, int buckets) throws LogException {
    CourseTile tile = new CourseTile(buckets);
    long from = originIndex + conversions(fromMs);
    long to = from + buckets * conversions(bucketMs);
    Overview overview = reader.overview(from, to, buckets);
    for (int bucket = 0; bucket < buckets; bucket++) {
      current(tile, overview, bucket);
      quantity(tile, overview, bucket, Course.Quantity.SUPPLY_V, Channel.V);
      for (int rail = 1; rail <= 3; rail++) {
        Channel channel = Channel.ofRail(rail);
        // An open clip reads full scale, a value no rail has.
        if (!overview.empty(channel, bucket) && overview.lowest(channel, bucket) < 1023) {
          quantity(tile, overview, bucket, Course.Quantity.ofRail(rail), channel);
        }
      }
      level(tile, overview, bucket, Course.Quantity.HEAD_DBV, Channel.H);
      level(tile, overview, bucket, Course.Quantity.METER_DBV, Channel.M);
    }
    return tile;
  }

  private void current(CourseTile tile, Overview overview, int bucket) {
    boolean fine =
        !overview.empty(Channel.J, bucket)
            && overview.highest(Channel.J, bucket) <= Scaling.FINE_HIGHEST_COUNTS
            && (overview.empty(Channel.I, bucket)
                || scaling.value(Channel.I, overview.highest(Channel.I, bucket))
                    <= Scaling.FINE_HIGHEST_A);
    quantity(tile, overview, bucket, Course.Quantity.SUPPLY_A, fine ? Channel.J : Channel.I);
  }

  private void quantity(
      CourseTile tile, Overview overview, int bucket, Course.Quantity quantity, Channel channel) {
    if (overview.empty(channel, bucket)) {
      return;
    }
    double a = scaling.value(channel, overview.lowest(channel, bucket));
    double b = scaling.value(channel, overview.highest(channel, bucket));
    double m = scaling.value(channel, overview.mean(channel, bucket));
    tile.set(bucket, quantity.ordinal(), Math.min(a, b), Math.max(a, b), m);
  }

  private void level(
      CourseTile tile, Overview overview, int bucket, Course.Quantity quantity, Channel channel) {
    if (overview.empty(channel, bucket)) {
      return;
    }
    double peakToPeak = overview.highest(channel, bucket) - overview.lowest(channel, bucket);
    double dbv = ReadingColumns.dbv(peakToPeak / PEAK_TO_PEAK_OF_RMS, scaling, channel);
    tile.set(bucket, quantity.ordinal(), dbv, dbv, dbv);
  }
}
