package firstamp.cli;

import firstamp.model.JobSheet;
import firstamp.session.BenchMode;
import firstamp.session.Soak;
import firstamp.session.WatchRun;
import firstamp.sound.AlarmSound;
import firstamp.window.AwakeKeeper;

/** The mode that the options ask for, and words from standard input; keeps the computer awake. */
final class RunModes implements AutoCloseable {
  private final RunOptions options;
  private final AlarmSound sound;
  private final boolean emulated;
  private final AwakeKeeper awake = AwakeKeeper.ofThisSystem();

  RunModes(RunOptions options, AlarmSound sound, boolean emulated) {
    this.options = options;
    this.sound = sound;
    this.emulated = emulated;
  }

  /** Before the run. */
  void begin(WatchRun watch, JobSheet effective) throws CliFailure {
    String problem = null;
    boolean mayFollowSoak = options.soakMicros != null || options.keys;
    // Behind an emulated probe nothing can burn.
    if (mayFollowSoak && !emulated) {
      awake.keep();
      problem = awake.problem();
    }
    if (options.soakMicros != null) {
      String against = Soak.refused(effective, problem);
      if (against != null) {
        throw new CliFailure(ExitCode.REFUSED, against);
      }
      watch.mode(BenchMode.SOAK, problem, options.soakMicros);
    } else if (options.handsIn) {
      watch.mode(BenchMode.HANDS_IN, null, 0);
    }
    if (options.keys) {
      new RunKeys(watch, sound, problem).start();
    }
  }

  @Override
  public void close() {
    awake.let();
  }
}
