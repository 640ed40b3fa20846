package firstamp.protocol.values;

/**
 * What one reading (10 ms) keeps of a channel.
 *
 * @param sumCounts sum of its conversions, 0 to 65535
 * @param lowestCounts 0 to 1023
 * @param highestCounts 0 to 1023
 * @param sumOfSquaresCounts2 sum of the squares, unsigned 32 bits
 */
public record ChannelSum(
    int sumCounts, int lowestCounts, int highestCounts, long sumOfSquaresCounts2) {
  public ChannelSum {
    Check.range(3, "sumCounts", sumCounts, 0, Check.U16);
    Check.range(3, "lowestCounts", lowestCounts, 0, Check.HIGHEST_COUNT);
    Check.range(3, "highestCounts", highestCounts, 0, Check.HIGHEST_COUNT);
    Check.range(3, "sumOfSquaresCounts2", sumOfSquaresCounts2, 0, Check.U32);
  }
}
