package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.session.Course;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class TrendTest {
  @Test
  void tellsRisingSteadyAndFalling() {
    assertThat(of(s -> 0.1 + 0.02 * s)).isEqualTo(Trend.RISING);
    assertThat(of(s -> 0.3 - 0.02 * s)).isEqualTo(Trend.FALLING);
    assertThat(of(s -> 0.118)).isEqualTo(Trend.STEADY);
  }

  @Test
  void callsRippleAndCreepUnderOnePercentSteady() {
    assertThat(of(s -> 0.118 + 0.004 * Math.sin(s * 60))).isEqualTo(Trend.STEADY);
    assertThat(of(s -> 0.118 + 0.0003 * s)).isEqualTo(Trend.STEADY);
  }

  @Test
  void saysNothingBeforeThereIsEnough() {
    Course course = new Course();
    add(course, 0, 1);
    assertThat(Trend.of(course, Course.Quantity.SUPPLY_A, course.endMs(), 0)).isNull();
  }

  private static Trend of(DoubleUnaryOperator amps) {
    Course course = new Course();
    for (int slot = 0; slot < 300; slot++) {
      add(course, slot * 10L, amps.applyAsDouble(slot / 100.0));
    }
    return Trend.of(course, Course.Quantity.SUPPLY_A, course.endMs(), 0.0005);
  }

  private static void add(Course course, long ms, double amps) {
    float[] values = new float[Course.Quantity.COUNT];
    values[0] = (float) amps;
    course.append(ms, values, values, values);
  }
}
