package firstamp.analysis.figures;

import firstamp.analysis.statistics.FirstOrderFit;
import java.util.ArrayList;
import java.util.List;

/**
 * The charging of the capacitors taken out of the supply current: what remains is load and leakage.
 *
 * <p>I(t) = rest + peak exp(-t / tau), fitted to the readings from the highest one on; the rest of
 * each reading is what the exponential does not explain.
 *
 * @param tauMs time constant of the charging
 * @param tauMsError its standard error
 * @param chargeC that went into the capacitors after the first reading taken, coulomb
 * @param rest supply current without the charging, a reading of 10 ms each
 * @param fromMs time of the first value of {@code rest}, since closing
 */
public record ChargeFit(
    double tauMs, double tauMsError, double chargeC, List<Double> rest, double fromMs) {
  private static final int LEAST_READINGS = 20;
  private static final double LEAST_SHARE = 0.2;
  private static final double MOST_MISFIT = 0.1;

  private static final int LAST = 20;

  /** Load and leakage when the charging is over: mean of the last 200 ms of what was fitted. */
  public double restA() {
    double sum = 0;
    for (double amps : rest.subList(rest.size() - LAST, rest.size())) {
      sum += amps;
    }
    return sum / LAST;
  }

  /** Copies the list. */
  public ChargeFit {
    rest = List.copyOf(rest);
  }

  /** The fit; null if there was no surge, too little time, or no one time constant describes it. */
  public static ChargeFit of(PowerUpTrend course) {
    if (course == null || course.start().size() < LEAST_READINGS) {
      return null;
    }
    int peak = 0;
    int n = course.start().size();
    for (int k = 1; k < n / 2; k++) {
      if (course.start().get(k).amps() > course.start().get(peak).amps()) {
        peak = k;
      }
    }
    double[] x = new double[n - peak];
    double[] y = new double[n - peak];
    for (int k = 0; k < x.length; k++) {
      x[k] = k * 0.01;
      y[k] = course.start().get(peak + k).amps();
    }
    FirstOrderFit fit = FirstOrderFit.of(x, y);
    if (fit == null
        || x.length < LEAST_READINGS
        || fit.rise() >= 0
        || fit.misfit() > MOST_MISFIT
        || -fit.rise() < LEAST_SHARE * y[0]) {
      return null;
    }
    List<Double> rest = new ArrayList<>();
    for (int k = 0; k < x.length; k++) {
      rest.add(y[k] + fit.rise() * StrictMath.exp(-fit.rate() * x[k]));
    }
    return new ChargeFit(
        fit.tau() * 1000, fit.tauError() * 1000, -fit.rise() * fit.tau(), rest, peak * 10.0);
  }
}
