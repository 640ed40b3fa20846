package firstamp.window.strips;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import org.junit.jupiter.api.Test;

class TimeViewTest {
  @Test
  void standsStillAfterClosingUntilTheNewestReadingReachesTheRightSide() {
    TimeView time = new TimeView();
    time.advance(5_000, 5_000.0);
    assertThat(time.fromMs()).isCloseTo(4_200, offset(1e-6));
    time.advance(13_000, 5_000.0);
    assertThat(time.fromMs()).isCloseTo(4_200, offset(1e-6));
    time.advance(20_000, 5_000.0);
    assertThat(time.toMs()).isCloseTo(20_700, offset(1e-6));
  }

  @Test
  void movesInStepsOfAPointWhereHoursAreInView() {
    double hours = 8 * 3_600_000.0;
    TimeView time = new TimeView();
    time.zoom(hours / time.widthMs(), 0);
    time.advance(2 * hours, 0.0);
    double from = time.fromMs();
    time.advance(2 * hours + 10_000, 0.0);
    assertThat(time.fromMs()).isEqualTo(from);
    time.advance(2 * hours + 58_000, 0.0);
    assertThat(time.fromMs()).isCloseTo(from + 57_600, offset(1e-6));
    assertThat(time.toMs()).isBetween(2 * hours + 58_000, 2 * hours + 58_000 + 0.08 * hours);
  }

  @Test
  void holdsWhatWasPannedToUntilItFollowsAgain() {
    TimeView time = new TimeView();
    time.advance(60_000, 0.0);
    double from = time.fromMs();
    time.pan(-0.5);
    time.advance(70_000, 0.0);
    assertThat(time.fromMs()).isCloseTo(from - 5_000, offset(1e-6));
    assertThat(time.follows()).isFalse();
    time.follow();
    time.advance(70_000, 0.0);
    assertThat(time.fromMs()).isGreaterThan(from);
  }

  @Test
  void zoomsAroundTheMomentUnderThePointer() {
    TimeView time = new TimeView();
    time.show(1_000, 11_000);
    time.zoom(0.5, 3_000);
    assertThat(time.fromMs()).isCloseTo(2_000, offset(1e-6));
    assertThat(time.toMs()).isCloseTo(7_000, offset(1e-6));
    for (int round = 0; round < 40; round++) {
      time.zoom(0.5, 3_000);
    }
    assertThat(time.widthMs()).isEqualTo(TimeView.NARROWEST_MS);
  }
}
