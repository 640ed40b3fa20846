package firstamp.analysis.statistics;

import java.util.Arrays;

/**
 * Mean and standard deviation of a sample, in two passes with the correction of the rounding error
 * (T. F. Chan, G. H. Golub, R. J. LeVeque, The American Statistician 37(3), 1983, from memory).
 *
 * @param count of the values
 * @param mean of them, 0 for none
 * @param deviation divisor n - 1, 0 for fewer than two
 */
public record Moments(int count, double mean, double deviation) {
  /** Moments of these values. */
  public static Moments of(double[] values) {
    return of(values, values.length);
  }

  /** Moments of the first {@code count} values. */
  static Moments of(double[] values, int count) {
    if (count == 0) {
      return new Moments(0, 0, 0);
    }
    double sum = 0;
    for (int i = 0; i < count; i++) {
      sum += values[i];
    }
    double rough = sum / count;
    double rest = 0;
    double squares = 0;
    for (int i = 0; i < count; i++) {
      double difference = values[i] - rough;
      rest += difference;
      squares += difference * difference;
    }
    double mean = rough + rest / count;
    double variance = count < 2 ? 0 : (squares - rest * rest / count) / (count - 1);
    return new Moments(count, mean, Math.sqrt(Math.max(0, variance)));
  }

  /** Correlation of each value with the next: sum of neighbours' products over sum of squares. */
  public static double neighbourCorrelation(double[] values) {
    double mean = of(values).mean();
    double products = 0;
    double squares = 0;
    for (int i = 0; i < values.length; i++) {
      double difference = values[i] - mean;
      squares += difference * difference;
      if (i + 1 < values.length) {
        products += difference * (values[i + 1] - mean);
      }
    }
    return products / squares;
  }

  /** Middle value; the mean of the two middle ones of an even count. */
  static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  /** Standard uncertainty of the mean from the scatter alone (JCGM 100:2008, 4.2.3). */
  public double meanUncertainty() {
    return count == 0 ? 0 : deviation / Math.sqrt(count);
  }
}
