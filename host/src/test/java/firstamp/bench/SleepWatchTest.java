package firstamp.bench;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.run.HandTime;
import org.junit.jupiter.api.Test;

class SleepWatchTest {
  private final HandTime time = new HandTime();
  private final SleepWatch watch = new SleepWatch(time);

  @Test
  void saysWhenTheComputerWentToSleep() {
    time.addMillis(20);
    assertThat(watch.look()).isNull();
    long before = time.epochMillis();
    time.sleepMillis(3_600_000);
    assertThat(watch.look()).isEqualTo(before);
    time.addMillis(20);
    assertThat(watch.look()).as("only once").isNull();
  }

  @Test
  void findsASleepAlsoWhereTheOtherClockGoesOnMeanwhile() {
    long before = time.epochMillis();
    time.addMillis(60_000);
    assertThat(watch.look()).isEqualTo(before);
  }

  @Test
  void whatHappenedBeforeItStartedAnewIsNoSleep() {
    time.addMillis(60_000);
    watch.restart();
    time.addMillis(20);
    assertThat(watch.look()).isNull();
  }

  @Test
  void aBusyComputerHasNotSlept() {
    time.addMillis(4_000);
    assertThat(watch.look()).isNull();
  }
}
