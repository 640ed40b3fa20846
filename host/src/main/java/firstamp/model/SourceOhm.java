package firstamp.model;

/**
 * The least resistance that feeds a set: common practice, no source. Bench supply and leads 0.2
 * ohm, adaptor 0.5, dry cells 1, small mains transformer 1 ohm, each with 0.1 ohm of the probe.
 */
public final class SourceOhm {
  private static final double PROBE_OHM = 0.1;

  private SourceOhm() {}

  /** What feeds the set and the probe, ohm. */
  public static double of(JobSheet.Supply supply) {
    double source =
        switch (supply.kind() == null ? "bench" : supply.kind()) {
          case "battery", "mains-transformer" -> 1;
          case "adaptor" -> 0.5;
          default -> 0.2;
        };
    return source + PROBE_OHM;
  }
}
