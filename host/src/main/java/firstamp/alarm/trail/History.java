package firstamp.alarm.trail;

/** The latest values of one quantity, reading by reading. Not thread-safe. */
public final class History {
  private final double[] values;
  private long count;
  private int next;

  /**
   * Nothing yet.
   *
   * @param kept how many are kept
   */
  public History(int kept) {
    values = new double[kept];
  }

  /** The next value. */
  public void put(double value) {
    values[next] = value;
    next = next + 1 == values.length ? 0 : next + 1;
    count++;
  }

  /** How many were ever put: the number of the next one. */
  public long count() {
    return count;
  }

  /** The value this many readings ago, 0 = now; as far back as are kept. */
  public double ago(int readings) {
    int place = next - 1 - readings;
    return values[place < 0 ? place + values.length : place];
  }
}
