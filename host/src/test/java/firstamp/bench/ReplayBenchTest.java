package firstamp.bench;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.log.BenchLog;
import firstamp.log.PowerUpReader;
import firstamp.model.AlarmState;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.model.Summary;
import firstamp.pipeline.ChainListener;
import firstamp.run.HandTime;
import firstamp.run.LimitMove;
import firstamp.run.LoggedRun;
import firstamp.study.EarlierPowerUp;
import firstamp.study.ReplayPowerUp;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A replay shows every moment as it was, takes words and marks later, and asks what if. */
@Timeout(20)
class ReplayBenchTest {
  @TempDir private Path folder;
  private final HandTime time = new HandTime();
  private ReplayBench bench;
  private LoggedRun run;
  private Summary live;

  private void replay(String scenario, long forMicros) throws Exception {
    run =
        new LoggedRun(
            folder,
            scenario,
            forMicros,
            true,
            (count, watch) -> {
              if (count == 400) {
                watch.mark("first");
              }
            });
    live = run.run().summary();
    PowerUpReader reader = run.reader();
    BenchLog log = run.log();
    long number = reader.entry().number();
    bench =
        new ReplayBench(
            reader, run.sheet(), time, 1, "bench.db", event -> log.later(number, event));
    bench.start();
    await(() -> bench.opened());
  }

  @AfterEach
  void close() {
    if (bench != null) {
      bench.close();
    }
  }

  private interface Condition {
    boolean holds();
  }

  private static void await(Condition condition) throws InterruptedException {
    while (!condition.holds()) {
      Thread.onSpinWait();
      if (Thread.interrupted()) {
        throw new InterruptedException();
      }
    }
  }

  private Snapshot.Phase phaseAt(double ms) {
    bench.pause(true);
    bench.seek(ms);
    return bench.snapshot().phase();
  }

  @Test
  void knowsThePhaseOfEveryMoment() throws Exception {
    replay("healthy", 3_000_000);
    bench.pause(true);
    bench.seek(1e9);
    Snapshot end = bench.snapshot();
    double closed = end.times().closedMs();
    assertThat(end.phase()).isEqualTo(Snapshot.Phase.ENDED);
    assertThat(phaseAt(0)).isEqualTo(Snapshot.Phase.OPEN);
    assertThat(phaseAt(closed - 20)).isEqualTo(Snapshot.Phase.LOOK);
    assertThat(phaseAt(closed + 10)).isEqualTo(Snapshot.Phase.ON);
    assertThat(phaseAt(closed + 2990)).isEqualTo(Snapshot.Phase.ON);
    assertThat(phaseAt(closed + 3100)).isEqualTo(Snapshot.Phase.RAILS_FALLING);
  }

  @Test
  void showsATripWithItsPictureOnlyOnceItHasHappened() throws Exception {
    replay("wire-short", 5_000_000);
    bench.seek(1e9);
    double opened = bench.snapshot().times().closedMs() + live.tripAtMs();
    phaseAt(opened - 5);
    assertThat(bench.snapshot().findings().trip()).isNull();
    assertThat(phaseAt(opened + 5)).isEqualTo(Snapshot.Phase.TRIPPED);
    Snapshot.TripView trip = bench.snapshot().findings().trip();
    assertThat(trip.cause().id()).isEqualTo(live.tripCause());
    assertThat(trip.captureA()).hasSizeGreaterThan(200);
    assertThat(bench.snapshot().findings().alarms()).isNotEmpty();
  }

  @Test
  void alarmsOnTheTimeBarHaveTheirPriority() throws Exception {
    replay("no-draw", 3_000_000);
    assertThat(bench.snapshot().replay().events())
        .filteredOn(event -> event.kind() == Snapshot.EventKind.ALARM)
        .isNotEmpty()
        .allMatch(event -> event.priority() != null);
  }

  @Test
  void theRulesRunAgainComeToWhatWasKept() throws Exception {
    replay("no-draw", 3_000_000);
    bench.seek(1e9);
    var kept = bench.snapshot().findings().alarms();
    await(() -> bench.summary() != null && bench.summary().supply() != null);
    assertThat(bench.summary().alarms()).isEqualTo(live.alarms());
    assertThat(bench.snapshot().findings().alarms()).isEqualTo(live.alarms());
    // The log keeps the English text; the rules that ran again have its words before any language.
    assertThat(kept)
        .usingRecursiveFieldByFieldElementComparatorIgnoringFields("words")
        .isEqualTo(live.alarms());
  }

  @Test
  void wordsTypedLaterAttachToTheirMarkAndTheSummaryStays() throws Exception {
    replay("no-draw", 5_000_000);
    bench.seek(1e9);
    bench.pause(true);
    assertThat(bench.snapshot().marks()).hasSize(1);
    bench.note(1, "hum starts here");
    await(
        () ->
            bench.snapshot().marks().stream()
                .anyMatch(mark -> mark.text().equals("hum starts here")));
    bench.acknowledge();
    await(
        () ->
            bench.snapshot().findings().alarms().stream()
                .noneMatch(
                    alarm ->
                        alarm.state() == AlarmState.UNACKNOWLEDGED
                            || alarm.state() == AlarmState.CLEARED_UNACKNOWLEDGED));
    Summary again =
        new ReplayPowerUp(run.reader(), run.sheet(), new ChainListener() {}, micros -> true).run();
    assertThat(again.alarms()).isEqualTo(live.alarms());
    assertThat(again.outcome()).isEqualTo(live.outcome());
    assertThat(run.log().check()).isEmpty();
  }

  @Test
  void saysWhereATighterLimitWouldHaveSwitchedOff() throws Exception {
    replay("healthy", 3_000_000);
    bench.limit(new LimitMove(LimitKind.RUNNING_A, 0, 0.06));
    await(() -> bench.snapshot().beside().whatIf().share() == 1);
    Snapshot.WhatIf what = bench.snapshot().beside().whatIf();
    JobSheet.Limits limits = run.sheet().limits();
    bench.seek(1e9);
    double closed = bench.snapshot().times().closedMs();
    // The set draws more than that all the time: the limit acts once the inrush time is over.
    assertThat(what.firstOffMs())
        .isBetween(closed + limits.inrushMs(), closed + limits.inrushMs() + 5);
    // 60 mA and what the finest limit on that input adds: 2 counts of I at 12.2 mA, ±1.5 %.
    assertThat(what.firstOff().in(Locale.GERMAN)).contains("auf dem");
    assertThat(what.firstOff().english())
        .containsPattern("8[3-8]\\.\\d mA \\(60 mA on the sheet\\)");
    assertThat(what.sheet().limits().runningA()).isEqualTo(0.06);
  }

  @Test
  void saysThatALimitAboveEverythingWouldHaveDoneNothing() throws Exception {
    replay("healthy", 3_000_000);
    bench.limit(new LimitMove(LimitKind.RUNNING_A, 0, 2));
    await(() -> bench.snapshot().beside().whatIf().share() == 1);
    assertThat(bench.snapshot().beside().whatIf().firstOffMs()).isNull();
  }

  @Test
  void setsAnotherPowerUpBehindAndSaysWhatChanged() throws Exception {
    replay("healthy", 3_000_000);
    PowerUpReader first = run.reader();
    bench.close();
    replay("no-draw", 3_000_000);
    bench.beside(first);
    await(
        () ->
            bench.snapshot().beside().earlier() != null
                && bench.snapshot().beside().earlier().changes() != null);
    EarlierPowerUp other = bench.snapshot().beside().earlier();
    assertThat(other.powerUp()).isEqualTo(first.entry().number());
    assertThat(other.closedMs()).isBetween(2000.0, 5000.0);
    assertThat(other.changes().in(Locale.ENGLISH)).anyMatch(line -> line.contains(", then "));
    assertThat(other.changes().in(Locale.GERMAN))
        .hasSameSizeAs(other.changes().in(Locale.ENGLISH))
        .noneMatch(line -> line.matches(".*\\b(the|is|more|less|after|then)\\b.*"));
  }

  @Test
  void playsHoldsStepsAndGoesAtItsSpeed() throws Exception {
    replay("healthy", 3_000_000);
    bench.seek(1000);
    time.addMillis(500);
    assertThat(bench.snapshot().times().nowMs()).isEqualTo(1500);
    bench.speed(0.1);
    time.addMillis(1000);
    assertThat(bench.snapshot().times().nowMs()).isEqualTo(1600);
    bench.step();
    time.addMillis(1000);
    assertThat(bench.snapshot().times().nowMs()).isEqualTo(1610);
    bench.speed(Double.POSITIVE_INFINITY);
    bench.pause(false);
    assertThat(bench.snapshot().phase()).isEqualTo(Snapshot.Phase.ENDED);
    bench.seek(500);
    assertThat(bench.snapshot().times().nowMs())
        .as("who looks at a moment stays there")
        .isEqualTo(500);
  }
}
