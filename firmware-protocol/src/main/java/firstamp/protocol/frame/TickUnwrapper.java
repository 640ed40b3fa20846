package firstamp.protocol.frame;

import firstamp.protocol.values.Check;
import firstamp.protocol.values.SlotPlan;

/**
 * Widens the probe's 32-bit microsecond tick to 64 bits and to the number of the conversion that
 * starts or runs at it.
 *
 * <p>A tick is taken for the one nearest to the latest seen, so up to 35 minutes back or ahead;
 * older ones (an event sent again) give an earlier time and move nothing. The tick wraps every 2^32
 * us, which is no whole number of slots: a host that joins a probe which has run for longer anchors
 * with {@link #anchor}. For one thread; make a new one when the probe has restarted.
 */
public final class TickUnwrapper {
  private static final long WRAP_MICROS = 1L << 32;
  private static final int MICROS_PER_TWO_CONVERSIONS = 125;

  private boolean started;
  private long latestMicros;

  /** Microseconds since the probe's start for a tick, 0 to 4 294 967 295. */
  public long unwrap(long tickMicros) {
    Check.range(1, "tickMicros", tickMicros, 0, Check.U32);
    if (!started) {
      started = true;
      latestMicros = tickMicros;
      return tickMicros;
    }
    long micros = latestMicros + (int) (tickMicros - latestMicros);
    latestMicros = Math.max(latestMicros, micros);
    return micros;
  }

  /**
   * Starts at a tick whose place in the plan is known, and finds how often the tick has wrapped:
   * the fewest times for which conversion {@code place} modulo {@code period} starts then. With a
   * raw block's first slot and 32 that is unambiguous for 149 hours after the probe's start, with a
   * reading (place 0, period 160) for 745 hours.
   *
   * @param place of the conversion that starts at the tick, 0 to period - 1
   * @param period 32 (slots) or 160 (readings)
   * @return whether there is such a time; if not, nothing has changed and the tick fits no plan
   */
  public boolean anchor(long tickMicros, int place, int period) {
    Check.range(1, "tickMicros", tickMicros, 0, Check.U32);
    Check.range(3, "period", period, 2, SlotPlan.CONVERSIONS_PER_READING);
    Check.range(2, "place", place, 0, period - 1L);
    // 2^32 us is 68 719 476 + 92/125 conversions: places repeat after 125 * period wraps at the
    // latest (slots 125, readings 625).
    for (int wraps = 0; wraps < MICROS_PER_TWO_CONVERSIONS * period; wraps++) {
      long micros = tickMicros + wraps * WRAP_MICROS;
      long conversion = conversionAt(micros);
      if (conversion % period == place && startMicros(conversion) == micros) {
        latestMicros = micros;
        started = true;
        return true;
      }
    }
    return false;
  }

  /** The latest time seen, in microseconds since the probe's start. */
  public long latestMicros() {
    return latestMicros;
  }

  /**
   * Number of the conversion that starts or runs at a time; conversion n starts at floor(62.5 n)
   * us.
   */
  public static long conversionAt(long micros) {
    return Math.floorDiv(2 * micros + 1, MICROS_PER_TWO_CONVERSIONS);
  }

  /** The time at which a conversion starts, in microseconds since the probe's start. */
  public static long startMicros(long conversion) {
    return Math.floorDiv(conversion * MICROS_PER_TWO_CONVERSIONS, 2);
  }
}
