package firstamp.log.code;

/** Lowest and highest value of a series; 0 and 0 of none. */
public record MinMax(int lowest, int highest) {
  public static MinMax of(int[] values, int count) {
    int lowest = count == 0 ? 0 : values[0];
    int highest = lowest;
    // A new lowest or highest is rare: branches that are foreseen take less than the smaller of
    // two.
    for (int k = 0; k < count; k++) {
      int value = values[k];
      if (value < lowest) {
        lowest = value;
      } else if (value > highest) {
        highest = value;
      }
    }
    return new MinMax(lowest, highest);
  }
}
