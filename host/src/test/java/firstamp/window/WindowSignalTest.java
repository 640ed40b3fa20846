package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.TimeSource;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A process with a window that is asked to end leaves the supply off and the log closed. */
@NeedsDisplay
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class WindowSignalTest {
  @TempDir private Path folder;
  private Process process;

  @AfterEach
  void end() {
    if (process != null) {
      process.destroyForcibly();
    }
  }

  private static List<ProbeEvent> events(Path file) {
    try {
      BenchLog log = BenchLog.openForReading(file, TimeSource.system());
      return log.list().isEmpty() ? List.of() : log.find("last").events();
    } catch (LogException notYet) {
      return List.of();
    }
  }

  private static boolean is(ProbeEvent event, SwitchState state) {
    return event instanceof ProbeEvent.SwitchChanged changed && changed.state() == state;
  }

  @Test
  void endedByASignalTheSupplyIsOffAndTheLogIsClosed() throws Exception {
    Path file = folder.resolve("demo.db");
    Path output = folder.resolve("output.txt");
    process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Djava.io.tmpdir=" + folder,
                "-cp",
                System.getProperty("java.class.path"),
                "firstamp.cli.Main",
                "demo",
                "--no-sound",
                "--log",
                file.toString())
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    while (events(file).stream().noneMatch(event -> is(event, SwitchState.ON))) {
      assertThat(process.isAlive()).as(() -> read(output)).isTrue();
      LockSupport.parkNanos(50_000_000);
    }
    process.destroy();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).as("ends by itself").isTrue();
    PowerUpReader reader = BenchLog.openForReading(file, TimeSource.system()).find("last");
    List<ProbeEvent> events = reader.events();
    assertThat(events)
        .anyMatch(
            event ->
                event instanceof ProbeEvent.SwitchChanged changed
                    && changed.state() == SwitchState.OFF
                    && changed.by() == OffCause.SIGNAL);
    assertThat(events.get(events.size() - 1)).isInstanceOf(ProbeEvent.RunEnded.class);
    assertThat(reader.entry().finished()).isTrue();
    assertThat(reader.entry().ended()).isEqualTo("signal");
    assertThat(new File(file + "-wal")).as("one file is left").doesNotExist();
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (java.io.IOException unreadable) {
      return unreadable.toString();
    }
  }
}
