package firstamp.cli.run;

import firstamp.account.FigureList;
import firstamp.app.Desk;
import firstamp.app.Hearing;
import firstamp.app.Watched;
import firstamp.bench.LiveBench;
import firstamp.bench.ReplayBench;
import firstamp.bench.Snapshot;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.EndOfRun;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.SummaryText;
import firstamp.locate.wire.WireCase;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.TimeSource;
import firstamp.model.text.Explained;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.RunRefused;
import firstamp.run.LivePowerUp;
import firstamp.run.RunSetup;
import firstamp.run.SheetTexts;
import firstamp.run.SoundingListener;
import firstamp.run.talk.PortOpener;
import firstamp.sound.AlarmSound;
import firstamp.study.EarlierPowerUps;
import firstamp.window.BenchWindow;
import firstamp.window.NoDisplayException;
import java.nio.file.Path;

/** A power-up or a replay in the window. */
public final class WindowRun {
  /** What waits for the window, and what waits for the end of the session, have patience for. */
  private static final long CLOSE_MILLIS = 10_000;

  private static final long SIGNAL_MILLIS = 1_000;

  private WindowRun() {}

  /** Runs until the window is closed; what was seen is printed then. */
  static int live(
      RunSetup setup,
      SheetTexts sheet,
      PortOpener opener,
      BenchLog log,
      boolean emulated,
      String port,
      AlarmSound sound,
      RunOptions options,
      ChainListener nobody)
      throws CliFailure {
    TimeSource time = TimeSource.system();
    LiveBench bench =
        new LiveBench(
            setup,
            time,
            emulated ? Snapshot.Kind.EMULATED : Snapshot.Kind.PROBE,
            port,
            log.file().toString(),
            setup.gate(),
            sound == null ? nobody : new SoundingListener(nobody, sound),
            (listener, progress, restoreTrip) ->
                new LivePowerUp(
                    log,
                    sheet,
                    setup.restoring(emulated ? 0 : restoreTrip),
                    opener,
                    time,
                    listener,
                    progress),
            () -> EarlierPowerUps.course(log, sheet.setName()));
    Thread onSignal =
        new Thread(
            () -> {
              bench.close();
              LiveSetup.closeLog(log, SIGNAL_MILLIS, options.speech());
            },
            "signal");
    RunModes modes = new RunModes(options, sound, emulated, null);
    Runtime.getRuntime().addShutdownHook(onSignal);
    try {
      modes.begin(bench, setup.effective());
      bench.start();
      Desk desk =
          ThisBench.desk(
              log.file(),
              emulated ? log.file() : ThisBench.emulatedLog(log.file()),
              Sounds.later(options));
      show(desk, Watched.of(bench, log.file(), Hearing.of(sound)), options.look);
    } finally {
      modes.close();
      bench.close();
      LiveSetup.closeLog(log, CLOSE_MILLIS, options.speech());
      unhook(onSignal);
    }
    LivePowerUp.Result result = bench.result();
    if (result != null) {
      SummaryText.lines(
              result.summary(),
              FigureList.of(result.evidence()),
              setup.effective(),
              options.speech())
          .forEach(System.out::println);
      EndOfRun.print(log, setup.effective(), result, System.out, options.speech());
      return HeadlessRun.exitCode(result.summary());
    }
    if (bench.failure() instanceof RunRefused refused) {
      throw new CliFailure(HeadlessRun.code(refused), refused.words(), refused);
    }
    if (bench.failure() != null) {
      throw new CliFailure(ExitCode.NO_PORT, Explained.of(bench.failure()), bench.failure());
    }
    return ExitCode.INTERRUPTED;
  }

  private static void unhook(Thread onSignal) {
    try {
      Runtime.getRuntime().removeShutdownHook(onSignal);
    } catch (IllegalStateException alreadyEnding) {
      // The process is ending by a signal; the hook is at work.
      Thread.yield();
    }
  }

  /**
   * Replays until the window is closed.
   *
   * @param other power-up drawn behind it, null = none
   * @param whatIf sheet to work out what it would have done, null = none
   */
  public static int replay(
      PowerUpReader reader,
      JobSheet effective,
      double factor,
      String logFile,
      PowerUpReader other,
      JobSheet whatIf,
      LookOptions look)
      throws CliFailure {
    ReplayBench bench =
        new ReplayBench(
            reader,
            effective,
            TimeSource.system(),
            factor,
            logFile,
            event -> later(logFile, reader.entry().number(), event));
    if (other != null) {
      bench.beside(other);
    }
    if (whatIf != null) {
      bench.whatIf(whatIf);
    }
    bench.start();
    try {
      Path file = Path.of(logFile);
      show(
          ThisBench.desk(file, ThisBench.emulatedLog(file), Sounds::inTheWindow),
          Watched.of(bench, file, Hearing.NOTHING),
          look);
    } finally {
      bench.close();
    }
    if (bench.failure() != null) {
      throw Logs.failure(bench.failure());
    }
    return ExitCode.NORMAL;
  }

  /** Marks and words are added to a log that was opened for reading only until then. */
  private static void later(String file, long number, ProbeEvent event) throws LogException {
    try (BenchLog log = BenchLog.open(Path.of(file), TimeSource.system())) {
      log.later(number, event);
    }
  }

  /** The steps of a worked example about wires, until the window is closed. */
  public static int wires(WireCase wires, Path log, LookOptions look) throws CliFailure {
    try {
      Desk desk = ThisBench.desk(log, log, Sounds::inTheWindow);
      BenchWindow.showWires(desk, wires, look.of(desk)).awaitClosed();
    } catch (NoDisplayException noDisplay) {
      throw new CliFailure(ExitCode.USAGE, Explained.of(noDisplay), noDisplay);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
    return ExitCode.NORMAL;
  }

  /** The window begins on this session; from it the person gets to the rest of the same log. */
  private static void show(Desk desk, Watched first, LookOptions look) throws CliFailure {
    try {
      BenchWindow.show(desk, first, look.of(desk)).awaitClosed();
    } catch (NoDisplayException noDisplay) {
      throw new CliFailure(ExitCode.USAGE, Explained.of(noDisplay), noDisplay);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
  }
}
