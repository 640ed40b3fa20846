package firstamp.analysis.statistics;

/**
 * y = offset + rise (1 - exp(-rate x)): the charging of one capacitor through one resistor (US Army
 * lesson MM0704; curve of NIST's data sets Misra1a and BoxBOD), fitted by least squares.
 *
 * @param offset y at x = 0
 * @param offsetError its standard error, 0 where it was given
 * @param rise from there to the end
 * @param riseError its standard error
 * @param rate 1 / time constant, in 1 / unit of x
 * @param rateError its standard error
 * @param residualDeviation scatter about the curve, unit of y
 */
public record FirstOrderFit(
    double offset,
    double offsetError,
    double rise,
    double riseError,
    double rate,
    double rateError,
    double residualDeviation) {

  /** Time constant, unit of x. */
  public double tau() {
    return 1 / rate;
  }

  /** Standard error of the time constant, first order in the rate's. */
  public double tauError() {
    return rateError / (rate * rate);
  }

  /** Scatter as a share of the rise: how badly one time constant describes the course. */
  public double misfit() {
    return residualDeviation / Math.abs(rise);
  }

  /** Value of the curve. */
  public double at(double x) {
    return offset + rise * (1 - StrictMath.exp(-rate * x));
  }

  /**
   * Fits rise and rate; the curve begins at 0. The rise enters linearly, so its first guess is
   * solved for at the rate's.
   *
   * @return null if no fit was found
   */
  static FirstOrderFit fromZero(double[] x, double[] y, double startRate) {
    double products = 0;
    double squares = 0;
    for (int k = 0; k < x.length; k++) {
      double shape = 1 - StrictMath.exp(-startRate * x[k]);
      products += shape * y[k];
      squares += shape * shape;
    }
    LeastSquares.Model model =
        (at, b, gradient) -> {
          double decay = StrictMath.exp(-b[1] * at);
          gradient[0] = 1 - decay;
          gradient[1] = b[0] * at * decay;
          return b[0] * (1 - decay);
        };
    LeastSquares.Fit fit =
        LeastSquares.fit(model, x, y, new double[] {products / squares, startRate});
    double[] b = fit.parameters();
    double[] e = fit.errors();
    return !fit.converged()
        ? null
        : new FirstOrderFit(0, 0, b[0], e[0], b[1], e[1], fit.residualDeviation());
  }

  /**
   * Fits offset, rise and rate; where the first guess comes from is the data itself.
   *
   * @return null if no fit was found or fewer than 6 points were given
   */
  public static FirstOrderFit of(double[] x, double[] y) {
    int n = x.length;
    if (n < 6) {
      return null;
    }
    double begin = y[0];
    double end = Moments.of(tail(y, Math.max(1, n / 10))).mean();
    double guess = 1 / Math.max(1e-12, reach(x, y, begin + 0.6321 * (end - begin)) - x[0]);
    LeastSquares.Model model =
        (at, b, gradient) -> {
          double decay = StrictMath.exp(-b[2] * at);
          gradient[0] = 1;
          gradient[1] = 1 - decay;
          gradient[2] = b[1] * at * decay;
          return b[0] + b[1] * (1 - decay);
        };
    LeastSquares.Fit fit = LeastSquares.fit(model, x, y, new double[] {begin, end - begin, guess});
    double[] b = fit.parameters();
    double[] e = fit.errors();
    return !fit.converged() || !(b[2] > 0) || b[1] == 0
        ? null
        : new FirstOrderFit(b[0], e[0], b[1], e[1], b[2], e[2], fit.residualDeviation());
  }

  private static double[] tail(double[] y, int count) {
    double[] tail = new double[count];
    System.arraycopy(y, y.length - count, tail, 0, count);
    return tail;
  }

  /** First x at which y has moved this far from its start. */
  private static double reach(double[] x, double[] y, double level) {
    boolean rising = level > y[0];
    for (int i = 1; i < y.length; i++) {
      if (rising ? y[i] >= level : y[i] <= level) {
        return x[i];
      }
    }
    return x[x.length - 1];
  }
}
