package firstamp.model.samples;

import java.util.Arrays;

/**
 * 256 conversions of I around a trip, 250 us apart: 128 that end with the deciding one, 128 after
 * it.
 *
 * <p>Immutable.
 */
public final class Capture {
  /** Conversions in a capture. */
  public static final int LENGTH = 256;

  /** Place of the deciding conversion in {@link #counts(int)}. */
  public static final int DECIDING = 127;

  private final int tripNumber;
  private final long decidedMicros;
  private final int missing;
  private final short[] counts;

  /**
   * Takes a copy of the counts.
   *
   * @param tripNumber of the trip
   * @param decidedMicros start of the deciding conversion, microseconds since the probe's start
   * @param missing how many at the start are void (the probe had just started)
   * @param counts 256 values
   */
  public Capture(int tripNumber, long decidedMicros, int missing, short[] counts) {
    if (counts.length != LENGTH) {
      throw new IllegalArgumentException(
          "capture of " + counts.length + " conversions, expected 256");
    }
    this.tripNumber = tripNumber;
    this.decidedMicros = decidedMicros;
    this.missing = missing;
    this.counts = counts.clone();
  }

  /** Number of the trip. */
  public int tripNumber() {
    return tripNumber;
  }

  /** Start of the deciding conversion, microseconds since the probe's start. */
  public long decidedMicros() {
    return decidedMicros;
  }

  /** How many values at the start are void. */
  public int missing() {
    return missing;
  }

  /** Counts of the conversion at a place, 0 to 255; place 127 decided. */
  public int counts(int place) {
    return counts[place];
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Capture that
        && tripNumber == that.tripNumber
        && decidedMicros == that.decidedMicros
        && missing == that.missing
        && Arrays.equals(counts, that.counts);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(counts) * 31 + tripNumber;
  }
}
