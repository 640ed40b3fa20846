package firstamp.bench;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.samples.Reading;
import firstamp.pipeline.ChainListener;
import firstamp.run.BenchMode;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A live power-up while the computer sleeps or nobody is at the bench. */
@Timeout(60)
final class LiveBenchUnattendedTest extends LiveBenchCase {
  @Test
  void knowsWhenTheComputerSlept() throws Exception {
    long[] before = new long[1];
    run(
        "healthy",
        new ChainListener() {
          private int count;

          @Override
          public void reading(Reading reading, double atMs) {
            if (++count == 500) {
              before[0] = time.epochMillis();
              time.sleepMillis(3_600_000);
            }
          }
        });
    assertThat(bench.snapshot().beside().sleptAtEpochMs()).isEqualTo(before[0]);
  }

  @Test
  void hasNotSleptWhenItHasNot() throws Exception {
    run("healthy", new ChainListener() {});
    assertThat(bench.snapshot().beside().sleptAtEpochMs()).isNull();
  }

  @Test
  void waitingToBeSwitchedOnAgainIsNoSleep() throws Exception {
    run("healthy", new ChainListener() {});
    time.addMillis(60_000);
    int first = bench.snapshot().powerUp();
    bench.restore(1);
    await(
        () -> {
          Snapshot now = bench.snapshot();
          return now.phase() == Snapshot.Phase.ENDED
              && now.powerUp() != null
              && now.powerUp() > first;
        });
    assertThat(bench.snapshot().beside().sleptAtEpochMs()).isNull();
  }

  @Test
  void nobodyThereForElevenMinutesSwitchesOff() throws Exception {
    List<Integer> left = new CopyOnWriteArrayList<>();
    run("healthy", slowHours(left, 0), null, () -> {});
    assertThat(bench.result().summary().ended()).isEqualTo("time");
    assertThat(left).as("warned for a minute").contains(60).isSortedAccordingTo((a, b) -> b - a);
    assertThat(bench.snapshot().beside().untouchedOffInS()).isZero();
    assertThat(bench.snapshot().beside().sleptAtEpochMs()).isNull();
  }

  @Test
  void aTouchKeepsItOn() throws Exception {
    List<Integer> left = new CopyOnWriteArrayList<>();
    run("healthy", slowHours(left, 310), null, () -> {});
    assertThat(left).as("warned once, and once more after the touch").contains(60);
    int again = left.lastIndexOf(60);
    assertThat(left.subList(0, again)).as("the first warning was withdrawn").isNotEmpty();
    assertThat(bench.result().summary().ended()).isEqualTo("time");
  }

  @Test
  void inASoakAndWhereATimeWasAskedForNobodyHasToBeThere() throws Exception {
    List<Integer> left = new CopyOnWriteArrayList<>();
    run("healthy", slowHours(left, 0), 9_000_000L, () -> {});
    assertThat(bench.result().summary().onMs()).isGreaterThan(8_900);
    run2("healthy", slowHours(left, 0));
    assertThat(bench.result().summary().onMs()).isGreaterThan(5_900);
    assertThat(left).isEmpty();
  }

  private void run2(String scenario, ChainListener also) throws Exception {
    close();
    bench = null;
    run(scenario, also, null, () -> bench.mode(BenchMode.SOAK, null, 6_000_000L));
  }

  /**
   * Hours in seconds: with every reading from the closing on four seconds go by on the computer.
   *
   * @param touchAt reading at which somebody touches a key, 0 = nobody does
   */
  private ChainListener slowHours(List<Integer> left, int touchAt) {
    return new ChainListener() {
      private int count;

      @Override
      public void reading(Reading reading, double atMs) {
        if (bench.snapshot().phase() != Snapshot.Phase.ON) {
          return;
        }
        time.addMillis(2_000);
        Integer now = bench.snapshot().beside().untouchedOffInS();
        if (now != null && (left.isEmpty() || !left.get(left.size() - 1).equals(now))) {
          left.add(now);
        }
        if (++count == touchAt) {
          bench.touched();
        }
      }
    };
  }
}
