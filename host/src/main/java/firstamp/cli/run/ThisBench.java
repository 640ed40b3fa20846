package firstamp.cli.run;

import firstamp.app.Desk;
import firstamp.app.Ports;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.link.SerialPorts;
import firstamp.link.SerialProbePort;
import firstamp.log.BenchLog;
import firstamp.model.JobSheet;
import firstamp.model.ProbePort;
import firstamp.model.TimeSource;
import firstamp.model.text.Explained;
import firstamp.sound.AlarmSound;
import firstamp.window.BenchWindow;
import firstamp.window.NoDisplayException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;

/** The bench of this computer: its log, its serial ports, its window. */
public final class ThisBench {
  private ThisBench() {}

  /**
   * Opens the window on its first screen and waits until it is closed.
   *
   * @param log null = the usual one
   */
  public static int open(Path log, LookOptions look) throws CliFailure {
    Path file = (log == null ? BenchLog.defaultFile() : log).toAbsolutePath();
    Desk desk = desk(file, emulatedLog(file), Sounds::inTheWindow);
    try {
      BenchWindow.show(desk, null, look.of(desk)).awaitClosed();
    } catch (NoDisplayException noDisplay) {
      throw new CliFailure(ExitCode.USAGE, Explained.of(noDisplay), noDisplay);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
    return ExitCode.NORMAL;
  }

  /**
   * Refuses a window that cannot be had before a log is opened, which would leave an empty file
   * behind; then begins with the window on a thread of its own, as the log takes about as long to
   * open.
   *
   * @param log of the window, null = the bench log
   */
  public static void prepare(Path log, LookOptions look) throws CliFailure {
    try {
      BenchWindow.requireScreen();
    } catch (NoDisplayException none) {
      throw new CliFailure(ExitCode.USAGE, Explained.of(none), none);
    }
    look.check();
    Path file = (log == null ? BenchLog.defaultFile() : log).toAbsolutePath();
    Thread thread =
        new Thread(
            () -> {
              try {
                BenchWindow.prepare(look.of(desk(file, file, sheet -> null)));
              } catch (CliFailure saidLater) {
                // The window itself meets it.
                return;
              } catch (InterruptedException stop) {
                Thread.currentThread().interrupt();
              }
            },
            "window-prepare");
    thread.setDaemon(true);
    thread.start();
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
  public static Desk desk(Path log, Path emulatedLog, Function<JobSheet, AlarmSound> sounds) {
    return new Desk(log, emulatedLog, new OfThisComputer(), TimeSource.system(), sounds);
  }

  /** Where the programs of this person keep each other from one port. */
  public static Path lockFolder() {
    String given = System.getProperty("firstamp.lockFolder");
    return given != null
        ? Path.of(given)
        : Path.of(
            System.getProperty("java.io.tmpdir"), "firstamp-" + System.getProperty("user.name"));
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
          path, SerialProbePort.BAUD_RAW, lockFolder(), TimeSource.system());
    }
  }
}
