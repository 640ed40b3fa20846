package firstamp.bench;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.run.HandTime;
import org.junit.jupiter.api.Test;

/** A set that nobody touches: a warning after ten minutes, off a minute later. Our own figures. */
class IdleWatchTest {
  private final HandTime time = new HandTime();
  private final IdleWatch watch = new IdleWatch(time);

  @Test
  void warnsAfterTenMinutesAndIsOverAMinuteLater() {
    time.addMillis(599_999);
    assertThat(watch.offInS()).isNull();
    time.addMillis(1);
    assertThat(watch.offInS()).isEqualTo(60);
    assertThat(watch.over()).isFalse();
    time.addMillis(30_000);
    assertThat(watch.offInS()).isEqualTo(30);
    time.addMillis(29_999);
    assertThat(watch.over()).isFalse();
    time.addMillis(1);
    assertThat(watch.over()).isTrue();
    assertThat(watch.offInS()).isZero();
  }

  @Test
  void aTouchRestartsTheTenMinutes() {
    time.addMillis(650_000);
    watch.touched();
    assertThat(watch.offInS()).isNull();
    time.addMillis(600_000);
    assertThat(watch.offInS()).isEqualTo(60);
  }
}
