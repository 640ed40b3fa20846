package firstamp.account;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.statistics.SupplyIntegral;
import firstamp.analysis.statistics.Uncertainty;
import firstamp.model.Summary;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import java.util.Set;

/**
 * Expanded uncertainties (k = 2) of figures that the summary states none for, and which figures
 * come from an input that was never calibrated. Null where nothing is known.
 */
final class FigureDoubt {
  static final FigureDoubt NOT_KNOWN = new FigureDoubt(null, null, null, null);

  /** Above it a current comes from the coarse range. */
  private static final double FINE_RANGE_A = 0.35;

  private static final double INRUSH_S = 0.1;
  private static final Set<String> HEAD =
      Set.of(
          "headDbv",
          "headUa",
          "headBelowMeterDb",
          "humDbv",
          "noiseDbv",
          "speechDb",
          "overExpectedDb");
  private static final Set<String> METER =
      Set.of(
          "meterDbv",
          "meterDbu",
          "headBelowMeterDb",
          "needleVu",
          "needlePercent",
          "speechDb",
          "overExpectedDb");

  private final Calibration calibration;
  private final Summary.SupplyFigures supply;
  private final SupplyIntegral firstSecond;
  private final SupplyIntegral whole;

  FigureDoubt(Evidence evidence) {
    this(
        evidence.calibration(),
        evidence.supply(),
        evidence.firstSecond(),
        evidence.course() == null ? null : evidence.course().supply());
  }

  private FigureDoubt(
      Calibration calibration,
      Summary.SupplyFigures supply,
      SupplyIntegral firstSecond,
      SupplyIntegral whole) {
    this.calibration = calibration;
    this.supply = supply;
    this.firstSecond = firstSecond;
    this.whole = whole;
  }

  /** Whether the figure of a key comes from an input whose gain was never measured. */
  boolean about(String key) {
    return calibration != null
        && (HEAD.contains(key) && !calibration.calibrated(Channel.H)
            || METER.contains(key) && !calibration.calibrated(Channel.M));
  }

  /** Of a level on one input. */
  Double levelDb(Channel channel) {
    return calibration == null ? null : (Double) new Uncertainty(calibration).levelDb(channel);
  }

  /** Of a figure of the head; its current has none: nobody knows how good the resistor is. */
  Double levelDb(String key) {
    if (calibration == null) {
      return null;
    }
    return switch (key) {
      case "headDbv" -> levelDb(Channel.H);
      case "headBelowMeterDb" -> Math.hypot(levelDb(Channel.H), levelDb(Channel.M));
      default -> null;
    };
  }

  /** One conversion of the coarse range, with a count of noise. */
  Double peakA() {
    if (calibration == null || supply == null || supply.inrushPeakA() == null) {
      return null;
    }
    double countA = Math.abs(calibration.scale(Channel.I).perCount());
    return new Uncertainty(calibration).expanded(Channel.I, supply.inrushPeakA(), countA);
  }

  Double chargeC() {
    return calibration == null || supply == null || supply.chargeC() == null || firstSecond == null
        ? null
        : (Double) firstSecond.chargePlusMinus(calibration);
  }

  /** Twice the current, its uncertainty and the time; at rest the square of the uncertainty. */
  Double inrushI2tA2s() {
    if (calibration == null || supply == null || supply.inrushI2tA2s() == null) {
      return null;
    }
    double rmsA = Math.sqrt(Math.max(0, supply.inrushI2tA2s()) / INRUSH_S);
    double plusMinusA = amps(rmsA);
    return (2 * rmsA + plusMinusA) * plusMinusA * INRUSH_S;
  }

  Double energyJ() {
    return calibration == null || whole == null
        ? null
        : (Double) whole.energyPlusMinus(calibration);
  }

  /** Whether the settled current is more than its uncertainty: only then it makes ohms. */
  boolean currentSeen() {
    return supply == null
        || supply.steadyA() == null
        || supply.steadyAPlusMinus() == null
        || Math.abs(supply.steadyA()) >= supply.steadyAPlusMinus();
  }

  private double amps(double meanA) {
    boolean fine = supply.inrushPeakA() == null || supply.inrushPeakA() < FINE_RANGE_A;
    return new Uncertainty(calibration).expanded(fine ? Channel.J : Channel.I, meanA, 0);
  }
}
