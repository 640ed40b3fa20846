package firstamp.window.widgets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import org.junit.jupiter.api.Test;

class LaneScaleTest {
  @Test
  void givesEveryWindowTheSamePlace() {
    for (double[] window : new double[][] {{7.79, 8.61}, {-3.6, -4.4}, {11, 13}, {40, 60}}) {
      LaneScale scale = LaneScale.around(window[0], window[1]);
      assertThat(scale.place(window[0])).isCloseTo(0.42, offset(1e-9));
      assertThat(scale.place(window[1])).isCloseTo(0.74, offset(1e-9));
      assertThat(scale.place(0)).isCloseTo(0.08, offset(1e-9));
    }
  }

  @Test
  void risesAllTheWay() {
    LaneScale scale = LaneScale.around(7.79, 8.61);
    double before = -1;
    for (double volts = -20; volts <= 40; volts += 0.01) {
      double place = scale.place(volts);
      assertThat(place).isGreaterThanOrEqualTo(before).isBetween(0.0, 1.0);
      before = place;
    }
    assertThat(scale.place(-60)).isZero();
    assertThat(scale.place(60)).isEqualTo(1);
    assertThat(scale.place(Double.NaN)).isNaN();
  }

  @Test
  void showsASmallWayOutOfTheWindow() {
    // 0.82 V under a window of 0.82 V takes a fifth of the strip.
    LaneScale scale = LaneScale.around(7.79, 8.61);
    assertThat(scale.place(7.79) - scale.place(6.97)).isCloseTo(0.20, offset(1e-6));
  }

  @Test
  void roundsUpToAReadableValue() {
    assertThat(LaneScale.roundUp(0.021)).isCloseTo(0.03, offset(1e-12));
    assertThat(LaneScale.roundUp(2.05)).isCloseTo(3, offset(1e-12));
    assertThat(LaneScale.roundUp(10)).isCloseTo(10, offset(1e-12));
    assertThat(LaneScale.roundUp(8.1)).isCloseTo(10, offset(1e-12));
  }
}
