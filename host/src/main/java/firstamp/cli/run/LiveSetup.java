package firstamp.cli.run;

import firstamp.alarm.OffWords;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.JsonRunOutput;
import firstamp.cli.output.RunOutput;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.TextRunOutput;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.text.Explained;
import firstamp.pipeline.ChainListener;
import firstamp.run.RunSetup;
import firstamp.run.SheetTexts;
import firstamp.run.talk.PortOpener;
import firstamp.sound.AlarmSound;
import firstamp.supply.BenchSupply;

/** Starts a live power-up, in the window or without. */
public final class LiveSetup {
  private static final long LEAST_QUIET_MICROS = 2_000_000;

  private LiveSetup() {}

  /**
   * How long the switch stays open with the log running.
   *
   * @param countdownS asked for, null = default
   * @param defaultS seconds
   */
  public static long quietMicros(Integer countdownS, int defaultS) {
    long seconds = countdownS == null ? defaultS : countdownS;
    return Math.max(LEAST_QUIET_MICROS, seconds * 1_000_000L);
  }

  /**
   * Runs it.
   *
   * @param options of the command
   * @param asked what to do
   * @param sheet as it is kept
   * @param opener of the line
   * @param log open for writing
   * @param emulated whether nothing real is switched
   * @param port as the person named it, null = none
   * @param supply beside the probe, null = none
   * @return exit code
   */
  public static int run(
      RunOptions options,
      RunSetup asked,
      SheetTexts sheet,
      PortOpener opener,
      BenchLog log,
      boolean emulated,
      String port,
      BenchSupply supply)
      throws CliFailure {
    return run(options, asked, sheet, opener, log, emulated, port, supply, new ChainListener() {});
  }

  /** The same; somebody else hears what the chain finds, where it runs in the window. */
  public static int run(
      RunOptions options,
      RunSetup asked,
      SheetTexts sheet,
      PortOpener opener,
      BenchLog log,
      boolean emulated,
      String port,
      BenchSupply supply,
      ChainListener also)
      throws CliFailure {
    RunSetup setup = asked.inRoom(options.roomCelsius).withPedal(options.pedal);
    boolean heard = !options.headless || !emulated;
    try (AlarmSound sound = Sounds.of(options, setup.effective(), heard)) {
      return options.headless
          ? headless(
              options,
              setup,
              sheet,
              opener,
              log,
              new RunModes(options, sound, emulated, supply),
              sound,
              emulated)
          : WindowRun.live(setup, sheet, opener, log, emulated, port, sound, options, also);
    }
  }

  private static int headless(
      RunOptions options,
      RunSetup setup,
      SheetTexts sheet,
      PortOpener opener,
      BenchLog log,
      RunModes modes,
      AlarmSound sound,
      boolean emulated)
      throws CliFailure {
    RunOutput output =
        options.json
            ? new JsonRunOutput(new JsonLines(System.out), options.readings)
            : new TextRunOutput(
                options.speech(),
                System.out,
                System.err,
                options.readings,
                options.countdown == null ? !emulated : options.countdown > 0,
                OffWords.words(setup.effective()),
                setup.effective(),
                !setup.observe());
    try {
      return new HeadlessRun(setup, sheet, opener, output, sound, modes).run(log);
    } finally {
      closeLog(log, options.speech());
    }
  }

  /** Closes a log; a failure is reported, the exit code is that of the run. */
  public static void closeLog(BenchLog log, Speech speech) {
    saying(log::close, speech);
  }

  /** The same for where somebody waits. */
  public static void closeLog(BenchLog log, long millis, Speech speech) {
    saying(() -> log.closeWithin(millis), speech);
  }

  /** Closes a log. */
  @FunctionalInterface
  private interface Closing {
    void close() throws LogException;
  }

  private static void saying(Closing closing, Speech speech) {
    try {
      closing.close();
    } catch (LogException failed) {
      speech.note(Said.of("main.wrong", Explained.of(failed)));
    }
  }
}
