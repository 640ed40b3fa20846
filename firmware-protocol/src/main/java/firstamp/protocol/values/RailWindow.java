package firstamp.protocol.values;

/**
 * The counts between which a rail may be; outside them the probe trips.
 *
 * @param lowCounts trip below, 0 to 1023; 0 = none
 * @param highCounts trip above, 0 to 1023; 1023 = none
 */
public record RailWindow(int lowCounts, int highCounts) {
  /** Not watched. */
  public static final RailWindow NONE = new RailWindow(0, Check.HIGHEST_COUNT);

  public RailWindow {
    Check.range(14, "lowCounts", lowCounts, 0, Check.HIGHEST_COUNT);
    Check.range(15, "highCounts", highCounts, 0, Check.HIGHEST_COUNT);
  }
}
