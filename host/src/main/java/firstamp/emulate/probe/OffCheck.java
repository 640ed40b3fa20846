package firstamp.emulate.probe;

import firstamp.model.samples.Channel;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.values.ChannelScale;

/**
 * The check before the zeros: no current with the switch open, and the volts on the set side fall
 * (wire-format.md section 4).
 */
final class OffCheck {
  private static final int VOLTS_ABOVE_COUNTS = 4;
  private static final int CURRENT_CONVERSIONS = 100;
  private static final long FALL_CONVERSIONS = 32_000;
  private static final long LONGEST_CONVERSIONS = 480_000;
  private static final int LOWEST_VOLT_COUNTS = 17;

  private final long from;
  private final int overJ;
  private final int quietV;
  private int currentInRow;
  private boolean currentNow;
  private int atWindowStart = -1;
  private long windowStart;
  private boolean quiet;

  /**
   * @param from the first conversion of the check
   */
  OffCheck(long from, Memory memory) {
    this.from = from;
    this.overJ = ZeroBand.of(memory, Channel.J).highestCounts();
    ChannelScale v = memory.calibration().scales().get(Channel.V.ordinal());
    this.quietV = Math.max(LOWEST_VOLT_COUNTS, v.countsAt(0) + VOLTS_ABOVE_COUNTS);
  }

  /** Takes a conversion; null = no fault (yet). */
  LookOutcome conversion(long n, Channel channel, int counts) {
    if (channel == Channel.J) {
      currentNow = counts > overJ;
      currentInRow = currentNow ? currentInRow + 1 : 0;
      if (currentInRow >= CURRENT_CONVERSIONS) {
        return LookOutcome.CURRENT_WHILE_OFF;
      }
    }
    return channel == Channel.V ? volts(n, counts) : null;
  }

  private LookOutcome volts(long n, int counts) {
    quiet = counts <= quietV;
    if (quiet) {
      return null;
    }
    if (atWindowStart < 0) {
      atWindowStart = counts;
      windowStart = n;
    } else if (n - windowStart >= FALL_CONVERSIONS) {
      if (counts * 10 > atWindowStart * 9) {
        return LookOutcome.VOLTS_STAY;
      }
      atWindowStart = counts;
      windowStart = n;
    }
    return n - from >= LONGEST_CONVERSIONS ? LookOutcome.VOLTS_STAY : null;
  }

  /** Whether the zeros may be taken now: V low enough, no current at this moment. */
  boolean quiet() {
    return quiet && !currentNow;
  }
}
