package firstamp.trend;

import java.util.Arrays;

/**
 * The readings of one power-up in physical units: lowest, highest and mean of each quantity per 10
 * ms, for drawing.
 *
 * <p>One thread appends, any number of threads read, none waits for another: a reading is written
 * first and then published by one volatile counter. {@link #columns} is exact: each column gets the
 * lowest and the highest of exactly the readings that begin in it.
 *
 * <p>Memory stays bounded. Three levels stand above each other: 10 ms, 160 ms and 2560 ms. The 10
 * ms level is kept for the first ten minutes and for the last fifty; between them column edges snap
 * to 160 ms. Eight hours take about 65 MB.
 */
public final class Course implements TimeCourse {
  /** Milliseconds from one reading to the next. */
  public static final int SLOT_MS = 10;

  private static final int FANOUT = 16;
  private static final int[] LEVEL_SLOTS = {1, FANOUT, FANOUT * FANOUT};
  private static final int FINE_FIRST_SLOTS = 10 * 60 * 100;
  private static final int FINE_LAST_SLOTS = 50 * 60 * 100;

  private final CourseLevel[] levels = new CourseLevel[LEVEL_SLOTS.length];

  /** Course time of the first slot; meaningful once {@link #slots} is over 0. */
  private long originMs;

  /** Published last: everything below it is complete and never changes. */
  private volatile long slots;

  /** An empty course. */
  public Course() {
    for (int level = 0; level < levels.length; level++) {
      levels[level] = new CourseLevel(Quantity.COUNT);
    }
  }

  /**
   * Adds one reading; only ever called by one thread. Time that was left out since the last one is
   * a gap and stays one.
   *
   * @param startMs course time at which it begins, a multiple of 10 ms, after all before it
   * @param low lowest per quantity in the order of {@link Quantity}; NaN = not measurable
   * @param high highest
   * @param mean mean
   */
  public void append(long startMs, float[] low, float[] high, float[] mean) {
    long count = slots;
    if (count == 0) {
      originMs = startMs;
    }
    long slot = (startMs - originMs) / SLOT_MS;
    if (slot < count || (startMs - originMs) % SLOT_MS != 0) {
      throw new IllegalArgumentException(
          "reading at "
              + startMs
              + " ms, expected a whole number of 10 ms from "
              + (originMs + count * SLOT_MS)
              + " ms on");
    }
    while (count < slot) {
      put(count++, CourseLevel.NOTHING, CourseLevel.NOTHING, CourseLevel.NOTHING);
    }
    put(count++, low, high, mean);
    slots = count;
    long middleEnd = count - FINE_LAST_SLOTS;
    if (middleEnd > FINE_FIRST_SLOTS) {
      levels[0].drop(FINE_FIRST_SLOTS, middleEnd);
    }
  }

  private void put(long slot, float[] low, float[] high, float[] mean) {
    levels[0].put(slot, low, high, mean);
    for (int level = 1; level < levels.length; level++) {
      if ((slot + 1) % LEVEL_SLOTS[level] != 0) {
        return;
      }
      levels[level].gather(levels[level - 1], (slot + 1) / LEVEL_SLOTS[level] - 1, FANOUT);
    }
  }

  /** Whether nothing was added yet. */
  @Override
  public boolean isEmpty() {
    return slots == 0;
  }

  /** Start of the first reading, on the time axis of the course; 0 while empty. */
  @Override
  public long beginMs() {
    return slots == 0 ? 0 : originMs;
  }

  /** Course time of the end of the newest reading, 0 while empty. */
  @Override
  public long endMs() {
    long count = slots;
    return count == 0 ? 0 : originMs + count * SLOT_MS;
  }

  /**
   * Lowest, highest and mean of one quantity in each of n columns of equal width.
   *
   * <p>A reading belongs to the column in which it begins; a column without a value holds NaN.
   *
   * @param quantity which
   * @param fromMs course time of the left edge
   * @param toMs course time of the right edge
   * @param n number of columns
   * @param low receives n values
   * @param high receives n values
   * @param mean receives n values
   */
  @Override
  public void columns(
      Quantity quantity,
      double fromMs,
      double toMs,
      int n,
      float[] low,
      float[] high,
      float[] mean) {
    if (!(toMs > fromMs) || n < 1) {
      throw new IllegalArgumentException(
          n + " columns from " + fromMs + " to " + toMs + " ms, expected at least 1 of some width");
    }
    long count = slots;
    double widthSlots = (toMs - fromMs) / SLOT_MS / n;
    double firstSlot = count == 0 ? 0 : (fromMs - originMs) / SLOT_MS;
    CourseSpan span = new CourseSpan(quantity.ordinal());
    long begin = clamp(Math.ceil(firstSlot), count);
    for (int column = 0; column < n; column++) {
      long end = clamp(Math.ceil(firstSlot + (column + 1) * widthSlots), count);
      span.clear();
      take(span, begin, end);
      low[column] = span.low();
      high[column] = span.high();
      mean[column] = span.mean();
      begin = end;
    }
  }

  private static long clamp(double slot, long count) {
    return (long) Math.max(0, Math.min(count, slot));
  }

  /** Takes the slots from begin to end out of the coarsest whole buckets that make them up. */
  private void take(CourseSpan span, long begin, long end) {
    long at = begin;
    while (at < end) {
      int level = levels.length - 1;
      while (level > 0 && (at % LEVEL_SLOTS[level] != 0 || at + LEVEL_SLOTS[level] > end)) {
        level--;
      }
      if (levels[level].addTo(span, at / LEVEL_SLOTS[level])) {
        at += LEVEL_SLOTS[level];
      } else {
        // The 10 ms level was let go here: the 160 ms bucket counts where it begins.
        long bucket = at / FANOUT;
        if (at % FANOUT == 0) {
          levels[1].addTo(span, bucket);
        }
        at = (bucket + 1) * FANOUT;
      }
    }
  }

  /** What is kept; the order is that of the arrays given to {@link Course#append}. */
  public enum Quantity {
    /** Supply current, ampere. */
    SUPPLY_A,
    /** Volts on the set side of the switch. */
    SUPPLY_V,
    /** Rail on clip 1, volt against chassis. */
    RAIL1_V,
    /** Rail on clip 2, volt against chassis. */
    RAIL2_V,
    /** Rail on clip 3, volt against chassis. */
    RAIL3_V,
    /** Level of the head, dBV. */
    HEAD_DBV,
    /** Level of the meter, dBV. */
    METER_DBV;

    /** How many there are. */
    public static final int COUNT = 7;

    /**
     * The quantity of a rail.
     *
     * @param input 1 to 3
     */
    public static Quantity ofRail(int input) {
      return switch (input) {
        case 1 -> RAIL1_V;
        case 2 -> RAIL2_V;
        case 3 -> RAIL3_V;
        default -> throw new IllegalArgumentException("rail " + input + ", allowed 1 to 3");
      };
    }
  }

  @Override
  public String toString() {
    return "Course[" + slots + " readings of " + Arrays.toString(Quantity.values()) + "]";
  }
}
