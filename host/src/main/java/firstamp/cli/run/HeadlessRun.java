package firstamp.cli.run;

import firstamp.account.FigureList;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.EndOfRun;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Kept;
import firstamp.cli.output.Logs;
import firstamp.cli.output.RunOutput;
import firstamp.cli.output.Said;
import firstamp.cli.output.Sentences;
import firstamp.cli.output.Speech;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.Look;
import firstamp.model.OffCause;
import firstamp.model.ProbeHello;
import firstamp.model.Summary;
import firstamp.model.TimeSource;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.RunRefused;
import firstamp.run.BenchMode;
import firstamp.run.LivePowerUp;
import firstamp.run.LiveRun;
import firstamp.run.RunProgress;
import firstamp.run.RunSetup;
import firstamp.run.SheetTexts;
import firstamp.run.SoundingListener;
import firstamp.run.talk.PortOpener;
import firstamp.sound.AlarmSound;
import java.io.IOException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** A live power-up without a window: prints, reacts to signals, gives the exit code. */
public final class HeadlessRun {
  private static final long SIGNAL_SECONDS = 6;

  private final RunSetup setup;
  private final SheetTexts sheet;
  private final PortOpener opener;
  private final RunOutput output;
  private final ChainListener listener;
  private final RunModes modes;
  private final Companion companion;
  private final Speech speech;
  private LivePowerUp powerUp;

  public HeadlessRun(
      RunSetup setup,
      SheetTexts sheet,
      PortOpener opener,
      RunOutput output,
      AlarmSound sound,
      RunModes modes) {
    this(setup, sheet, opener, output, sound, modes, Companion.NONE);
  }

  /** A run with somebody else at the bench. */
  public HeadlessRun(
      RunSetup setup,
      SheetTexts sheet,
      PortOpener opener,
      RunOutput output,
      AlarmSound sound,
      RunModes modes,
      Companion companion) {
    this.setup = setup;
    this.sheet = sheet;
    this.opener = opener;
    this.output = output;
    this.modes = modes;
    this.speech = modes.speech();
    ChainListener heard = sound == null ? output : new SoundingListener(output, sound);
    this.listener = companion.listen(heard);
    this.companion = companion;
  }

  /** Hears what the chain finds, and may put marks and switch off. */
  public interface Companion {
    /** Nobody. */
    Companion NONE = output -> output;

    /** A listener that passes everything on to the output. */
    ChainListener listen(ChainListener output);

    /** The run that begins. */
    default void begins(LiveRun watch) {}
  }

  /** Runs to the end and closes the log. */
  int run(BenchLog log) throws CliFailure {
    int exitCode = runKeepingLog(log);
    closeLog(log);
    return exitCode;
  }

  /** Runs to the end; the log stays open. */
  public int runKeepingLog(BenchLog log) throws CliFailure {
    CountDownLatch done = new CountDownLatch(1);
    Thread onSignal = new Thread(() -> interrupted(done), "signal");
    boolean hooked = false;
    try {
      powerUp =
          new LivePowerUp(log, sheet, setup, opener, TimeSource.system(), listener, new Progress());
      companion.begins(powerUp.watch());
      Runtime.getRuntime().addShutdownHook(onSignal);
      hooked = true;
      modes.begin(powerUp.watch(), setup.effective());
      LivePowerUp.Result result = powerUp.run();
      output.summary(result.summary(), FigureList.of(result.evidence()));
      if (output.forPeople()) {
        EndOfRun.print(log, setup.effective(), result, System.out, speech);
      }
      if (result.logFailure() != null) {
        throw new CliFailure(
            ExitCode.IO_ERROR,
            Said.of(
                "two-sentences",
                Sentences.ended(result.logFailure().getMessage()),
                Kept.words(log, powerUp.uuid())),
            result.logFailure());
      }
      if ("link-lost".equals(result.summary().ended())) {
        speech.note(Said.of("headless-run.the-run-ended-early", Kept.words(log, powerUp.uuid())));
      }
      return exitCode(result.summary());
    } catch (RunRefused refused) {
      boolean noLog = refused.kind() == RunRefused.Kind.LOG;
      throw new CliFailure(
          code(refused),
          noLog
              ? Said.of("two-sentences", refused.words(), Kept.words(log, powerUp.uuid()))
              : refused.words(),
          refused);
    } catch (IOException failed) {
      throw new CliFailure(ExitCode.NO_PORT, Explained.of(failed), failed);
    } finally {
      done.countDown();
      modes.close();
      if (hooked) {
        unhook(onSignal);
      }
    }
  }

  private static void unhook(Thread onSignal) {
    try {
      Runtime.getRuntime().removeShutdownHook(onSignal);
    } catch (IllegalStateException alreadyEnding) {
      // The process is ending by a signal; the hook gives the exit code.
      Thread.yield();
    }
  }

  private void interrupted(CountDownLatch done) {
    if (powerUp != null) {
      powerUp.watch().off(OffCause.SIGNAL);
    }
    try {
      if (!done.await(SIGNAL_SECONDS, TimeUnit.SECONDS)) {
        speech.note(Said.of("headless-run.the-run-did-not-end", SIGNAL_SECONDS));
      }
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
    Runtime.getRuntime().halt(ExitCode.INTERRUPTED);
  }

  private static void closeLog(BenchLog log) throws CliFailure {
    try {
      log.close();
    } catch (LogException failed) {
      throw Logs.failure(failed);
    }
  }

  /** Exit code of a run that came to its end. */
  public static int exitCode(Summary summary) {
    if ("link-lost".equals(summary.ended())) {
      return ExitCode.IO_ERROR;
    }
    if (summary.look() != null && Look.Result.doubtsTheProbe(summary.look().result())) {
      return ExitCode.REFUSED;
    }
    return switch (summary.outcome()) {
      case "tripped", "no-draw", "alarm" -> ExitCode.FINDING;
      case "interrupted" -> ExitCode.INTERRUPTED;
      default -> ExitCode.NORMAL;
    };
  }

  /** Exit code of a run that was refused. */
  public static int code(RunRefused refused) {
    return switch (refused.kind()) {
      case PROBE -> ExitCode.NO_PORT;
      case ARMING -> ExitCode.REFUSED;
      case SHEET -> ExitCode.BAD_DATA;
      case LOG -> ExitCode.IO_ERROR;
    };
  }

  /** The first lines of a run. */
  private final class Progress implements RunProgress {
    @Override
    public void started(ProbeHello hello) {
      output.started(powerUp.number(), powerUp.uuid(), sheet.setName(), hello, setup.observe());
    }

    @Override
    public void bringUp(int step, int of, Worded words) {
      speech.note(Said.of("headless-run.step-of", step, of, words));
    }

    @Override
    public void mode(BenchMode.State state) {
      if (state.words() != null) {
        speech.note(Said.of("main.wrong", state.words()));
      }
    }

    @Override
    public void waiting(Worded words) {
      if (words != null) {
        speech.note(Said.of("main.wrong", words));
      }
    }

    @Override
    public void countdown(int seconds) {
      output.countdown(seconds);
    }
  }
}
