package firstamp.emulate.circuit;

/** What happens to a set over time. */
public interface Script {
  /** Nothing happens. */
  Script NONE = (values, sinceClosedS) -> {};

  /**
   * Changes values as time passes.
   *
   * @param sinceClosedS seconds since the switch closed; while it is open, minus the seconds since
   *     it opened; minus infinity before the first closing
   */
  void act(SetValues values, double sinceClosedS);
}
