package firstamp.trend;

import java.util.Arrays;

/** Consecutive buckets of equal width of a logged course; filled once, then only read. */
final class CourseTile {
  private final float[][] low;
  private final float[][] high;
  private final float[][] mean;

  CourseTile(int buckets) {
    low = nothing(buckets);
    high = nothing(buckets);
    mean = nothing(buckets);
  }

  private static float[][] nothing(int buckets) {
    float[][] all = new float[Course.Quantity.COUNT][buckets];
    for (float[] one : all) {
      Arrays.fill(one, Float.NaN);
    }
    return all;
  }

  void set(int bucket, int quantity, double lowest, double highest, double average) {
    low[quantity][bucket] = (float) lowest;
    high[quantity][bucket] = (float) highest;
    mean[quantity][bucket] = (float) average;
  }

  void addTo(CourseSpan span, int bucket) {
    float average = mean[span.quantity()][bucket];
    span.add(
        low[span.quantity()][bucket],
        high[span.quantity()][bucket],
        average,
        Float.isNaN(average) ? 0 : 1);
  }
}
