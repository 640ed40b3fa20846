package firstamp.log;

/** Lowest and highest value of a series; 0 and 0 of none. */
record Range(int lowest, int highest) {
  static Range of(int[] values, int count) {
    int lowest = count == 0 ? 0 : values[0];
    int highest = lowest;
    for (int k = 0; k < count; k++) {
      lowest = Math.min(lowest, values[k]);
      highest = Math.max(highest, values[k]);
    }
    return new Range(lowest, highest);
  }
}
