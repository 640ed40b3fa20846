package firstamp.account;

import firstamp.analysis.figures.Evidence;
import firstamp.model.samples.Calibration;
import java.util.List;

/**
 * What changed from one power-up to another, figure by figure.
 *
 * <p>Supply current, supply volts and rails are compared by Welch's test on means of one second of
 * the second half of each; other figures exist once per power-up, so their scatter is an assumption
 * (listed at each, common practice, no source). The calibrations' uncertainty comes on top unless
 * both ran on one calibration of one probe.
 *
 * @param differences figures that both power-ups have, in the order of the summary
 * @param parting where the two traces first diverge, null if they do not
 * @param leakageA extra leakage current of germanium parts at the room temperature of the second
 *     power-up, already in the uncertainty of the current; null = not known, or no such parts
 */
public record Comparison(List<Difference> differences, Parting parting, Double leakageA) {

  /** Copies the list. */
  public Comparison {
    differences = List.copyOf(differences);
  }

  /**
   * One figure.
   *
   * @param figure key of the summary line
   * @param rail 1 to 3, 0 = none
   * @param unit SI symbol
   * @param before value of the first power-up
   * @param after value of the second
   * @param difference second less first
   * @param plusMinus expanded uncertainty of the difference, 95 %
   * @param significant whether the difference is larger than that
   * @param p probability by chance, null where no test was made
   */
  public record Difference(
      String figure,
      int rail,
      String unit,
      double before,
      double after,
      double difference,
      double plusMinus,
      boolean significant,
      Double p) {
    /** SI symbol of the two values: a level is in dBV, its change in dB. */
    public String valueUnit() {
      return unit.equals("dB") && figure.endsWith("Dbv") ? "dBV" : unit;
    }
  }

  /**
   * Where the traces diverge.
   *
   * @param what "supply current", "supply volts" or "rail"
   * @param rail 1 to 3, 0 = none
   * @param atMs since closing
   * @param before value of the first power-up there
   * @param after value of the second
   */
  public record Parting(String what, int rail, double atMs, double before, double after) {}

  /**
   * Compares.
   *
   * @param before first power-up
   * @param after second
   * @param oneProbe whether the same probe took both; with equal scales its calibration then drops
   *     out of the differences
   */
  public static Comparison of(Evidence before, Evidence after, boolean oneProbe) {
    return of(before, after, oneProbe, null);
  }

  /**
   * Compares two power-ups of a set with germanium parts at different room temperatures.
   *
   * @param before first power-up
   * @param after second
   * @param oneProbe whether the same probe took both
   * @param leakageA change of the leakage from the first room to the second; null = not known
   */
  public static Comparison of(Evidence before, Evidence after, boolean oneProbe, Double leakageA) {
    Differences builder = new Differences(before, after, oneProbe, leakageA);
    builder.look();
    builder.supply();
    builder.rails();
    builder.levels();
    return new Comparison(
        builder.differences, TrendDivergence.of(before.course(), after.course()), leakageA);
  }

  /** Whether two calibrations are the same one: equal scales, made at the same time. */
  public static boolean oneCalibration(Calibration one, Calibration two) {
    return one.scales().equals(two.scales())
        && one.calibratedEpochSeconds() == two.calibratedEpochSeconds();
  }
}
