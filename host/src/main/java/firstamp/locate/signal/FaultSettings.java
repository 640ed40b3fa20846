package firstamp.locate.signal;

/**
 * What is assumed before anything is measured.
 *
 * @param noFaultShare that nothing in the path is at fault
 * @param pairShare that two joints are at fault at once; a set idle for years has often more than
 *     one
 * @param toleranceDb of the expected levels, one standard deviation
 * @param slipShare of readings that mean nothing (clip slipped, wrong key)
 * @param decidedShare from which a joint is named
 */
public record FaultSettings(
    double noFaultShare,
    double pairShare,
    double toleranceDb,
    double slipShare,
    double decidedShare) {
  /** Checks the shares. */
  public FaultSettings {
    share("noFaultShare", noFaultShare);
    share("pairShare", pairShare);
    share("slipShare", slipShare);
    share("decidedShare", decidedShare);
    if (noFaultShare + pairShare >= 1 || !(toleranceDb >= 0 && toleranceDb <= 20)) {
      throw new IllegalArgumentException(
          "noFaultShare and pairShare must leave room for one fault, toleranceDb be 0 to 20");
    }
  }

  /** For a set at a bench. Common practice, no source. */
  public static FaultSettings usual() {
    return new FaultSettings(0.02, 0.1, 1, 0.005, 0.97);
  }

  private static void share(String name, double value) {
    if (!(value >= 0 && value <= 1)) {
      throw new IllegalArgumentException(name + " is " + value + ", expected 0 to 1");
    }
  }
}
