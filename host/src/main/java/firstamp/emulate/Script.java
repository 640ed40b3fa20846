package firstamp.emulate;

/** What happens to a set over time. */
interface Script {
  /** Nothing happens. */
  Script NONE = (values, sinceClosedS) -> {};

  /**
   * Changes values as time passes.
   *
   * @param sinceClosedS seconds since the switch closed; negative while it never has or is open
   */
  void act(SetValues values, double sinceClosedS);
}
