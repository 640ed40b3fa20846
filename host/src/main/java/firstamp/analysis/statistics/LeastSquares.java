package firstamp.analysis.statistics;

/**
 * Nonlinear least squares by Levenberg's and Marquardt's damping (D. W. Marquardt, SIAM J. Appl.
 * Math. 11(2), 1963), for few parameters.
 *
 * <p>Standard errors as NIST's reference data sets give them: residual standard deviation with n -
 * p degrees of freedom times the root of the diagonal of the inverse of J'J.
 */
final class LeastSquares {
  private static final int MOST_STEPS = 2000;

  private LeastSquares() {}

  /** A curve with its derivatives. */
  interface Model {
    /**
     * Value at x; fills in the derivative by each parameter.
     *
     * @param x where
     * @param parameters of the curve
     * @param gradient takes one derivative per parameter
     */
    double at(double x, double[] parameters, double[] gradient);
  }

  /**
   * A fit.
   *
   * @param parameters best ones
   * @param errors standard error of each
   * @param residualDeviation root of the residual sum of squares over n - p
   * @param converged false: the figures mean nothing
   */
  record Fit(double[] parameters, double[] errors, double residualDeviation, boolean converged) {}

  /**
   * Fits a model to points, equal weights.
   *
   * @param start first guess of the parameters
   */
  static Fit fit(Model model, double[] x, double[] y, double[] start) {
    int p = start.length;
    double[] best = start.clone();
    Normal normal = new Normal(p);
    double squares = normal.fill(model, x, y, best);
    double damping = 1e-3;
    boolean converged = false;
    int idle = 0;
    for (int step = 0; step < MOST_STEPS && !converged; step++) {
      double[] move = normal.solve(damping);
      double[] next = best.clone();
      double relative = 0;
      for (int i = 0; i < p && move != null; i++) {
        next[i] += move[i];
        relative = Math.max(relative, Math.abs(move[i]) / (Math.abs(next[i]) + 1e-300));
      }
      Normal tried = new Normal(p);
      double squaresThere = move == null ? Double.POSITIVE_INFINITY : tried.fill(model, x, y, next);
      if (squaresThere <= squares) {
        idle = squares - squaresThere <= 1e-15 * squares ? idle + 1 : 0;
        converged = relative < 1e-11 || idle >= 3 || squaresThere == 0;
        best = next;
        squares = squaresThere;
        normal = tried;
        damping = Math.max(1e-12, damping / 8);
      } else {
        // No way down although the step has become tiny: the bottom, to rounding.
        converged = relative < 1e-12 && move != null;
        damping *= 4;
        if (damping > 1e30) {
          break;
        }
      }
    }
    double deviation = x.length > p ? Math.sqrt(squares / (x.length - p)) : 0;
    double[] errors = normal.inverseDiagonal();
    boolean usable = converged && errors != null && Double.isFinite(squares);
    for (int i = 0; i < p && errors != null; i++) {
      errors[i] = deviation * Math.sqrt(errors[i]);
    }
    return new Fit(best, errors == null ? new double[p] : errors, deviation, usable);
  }

  /** J'J and J'r at one place. */
  private static final class Normal {
    private final int p;
    private final double[][] matrix;
    private final double[] right;

    Normal(int p) {
      this.p = p;
      this.matrix = new double[p][p];
      this.right = new double[p];
    }

    double fill(Model model, double[] x, double[] y, double[] parameters) {
      double[] gradient = new double[p];
      double squares = 0;
      for (int k = 0; k < x.length; k++) {
        double residual = y[k] - model.at(x[k], parameters, gradient);
        squares += residual * residual;
        for (int i = 0; i < p; i++) {
          right[i] += gradient[i] * residual;
          for (int j = 0; j <= i; j++) {
            matrix[i][j] += gradient[i] * gradient[j];
          }
        }
      }
      for (int i = 0; i < p; i++) {
        for (int j = i + 1; j < p; j++) {
          matrix[i][j] = matrix[j][i];
        }
      }
      return Double.isNaN(squares) ? Double.POSITIVE_INFINITY : squares;
    }

    double[] solve(double damping) {
      double[][] damped = new double[p][p];
      for (int i = 0; i < p; i++) {
        for (int j = 0; j < p; j++) {
          damped[i][j] = matrix[i][j] * (i == j ? 1 + damping : 1);
        }
      }
      return eliminate(damped, right);
    }

    double[] inverseDiagonal() {
      double[] diagonal = new double[p];
      for (int i = 0; i < p; i++) {
        double[] unit = new double[p];
        unit[i] = 1;
        double[] column = eliminate(matrix, unit);
        if (column == null || !(column[i] >= 0)) {
          return null;
        }
        diagonal[i] = column[i];
      }
      return diagonal;
    }

    /** Scaled to a unit diagonal, then Gauss with pivots; null if singular. */
    private static double[] eliminate(double[][] matrix, double[] right) {
      int p = right.length;
      double[] scale = new double[p];
      double[][] a = new double[p][p + 1];
      for (int i = 0; i < p; i++) {
        scale[i] = 1 / Math.sqrt(matrix[i][i]);
        if (!Double.isFinite(scale[i])) {
          return null;
        }
      }
      for (int i = 0; i < p; i++) {
        for (int j = 0; j < p; j++) {
          a[i][j] = matrix[i][j] * scale[i] * scale[j];
        }
        a[i][p] = right[i] * scale[i];
      }
      for (int column = 0; column < p; column++) {
        int pivot = column;
        for (int row = column + 1; row < p; row++) {
          if (Math.abs(a[row][column]) > Math.abs(a[pivot][column])) {
            pivot = row;
          }
        }
        double[] swap = a[column];
        a[column] = a[pivot];
        a[pivot] = swap;
        if (!(Math.abs(a[column][column]) > 1e-15)) {
          return null;
        }
        for (int row = column + 1; row < p; row++) {
          double factor = a[row][column] / a[column][column];
          for (int j = column; j <= p; j++) {
            a[row][j] -= factor * a[column][j];
          }
        }
      }
      double[] solution = new double[p];
      for (int i = p - 1; i >= 0; i--) {
        double sum = a[i][p];
        for (int j = i + 1; j < p; j++) {
          sum -= a[i][j] * solution[j];
        }
        solution[i] = sum / a[i][i];
      }
      for (int i = 0; i < p; i++) {
        solution[i] *= scale[i];
      }
      return solution;
    }
  }
}
