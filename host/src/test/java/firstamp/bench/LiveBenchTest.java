package firstamp.bench;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.AlarmState;
import firstamp.model.Happening;
import firstamp.model.LimitKind;
import firstamp.model.OffReason;
import firstamp.model.ProbeEvent;
import firstamp.pipeline.ChainListener;
import firstamp.run.BenchMode;
import firstamp.run.LimitMove;
import firstamp.study.PowerUpStudy;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A live power-up behind the window: how it ends, and what is kept of it. */
@Timeout(60)
class LiveBenchTest extends LiveBenchCase {
  @Test
  void whyItWasSwitchedOffIsKeptAlsoAfterTheEnd() throws Exception {
    run("healthy", new ChainListener() {});
    bench.explainOff(OffReason.SMELL);
    await(() -> !bench.snapshot().beside().told().isEmpty());
    bench.explainOff(OffReason.WARM);
    await(() -> bench.snapshot().beside().told().size() == 2);
    PowerUpStudy study = PowerUpStudy.of(log.find("last"));
    assertThat(study.told())
        .extracting(told -> ((ProbeEvent.OffExplained) told).reason())
        .containsExactly(OffReason.SMELL, OffReason.WARM);
    assertThat(study.summary().onMs()).isEqualTo(bench.result().summary().onMs());
  }

  @Test
  void soakThatWasAskedForBeforehandEndsWithItsTime() throws Exception {
    run(
        "healthy",
        new ChainListener() {},
        null,
        () -> bench.mode(BenchMode.SOAK, null, 1_500_000L));
    assertThat(bench.result().summary().ended()).isEqualTo("time");
    assertThat(bench.result().summary().onMs()).isBetween(1_500.0, 2_000.0);
    assertThat(bench.snapshot().marks()).as("a mode is no mark").isEmpty();
    assertThat(bench.snapshot().beside().said())
        .extracting(Snapshot.Said::what)
        .containsExactly(
            new Happening.ModeSet(Happening.Mode.SOAK),
            new Happening.ModeSet(Happening.Mode.SOAK_OVER));
  }

  @Test
  void whatIsSaidInTheWindowIsInTheStreamAndInItsReplay() throws Exception {
    run(
        "healthy",
        new ChainListener() {},
        1_000_000L,
        () -> {
          bench.happened(new Happening.Recording(Happening.RecordState.ON));
          bench.happened(new Happening.SetChanged(""));
        });
    assertThat(bench.snapshot().beside().recording()).isEqualTo(Happening.RecordState.ON);
    assertThat(log.find("last").events())
        .filteredOn(ProbeEvent.Happened.class::isInstance)
        .extracting(event -> ((ProbeEvent.Happened) event).what().kind())
        .containsExactly("record-on", "change");
  }

  @Test
  void handsInThatWasAskedForBeforehandBeginsOnceTheSetHasRunForSevenSeconds() throws Exception {
    run("healthy", new ChainListener() {}, 9_000_000L, () -> bench.mode(BenchMode.HANDS_IN, null));
    assertThat(bench.mode().mode()).isEqualTo(BenchMode.HANDS_IN);
    assertThat(bench.mode().limitA()).isNotNull().isLessThan(1.0);
    assertThat(log.find("last").events()).anyMatch(ProbeEvent.LimitChanged.class::isInstance);
  }

  @Test
  void marksWordsAndSeenAfterTheEndAreShownAndKept() throws Exception {
    run("no-draw", new ChainListener() {});
    bench.mark("");
    await(() -> bench.snapshot().marks().size() == 1);
    bench.note(1, "the lamp came on");
    await(() -> bench.snapshot().marks().get(0).text().equals("the lamp came on"));
    bench.acknowledge();
    await(
        () ->
            bench.snapshot().findings().alarms().stream()
                .noneMatch(alarm -> alarm.state() == AlarmState.UNACKNOWLEDGED));
    List<ProbeEvent> events = log.find("last").events();
    assertThat(events.subList(events.size() - 3, events.size()))
        .hasOnlyElementsOfTypes(
            ProbeEvent.Marked.class, ProbeEvent.Noted.class, ProbeEvent.Acknowledged.class);
    assertThat(bench.result().summary().alarms())
        .anyMatch(alarm -> alarm.state() == AlarmState.UNACKNOWLEDGED);
  }

  @Test
  void aLimitMovedAfterTheEndHoldsFromTheNextTime() throws Exception {
    run("healthy", new ChainListener() {});
    bench.limit(new LimitMove(LimitKind.RUNNING_A, 0, 1.3));
    assertThat(bench.snapshot().beside().moved().state()).isEqualTo(Snapshot.MoveState.NEXT_TIME);
    double before = bench.snapshot().limits().runningA();
    bench.restore(1);
    await(
        () ->
            bench.snapshot().phase() == Snapshot.Phase.ENDED
                && bench.snapshot().limits().runningA() != before);
    assertThat(bench.snapshot().limits().runningA()).isEqualTo(1.3);
    assertThat(log.find("last").events()).anyMatch(ProbeEvent.LimitChanged.class::isInstance);
  }
}
