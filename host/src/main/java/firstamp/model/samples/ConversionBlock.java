package firstamp.model.samples;

/**
 * Consecutive conversions as they came from the probe or from the log.
 *
 * <p>The array is handed over, not copied: whoever makes a block never touches its array again.
 *
 * @param firstIndex index of the first conversion since the probe's start
 * @param counts values 0 to 1023, slot order from the first index on
 */
public record ConversionBlock(long firstIndex, short[] counts) {
  /** Index after the last conversion. */
  public long endIndex() {
    return firstIndex + counts.length;
  }
}
