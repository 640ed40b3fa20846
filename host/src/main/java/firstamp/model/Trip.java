package firstamp.model;

/**
 * The probe opened the switch by itself: its own account, in counts and probe time.
 *
 * @param number of the trip, kept in the probe; a restore needs it
 * @param cause why
 * @param channelNumber of the deciding channel, -1 = none
 * @param confirmed conversions in a row over the limit
 * @param crossedMicros start of the first of them, microseconds since the probe's start
 * @param decidedMicros start of the deciding conversion
 * @param openedMicros the switch pin went low
 * @param value counts of the deciding conversion (mean: 1/16 count); of a failed self-test without
 *     a channel its bits
 * @param limit counts, absolute (mean: 1/16 count)
 * @param i2tSum counts squared times I conversions
 * @param i2tLimit its budget; 0 = not watched
 * @param limitedConversions how many conversions had seen the limiter hold the current, as the
 *     probe counts them; null = kept before probes reported it
 * @param lastVCounts the last conversion of V before the opening; null as above
 */
public record Trip(
    int number,
    TripCause cause,
    int channelNumber,
    int confirmed,
    long crossedMicros,
    long decidedMicros,
    long openedMicros,
    int value,
    int limit,
    long i2tSum,
    long i2tLimit,
    Integer limitedConversions,
    Integer lastVCounts) {
  private static final double CONVERSIONS_PER_MS = 16;

  /**
   * How long the limiter had held the current, milliseconds; null = it did not, or it is not known.
   */
  public Double limitedMs() {
    return limitedConversions == null || limitedConversions == 0
        ? null
        : (Double) (limitedConversions / CONVERSIONS_PER_MS);
  }

  /** What the self-test found, as bits; 0 = that is not why, or the probe did not say. */
  public int selfTestBits() {
    if (cause != TripCause.SELF_TEST) {
      return 0;
    }
    // The only one that a conversion decides: the inputs of the current disagree.
    return channelNumber < 0 ? value : SelfTestWords.CURRENTS;
  }
}
