package firstamp.account;

import firstamp.analysis.figures.Evidence;
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
  static final FigureDoubt NOT_KNOWN = new FigureDoubt(null, null, null);

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
  private final Double onS;

  FigureDoubt(Evidence evidence) {
    this(
        evidence.calibration(),
        evidence.supply(),
        evidence.onMs() == null ? null : (Double) (evidence.onMs() / 1000));
  }

  private FigureDoubt(Calibration calibration, Summary.SupplyFigures supply, Double onS) {
    this.calibration = calibration;
    this.supply = supply;
    this.onS = onS;
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

  /** The first second of the current. */
  Double chargeC() {
    if (calibration == null || supply == null || supply.chargeC() == null || onS == null) {
      return null;
    }
    double seconds = Math.min(1, onS);
    return amps(supply.chargeC() / seconds) * seconds;
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

  /** The settled current over the whole time, at the settled volts. */
  Double energyJ() {
    if (calibration == null || supply == null || onS == null) {
      return null;
    }
    Double volts = supply.steadyV();
    return volts == null || supply.steadyA() == null
        ? null
        : (Double) (volts * amps(supply.steadyA()) * onS);
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
