package firstamp.window.present;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.trend.Course;
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

  /** The switch opens; an RC fall of 0.5 s. The word changes within 0.2 s and stays to the end. */
  @Test
  void saysFallingJustAfterTheSwitchOpened() {
    Course course = new Course();
    double openMs = 4000;
    for (int slot = 0; slot < 500; slot++) {
      double ms = slot * 10.0;
      double ripple = 0.02 * Math.sin(2 * Math.PI * 100 * ms / 1000 + 1);
      double volts = ms < openMs ? 12 + ripple : 12 * Math.exp(-(ms - openMs) / 500);
      add(course, slot * 10L, volts);
      Trend trend = Trend.of(course, Course.Quantity.SUPPLY_A, course.endMs(), 0.02);
      if (ms >= 2000 && ms < openMs) {
        assertThat(trend).as("%s ms, on", ms).isEqualTo(Trend.STEADY);
      } else if (ms >= openMs + 200) {
        assertThat(trend).as("%s ms, off", ms).isEqualTo(Trend.FALLING);
      }
    }
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
