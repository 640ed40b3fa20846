package firstamp.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.account.Verdict;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.LogState;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.TimeSource;
import firstamp.model.text.Worded;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ForwardingChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.pipeline.RunRefused;
import firstamp.run.LivePowerUp;
import firstamp.run.LoggedRun;
import firstamp.run.RunProgress;
import firstamp.run.RunSetup;
import firstamp.run.SheetTexts;
import firstamp.run.questions.ArmGate;
import firstamp.run.questions.OpenQuestion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A bench log that cannot be written: refused or asked before, told and made good while it is. */
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class LogTroubleTest {
  private static final String SCENARIO = "healthy";

  @TempDir private Path folder;
  private final List<String> heard = Collections.synchronizedList(new ArrayList<>());

  private RunSetup setup(JobSheet sheet, Pace pace, double seconds, ArmGate gate) {
    return new RunSetup(
        sheet,
        new ProbeSettings(sheet),
        null,
        true,
        (long) (seconds * 1e6),
        0,
        false,
        2_000_000,
        pace == Pace.REAL_TIME,
        gate);
  }

  private LivePowerUp powerUp(
      BenchLog log, Pace pace, double seconds, ArmGate gate, ChainListener listener)
      throws Exception {
    JobSheet sheet = LoggedRun.sheet(SCENARIO);
    return new LivePowerUp(
        log,
        new SheetTexts(
            sheet.set().name(), Scenarios.sheetJson(SCENARIO), Scenarios.sheetJson(SCENARIO)),
        setup(sheet, pace, seconds, gate),
        () -> Scenarios.open(SCENARIO, ProbeOptions.of(1, pace)),
        TimeSource.system(),
        listener,
        new RunProgress() {});
  }

  private Path file() {
    return folder.resolve("bench.db");
  }

  /** Another program with a write of its own under way. */
  private Connection holding() throws Exception {
    Connection other = DriverManager.getConnection("jdbc:sqlite:" + file());
    try (Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
    }
    return other;
  }

  private ChainListener hearing() {
    return new ChainListener() {
      @Override
      public void on() {
        heard.add("on");
      }

      @Override
      public void log(ProbeEvent.LogChanged event, double atMs) {
        heard.add((event.logging() ? "logging: " : "not logging: ") + event.text());
      }
    };
  }

  @Test
  void aHeldLogIsRefusedBeforeAnythingIsSwitchedOn() throws Exception {
    try (BenchLog log = BenchLog.open(file(), TimeSource.system())) {
      LivePowerUp powerUp = powerUp(log, Pace.MAX, 1, ArmGate.alwaysOpen(), hearing());
      Connection other = holding();
      RunRefused refused = catchThrowableOfType(RunRefused.class, powerUp::run);
      other.close();
      assertThat(refused).isNotNull();
      assertThat(refused.kind()).isEqualTo(RunRefused.Kind.LOG);
      assertThat(refused.getMessage())
          .isEqualTo(
              "the bench log cannot be written, so nothing was switched on. Another program holds"
                  + " bench.db. Close that program; what comes meanwhile waits in memory.");
      assertThat(heard).doesNotContain("on");
      assertThat(log.list()).isEmpty();
    }
  }

  @Test
  void somebodyAtTheBenchIsAskedAndMaySwitchOnWithoutALog() throws Exception {
    try (BenchLog log = BenchLog.open(file(), TimeSource.system())) {
      Path away = folder.resolve("away.db");
      move(file(), away);
      ArmGate gate = new ArmGate(List.of());
      AtomicReference<OpenQuestion> asked = new AtomicReference<>();
      ChainListener answering =
          new ForwardingChainListener(hearing()) {
            @Override
            public void reading(firstamp.model.samples.Reading reading, double atMs) {
              if (asked.get() == null && !gate.questions().isEmpty()) {
                asked.set(gate.questions().get(0));
                assertThat(heard).doesNotContain("on");
                gate.yes(ArmGate.NOT_LOGGING);
              }
            }
          };
      LivePowerUp.Result result = powerUp(log, Pace.MAX, 1, gate, answering).run();
      assertThat(asked.get().id()).isEqualTo("not-logging");
      assertThat(asked.get().text().english()).startsWith("bench.db is gone.");
      assertThat(heard).contains("on");
      assertThat(result.summary().powerUp()).isNull();
      assertThat(result.logFailure().kind()).isEqualTo(LogException.Kind.GONE);
      assertThat(file()).doesNotExist();
      move(away, file());
    }
  }

  @Test
  void aLogThatComesBackIsToldAndTheVerdictKnows() throws Exception {
    Path away = folder.resolve("away.db");
    ChainListener mover =
        new ForwardingChainListener(hearing()) {
          @Override
          public void on() {
            super.on();
            move(file(), away);
          }

          @Override
          public void log(ProbeEvent.LogChanged event, double atMs) {
            super.log(event, atMs);
            if (!event.logging()) {
              move(away, file());
            }
          }
        };
    try (BenchLog log = BenchLog.open(file(), TimeSource.system())) {
      LivePowerUp.Result result =
          powerUp(log, Pace.REAL_TIME, 4, ArmGate.alwaysOpen(), mover).run();
      assertThat(heard)
          .containsExactly(
              "on",
              "not logging: bench.db is gone. Put the file back, or plug its disk in again; what"
                  + " comes meanwhile waits in memory.",
              "logging: It is being written again, and everything that waited is in it.");
      assertThat(result.logFailure()).isNull();
      Alarm alarm =
          result.summary().alarms().stream()
              .filter(each -> each.rule().equals("not-logging"))
              .findFirst()
              .orElseThrow();
      assertThat(alarm.state()).isEqualTo(AlarmState.CLEARED_UNACKNOWLEDGED);
      assertThat(alarm.text())
          .matches(
              "The bench log was not being written for [0-9.]+ s\\. It is being written again, and"
                  + " everything that waited is in it\\.");
      assertThat(Verdict.of(LoggedRun.sheet(SCENARIO), result.summary(), result.evidence()).text())
          .contains("was not being written for")
          .doesNotContain("is not being written");
      assertThat(result.summary().conversions().lost()).isZero();
      long[] extent = log.find("last").extent();
      assertThat(extent[1] - extent[0]).isEqualTo(result.summary().conversions().received());
      assertThat(log.find("last").entry().summaryJson()).contains("was not being written for");
      assertThat(log.check()).isEmpty();
    }
  }

  @Test
  void twoOnOneLogKeepEverythingOfBoth() throws Exception {
    ExecutorService two = Executors.newFixedThreadPool(2);
    try (BenchLog one = BenchLog.open(file(), TimeSource.system());
        BenchLog other = BenchLog.open(file(), TimeSource.system())) {
      List<Future<LivePowerUp.Result>> results = new ArrayList<>();
      for (BenchLog log : List.of(one, other)) {
        results.add(
            two.submit(() -> powerUp(log, Pace.MAX, 20, ArmGate.alwaysOpen(), hearing()).run()));
      }
      for (Future<LivePowerUp.Result> each : results) {
        LivePowerUp.Result result = each.get();
        assertThat(result.logFailure()).isNull();
        assertThat(result.summary().outcome()).isEqualTo("normal");
        long[] extent = one.find(result.summary().uuid()).extent();
        assertThat(extent[1] - extent[0]).isEqualTo(result.summary().conversions().received());
      }
      assertThat(one.list()).hasSize(2);
      assertThat(one.check()).isEmpty();
    } finally {
      two.shutdownNow();
    }
  }

  @Test
  void eachCauseHasWholeSentencesOfItsOwn() {
    Set<String> different = new HashSet<>();
    for (LogException.Kind kind : LogException.Kind.values()) {
      String text =
          LogState.trouble(new LogException(kind, Worded.asIs("x"), null), file()).text().english();
      assertThat(text)
          .as(kind.name().toLowerCase(Locale.ROOT))
          .matches("[\\p{Lu}b].*\\.")
          .contains("bench.db")
          .doesNotContain("  ")
          .doesNotContain("{")
          .doesNotContain(folder.toString());
      different.add(text);
    }
    assertThat(different).hasSize(6);
  }

  private static void move(Path from, Path to) {
    try {
      Files.move(from, to);
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }
}
