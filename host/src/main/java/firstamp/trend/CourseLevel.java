package firstamp.trend;

import java.util.Arrays;

/**
 * Buckets of one width, in blocks.
 *
 * <p>One thread writes. The list of blocks is replaced, never changed, so that a reader sees either
 * the old one or the new one; what a reader may look at inside a block is published by the counter
 * of {@link Course}.
 */
final class CourseLevel {
  /** A slot in which nothing was measured. */
  static final float[] NOTHING = new float[Course.Quantity.COUNT];

  static {
    Arrays.fill(NOTHING, Float.NaN);
  }

  private static final int BLOCK_BUCKETS = 4096;

  private final int quantities;
  private volatile Block[] blocks = {};
  private int dropped;

  CourseLevel(int quantities) {
    this.quantities = quantities;
  }

  /** One block: three numbers and a count of values per bucket and quantity. */
  private record Block(float[] low, float[] high, float[] mean, int[] values) {}

  void put(long bucket, float[] low, float[] high, float[] mean) {
    Block block = blockFor(bucket);
    int at = place(bucket);
    for (int quantity = 0; quantity < quantities; quantity++) {
      boolean known =
          Float.isFinite(low[quantity])
              && Float.isFinite(high[quantity])
              && Float.isFinite(mean[quantity]);
      block.low[at + quantity] = low[quantity];
      block.high[at + quantity] = high[quantity];
      block.mean[at + quantity] = mean[quantity];
      block.values[at + quantity] = known ? 1 : 0;
    }
  }

  /** Makes one bucket out of the {@code fanout} buckets of the level below. */
  void gather(CourseLevel below, long bucket, int fanout) {
    Block block = blockFor(bucket);
    int at = place(bucket);
    for (int quantity = 0; quantity < quantities; quantity++) {
      CourseSpan span = new CourseSpan(quantity);
      for (int part = 0; part < fanout; part++) {
        below.addTo(span, bucket * fanout + part);
      }
      block.low[at + quantity] = span.low();
      block.high[at + quantity] = span.high();
      block.mean[at + quantity] = span.mean();
      block.values[at + quantity] = span.values();
    }
  }

  /** Adds a bucket to the span; false if it was let go. */
  boolean addTo(CourseSpan span, long bucket) {
    Block[] now = blocks;
    Block block = now[(int) (bucket / BLOCK_BUCKETS)];
    if (block == null) {
      return false;
    }
    int at = place(bucket) + span.quantity();
    span.add(block.low[at], block.high[at], block.mean[at], block.values[at]);
    return true;
  }

  /** Lets go of all blocks that lie wholly between two buckets. */
  void drop(long fromBucket, long toBucket) {
    int first = (int) ((fromBucket + BLOCK_BUCKETS - 1) / BLOCK_BUCKETS);
    int end = (int) (toBucket / BLOCK_BUCKETS);
    if (first + dropped >= end) {
      return;
    }
    Block[] fewer = blocks.clone();
    Arrays.fill(fewer, first + dropped, end, null);
    dropped = end - first;
    blocks = fewer;
  }

  private Block blockFor(long bucket) {
    int index = (int) (bucket / BLOCK_BUCKETS);
    Block[] now = blocks;
    if (index == now.length) {
      Block[] more = Arrays.copyOf(now, index + 1);
      int size = BLOCK_BUCKETS * quantities;
      more[index] = new Block(new float[size], new float[size], new float[size], new int[size]);
      blocks = more;
      return more[index];
    }
    return now[index];
  }

  private int place(long bucket) {
    return (int) (bucket % BLOCK_BUCKETS) * quantities;
  }
}
