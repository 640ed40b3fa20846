package firstamp.emulate.probe;

import firstamp.protocol.rules.TripRules;

/** How long the limiter may hold the current after a closing, in the firmware's integers. */
final class LimiterWatch {
  private static final int ALLOWED = 16;
  private static final int SURGE = 240;
  private static final int SURGE_HIGH = 160;
  private static final int SURGE_CONVERSIONS = 320;
  private static final int MUST_FALL = 48;
  private static final int HIGHEST_COUNT = 255;
  private static final int FORGETS = 4;

  private final long closedIndex;
  private final boolean surge;
  private final int surgeAllowed;
  private final int supplyV;
  private final int across;
  private int count;
  private int notSeen;
  private int span;

  private LimiterWatch(long closedIndex, boolean surge, int surgeAllowed, int supplyV, int across) {
    this.closedIndex = closedIndex;
    this.surge = surge;
    this.surgeAllowed = surgeAllowed;
    this.supplyV = supplyV;
    this.across = across;
  }

  /** There was no look: a millisecond, whatever it is. */
  static LimiterWatch withoutLook(long closedIndex) {
    return new LimiterWatch(closedIndex, false, ALLOWED, 0, 0);
  }

  /**
   * @param supplyV counts as V would show the supply
   * @param setV counts of V at the end of the look
   * @param over15V whether the supply is above 15 V
   */
  static LimiterWatch afterLook(long closedIndex, int supplyV, int setV, boolean over15V) {
    return new LimiterWatch(
        closedIndex, true, over15V ? SURGE_HIGH : SURGE, supplyV, Math.max(0, supplyV - setV));
  }

  /** Conversions that saw the limiter hold, less one for every fourth that did not. */
  int count() {
    return count;
  }

  /** Conversions since the first of them, both ends counted. */
  int span() {
    return span;
  }

  /**
   * Takes a conversion.
   *
   * @param volts counts of a conversion of V, -1 = it is of another channel
   * @return whether the switch must open
   */
  boolean conversion(long index, boolean limiting, int volts, TripRules limits) {
    boolean inSurge = surge && index - closedIndex < SURGE_CONVERSIONS;
    if (!inSurge) {
      limits.held(false);
    }
    span = limiting || count > 0 ? span + 1 : 0;
    if (!limiting) {
      forget();
      return false;
    }
    if (inSurge) {
      limits.held(true);
    }
    count = Math.min(HIGHEST_COUNT, count + 1);
    if (count > (inSurge ? surgeAllowed : ALLOWED)) {
      return true;
    }
    boolean falls = Math.max(0, supplyV - volts) * 6 < across * 5;
    return volts >= 0 && inSurge && count > MUST_FALL && !falls;
  }

  /** A short that bounces must not restart the count each time. */
  private void forget() {
    if (count == 0 || ++notSeen < FORGETS) {
      return;
    }
    notSeen = 0;
    if (--count == 0) {
      span = 0;
    }
  }
}
