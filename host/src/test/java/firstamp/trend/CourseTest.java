package firstamp.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

/** Columns compared with a plain walk over all readings. */
class CourseTest {
  private static final int COUNT = Course.Quantity.COUNT;

  @Test
  void givesExactlyTheLowestAndHighestOfEachColumn() {
    Random random = new Random(7);
    int n = 20_000;
    float[][] kept = new float[n][];
    Course course = new Course();
    for (int slot = 0; slot < n; slot++) {
      if (random.nextInt(50) == 0) {
        continue; // a gap of one reading
      }
      kept[slot] = new float[] {random.nextFloat() - 0.5f, 0, 0};
      kept[slot][1] = kept[slot][0] + random.nextFloat();
      kept[slot][2] = (kept[slot][0] + kept[slot][1]) / 2;
      append(course, 1_000 + slot * 10L, kept[slot][0], kept[slot][1], kept[slot][2]);
    }
    for (int round = 0; round < 300; round++) {
      double from = random.nextDouble() * n * 10 - 5_000;
      double to = from + 1 + random.nextDouble() * n * (round % 3 == 0 ? 0.2 : 10);
      int columns = 1 + random.nextInt(400);
      float[] low = new float[columns];
      float[] high = new float[columns];
      float[] mean = new float[columns];
      course.columns(Course.Quantity.RAIL2_V, from, to, columns, low, high, mean);
      double width = (to - from) / 10 / columns;
      double first = (from - 1_000) / 10;
      for (int column = 0; column < columns; column++) {
        float expectedLow = Float.NaN;
        float expectedHigh = Float.NaN;
        double sum = 0;
        int values = 0;
        int begin = (int) Math.max(0, Math.ceil(first + column * width));
        int end = (int) Math.min(n, Math.ceil(first + (column + 1) * width));
        for (int slot = begin; slot < end; slot++) {
          if (kept[slot] != null) {
            expectedLow = values == 0 ? kept[slot][0] : Math.min(expectedLow, kept[slot][0]);
            expectedHigh = values == 0 ? kept[slot][1] : Math.max(expectedHigh, kept[slot][1]);
            sum += kept[slot][2];
            values++;
          }
        }
        assertThat(low[column]).isEqualTo(Float.valueOf(expectedLow));
        assertThat(high[column]).isEqualTo(Float.valueOf(expectedHigh));
        if (values > 0) {
          assertThat((double) mean[column]).isCloseTo(sum / values, within(1e-5));
        }
      }
    }
  }

  @Test
  void keepsASpikeOfOneReadingInEightHours() {
    Course course = new Course();
    int n = 8 * 3600 * 100;
    int spike = 3 * 3600 * 100 + 12_345;
    for (int slot = 0; slot < n; slot++) {
      append(course, slot * 10L, 1, slot == spike ? 9 : 1, 1);
    }
    float[] low = new float[1200];
    float[] high = new float[1200];
    float[] mean = new float[1200];
    course.columns(Course.Quantity.RAIL2_V, 0, n * 10.0, 1200, low, high, mean);
    // 2400 readings a column: the spike is in column (1080000 + 12345) / 2400 = 455.14.
    assertThat(high[455]).isEqualTo(9);
    high[455] = 1;
    assertThat(high).containsOnly(1);
    assertThat(low).containsOnly(1);
    // Zoomed in on the part that was let go, its 160 ms bucket still holds it.
    course.columns(
        Course.Quantity.RAIL2_V, spike * 10.0 - 1000, spike * 10.0 + 1000, 20, low, high, mean);
    assertThat(Arrays.copyOf(high, 20)).contains(9f);
    // Begin and end are whole: the last 100 readings one by one.
    course.columns(Course.Quantity.RAIL2_V, n * 10.0 - 1000, n * 10.0, 100, low, high, mean);
    assertThat(Arrays.copyOf(high, 100)).containsOnly(1f);
    course.columns(Course.Quantity.RAIL2_V, 0, 1000, 100, low, high, mean);
    assertThat(Arrays.copyOf(high, 100)).containsOnly(1f);
  }

  @Test
  void holdsNotMeasurableApartFromZero() {
    Course course = new Course();
    float nan = Float.NaN;
    append(course, 0, 0, 0, 0);
    append(course, 10, nan, nan, nan);
    append(course, 20, 2, 2, 2);
    float[] low = new float[3];
    float[] high = new float[3];
    float[] mean = new float[3];
    course.columns(Course.Quantity.RAIL2_V, 0, 30, 3, low, high, mean);
    assertThat(low).containsExactly(0, nan, 2);
    assertThat(high).containsExactly(0, nan, 2);
    assertThat(mean).containsExactly(0, nan, 2);
    course.columns(Course.Quantity.SUPPLY_A, 0, 30, 3, low, high, mean);
    assertThat(mean).containsExactly(nan, nan, nan);
  }

  @Test
  void leavesAGapAGap() {
    Course course = new Course();
    append(course, 500, 1, 1, 1);
    append(course, 600, 2, 2, 2);
    assertThat(course.beginMs()).isEqualTo(500);
    assertThat(course.endMs()).isEqualTo(610);
    float[] low = new float[11];
    course.columns(Course.Quantity.RAIL2_V, 500, 610, 11, low, new float[11], new float[11]);
    float[] expected = new float[11];
    Arrays.fill(expected, Float.NaN);
    expected[0] = 1;
    expected[10] = 2;
    assertThat(low).containsExactly(expected);
  }

  @Test
  void refusesAReadingThatGoesBack() {
    Course course = new Course();
    append(course, 100, 1, 1, 1);
    assertThatThrownBy(() -> append(course, 100, 1, 1, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("110 ms");
    assertThatThrownBy(() -> append(course, 115, 1, 1, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(course.endMs()).isEqualTo(110);
  }

  @Test
  void readersNeverSeeAHalfWrittenReading() throws InterruptedException {
    Course course = new Course();
    AtomicBoolean done = new AtomicBoolean();
    AtomicReference<String> wrong = new AtomicReference<>();
    Thread reader =
        new Thread(
            () -> {
              float[] low = new float[64];
              float[] high = new float[64];
              float[] mean = new float[64];
              while (!done.get() && wrong.get() == null) {
                long end = course.endMs();
                if (end < 1000) {
                  continue;
                }
                course.columns(Course.Quantity.RAIL2_V, 0, end, 64, low, high, mean);
                for (int column = 0; column < 64; column++) {
                  // Readings hold their own number: each column must begin where its edge lies.
                  double edge = Math.ceil(column * (end / 10.0) / 64);
                  if (low[column] != (float) edge || high[column] < low[column]) {
                    wrong.set("column " + column + " of " + end + " ms begins " + low[column]);
                  }
                }
              }
            },
            "course-reader");
    reader.start();
    for (int slot = 0; slot < 300_000; slot++) {
      append(course, slot * 10L, slot, slot, slot);
    }
    done.set(true);
    reader.join();
    assertThat(wrong.get()).isNull();
  }

  private static org.assertj.core.data.Offset<Double> within(double value) {
    return org.assertj.core.data.Offset.offset(value);
  }

  private static void append(Course course, long ms, float low, float high, float mean) {
    float[] lows = new float[COUNT];
    float[] highs = new float[COUNT];
    float[] means = new float[COUNT];
    Arrays.fill(lows, Float.NaN);
    Arrays.fill(highs, Float.NaN);
    Arrays.fill(means, Float.NaN);
    int at = Course.Quantity.RAIL2_V.ordinal();
    lows[at] = low;
    highs[at] = high;
    means[at] = mean;
    course.append(ms, lows, highs, means);
  }
}
