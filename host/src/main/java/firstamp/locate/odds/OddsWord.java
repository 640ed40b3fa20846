package firstamp.locate.odds;

/** How odds are said to people: no percentages. The limits are common practice, no source. */
public enum OddsWord {
  /** Hardly anything else is left. */
  MOST_LIKELY("most likely"),
  /** Well above the others. */
  LIKELY("likely"),
  /** Possible. */
  LESS_LIKELY("less likely"),
  /** Nearly excluded. */
  HARDLY("hardly"),
  /** Excluded by a reason that is given. */
  STRUCK_OUT("ruled out");

  private final String words;

  OddsWord(String words) {
    this.words = words;
  }

  /** For people. */
  public String words() {
    return words;
  }

  /** The word for a share among this many explanations. */
  public static OddsWord of(double share, int among) {
    double even = 1.0 / Math.max(2, among);
    if (share >= 0.8) {
      return MOST_LIKELY;
    }
    if (share >= 1.2 * even) {
      return LIKELY;
    }
    return share >= 0.1 * even ? LESS_LIKELY : HARDLY;
  }
}
