package firstamp.trend;

/** Lowest, highest and mean of one quantity, gathered from buckets. Used by one thread. */
final class CourseSpan {
  private final int quantity;
  private float low;
  private float high;
  private double sum;
  private long values;

  CourseSpan(int quantity) {
    this.quantity = quantity;
  }

  int quantity() {
    return quantity;
  }

  void clear() {
    values = 0;
    sum = 0;
  }

  void add(float bucketLow, float bucketHigh, float bucketMean, int bucketValues) {
    if (bucketValues == 0) {
      return;
    }
    low = values == 0 ? bucketLow : Math.min(low, bucketLow);
    high = values == 0 ? bucketHigh : Math.max(high, bucketHigh);
    sum += (double) bucketMean * bucketValues;
    values += bucketValues;
  }

  float low() {
    return values == 0 ? Float.NaN : low;
  }

  float high() {
    return values == 0 ? Float.NaN : high;
  }

  float mean() {
    return values == 0 ? Float.NaN : (float) (sum / values);
  }

  int values() {
    return (int) values;
  }
}
