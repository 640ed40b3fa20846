package firstamp.cli;

import firstamp.link.SerialPorts;
import firstamp.link.SerialProbePort;
import firstamp.log.BenchLog;
import firstamp.model.JobSheet;
import firstamp.model.ProbePort;
import firstamp.model.TimeSource;
import firstamp.sound.AlarmSound;
import firstamp.window.BenchWindow;
import firstamp.window.Desk;
import firstamp.window.NoDisplayException;
import firstamp.window.Ports;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Function;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The window on its first screen: the sets of this bench, and everything that follows. */
@Command(
    name = "bench",
    description = {
      "Opens the window on the bench log: sets, power-ups, a new set, the probe box, the practice set.",
      "The same as firstamp without a command.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp",
      "  firstamp bench --language de --theme dark",
      "  firstamp bench --log other.db",
    })
final class BenchCommand implements Callable<Integer> {
  @Mixin private LookOptions look;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log")
  private Path log;

  @Override
  public Integer call() throws CliFailure {
    return open(log, look);
  }

  static int open(Path log, LookOptions look) throws CliFailure {
    Path file = (log == null ? BenchLog.defaultFile() : log).toAbsolutePath();
    Desk desk = desk(file, emulatedLog(file), Sounds::inTheWindow);
    try {
      BenchWindow.show(desk, null, look.of(desk)).awaitClosed();
    } catch (NoDisplayException noDisplay) {
      throw new CliFailure(ExitCode.USAGE, noDisplay.getMessage(), noDisplay);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
    return ExitCode.NORMAL;
  }

  /** The emulated set never gets into the bench log. */
  static Path emulatedLog(Path log) {
    return log.resolveSibling("demo.db");
  }

  /**
   * The bench of this computer.
   *
   * @param sounds makes what is heard of a power-up that is begun in the window
   */
  static Desk desk(Path log, Path emulatedLog, Function<JobSheet, AlarmSound> sounds) {
    return new Desk(log, emulatedLog, new OfThisComputer(), TimeSource.system(), sounds);
  }

  /** Ports through the serial library. */
  private static final class OfThisComputer implements Ports {
    @Override
    public List<Found> list() {
      return SerialPorts.list().stream()
          .map(port -> new Found(port.path(), port.description(), port.usable(), port.why()))
          .toList();
    }

    @Override
    public ProbePort open(String path) throws IOException {
      return SerialProbePort.open(
          path, SerialProbePort.BAUD_RAW, WatchCommand.lockFolder(), TimeSource.system());
    }
  }
}
