package firstamp.alarm;

/** The last second of one value, reading by reading. Not thread-safe. */
final class History {
  private final double[] values = new double[ReadingWindow.KEPT];
  private long count;
  private int next;

  void put(double value) {
    values[next] = value;
    next = next + 1 == values.length ? 0 : next + 1;
    count++;
  }

  /** How many were ever put: the number of the next one. */
  long count() {
    return count;
  }

  /** The value this many readings ago, 0 = now; up to a second back. */
  double ago(int readings) {
    int place = next - 1 - readings;
    return values[place < 0 ? place + values.length : place];
  }
}
