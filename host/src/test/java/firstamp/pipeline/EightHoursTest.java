package firstamp.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.trend.Course;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Memory stays flat over hours: what one more hour takes goes towards nothing. */
class EightHoursTest {
  private static final int READINGS_PER_HOUR = 360_000;

  /** What one hour at full resolution takes: seven quantities, three floats and a count each. */
  private static final long FULL_HOUR_BYTES = READINGS_PER_HOUR * 7L * 16;

  private static long heldBytes() {
    Runtime runtime = Runtime.getRuntime();
    long least = Long.MAX_VALUE;
    for (int round = 0; round < 4; round++) {
      System.gc();
      least = Math.min(least, runtime.totalMemory() - runtime.freeMemory());
    }
    return least;
  }

  private static void append(Course course, long from, long count) {
    float[] values = new float[Course.Quantity.COUNT];
    for (long slot = from; slot < from + count; slot++) {
      java.util.Arrays.fill(values, slot % 977);
      course.append(slot * 10, values, values, values);
    }
  }

  /** Held after 75 min and after so many hours more. */
  private static long growth(int hours) {
    Course course = new Course();
    long first = READINGS_PER_HOUR * 5L / 4;
    append(course, 0, first);
    long before = heldBytes();
    append(course, first, (long) hours * READINGS_PER_HOUR);
    long grown = heldBytes() - before;
    assertThat(course.endMs()).isEqualTo((first + (long) hours * READINGS_PER_HOUR) * 10);
    return grown;
  }

  @Test
  void anotherHourTakesATenthOfWhatTheFirstOneDid() {
    assertThat(growth(1)).isLessThan(FULL_HOUR_BYTES / 10);
  }

  @Test
  @Tag("full")
  void eightHoursTakeNoMoreThanTheirOverview() {
    // 160 ms and 2560 ms buckets of seven quantities, 16 bytes each: 2.7 MB an hour.
    assertThat(growth(8)).isLessThan(8 * FULL_HOUR_BYTES / 12);
  }
}
