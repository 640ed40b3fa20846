package firstamp.run;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.Alarm;
import firstamp.model.LimitKind;
import firstamp.model.ProbeEvent;
import firstamp.model.text.Worded;
import firstamp.pipeline.ChainListener;
import firstamp.study.ReplayPowerUp;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Limits moved while the set is on: brought to the probe, confirmed by it, kept in the log. */
class LimitMoveTest {
  @TempDir private Path folder;
  private final List<String> answers = new ArrayList<>();

  private LoggedRun run(String scenario, LimitMove move, int atReading) throws Exception {
    return new LoggedRun(
        folder,
        scenario,
        4_000_000,
        true,
        new LoggedRun.EachReading() {
          @Override
          public void at(int count, LiveRun run) {
            if (count == atReading) {
              run.limit(move);
            }
          }

          @Override
          public void answer(LimitMove moved, boolean taken, Worded why) {
            answers.add(moved.kind() + " " + taken + " " + (why == null ? null : why.english()));
          }
        });
  }

  private static List<ProbeEvent> changes(LoggedRun run) throws Exception {
    return run.reader().events().stream()
        .filter(ProbeEvent.LimitChanged.class::isInstance)
        .toList();
  }

  @Test
  void aTighterLimitIsTakenByTheProbeWhileOnAndKept() throws Exception {
    LoggedRun run = run("healthy", new LimitMove(LimitKind.RUNNING_A, 0, 0.8), 450);
    LivePowerUp.Result result = run.run();
    assertThat(answers).containsExactly("RUNNING_A true null");
    assertThat(result.summary().outcome()).isEqualTo("normal");
    assertThat(changes(run)).hasSize(1);
    assertThat(run.builder.sheet().limits().runningA()).isEqualTo(0.8);
  }

  @Test
  void theProbeSwitchesOffAtTheTighterLimitAndSaysSo() throws Exception {
    // The healthy set draws more than 60 mA: a limit under it trips at once.
    LoggedRun run = run("healthy", new LimitMove(LimitKind.RUNNING_A, 0, 0.06), 450);
    LivePowerUp.Result result = run.run();
    assertThat(result.summary().outcome()).isEqualTo("tripped");
    assertThat(result.summary().tripCause()).isEqualTo("running");
    Alarm alarm =
        result.summary().alarms().stream()
            .filter(one -> one.rule().equals("over-current"))
            .findFirst()
            .orElseThrow();
    assertThat(alarm.limit()).isEqualTo(0.06);
  }

  @Test
  void aWiderLimitIsRefusedWhileOn() throws Exception {
    LoggedRun run = run("healthy", new LimitMove(LimitKind.RUNNING_A, 0, 1.4), 450);
    run.run();
    assertThat(answers)
        .singleElement()
        .asString()
        .startsWith("RUNNING_A false")
        .contains("only while the switch is open");
    assertThat(changes(run)).isEmpty();
  }

  @Test
  void aWiderLimitIsTakenWhileTheSwitchIsOpen() throws Exception {
    LoggedRun run = run("healthy", new LimitMove(LimitKind.RUNNING_A, 0, 1.4), 60);
    run.run();
    assertThat(answers).containsExactly("RUNNING_A true null");
    assertThat(changes(run)).hasSize(1);
  }

  @Test
  void aLimitFinerThanTheProbeCanWatchIsRefusedWithTheReason() throws Exception {
    LoggedRun run = run("healthy", new LimitMove(LimitKind.RUNNING_A, 0, 0.0001), 450);
    LivePowerUp.Result result = run.run();
    assertThat(answers).singleElement().asString().startsWith("RUNNING_A false");
    assertThat(result.summary().outcome()).isEqualTo("normal");
    assertThat(changes(run)).isEmpty();
  }

  @Test
  void theReplayComesToTheSameSummary() throws Exception {
    LoggedRun run = run("healthy", new LimitMove(LimitKind.RUNNING_A, 0, 0.06), 450);
    LivePowerUp.Result result = run.run();
    ReplayPowerUp replay =
        new ReplayPowerUp(run.reader(), run.sheet(), new ChainListener() {}, micros -> true);
    assertThat(replay.run().alarms()).isEqualTo(result.summary().alarms());
  }
}
