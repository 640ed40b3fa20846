package firstamp.cli.run;

import firstamp.app.SleepInhibitor;
import firstamp.bench.LiveBench;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.model.JobSheet;
import firstamp.model.text.Worded;
import firstamp.run.BenchMode;
import firstamp.run.LiveRun;
import firstamp.run.Soak;
import firstamp.sound.AlarmSound;
import firstamp.supply.BenchSupply;

/** The mode that the options ask for, and words from standard input; keeps the computer awake. */
public final class RunModes implements AutoCloseable {
  private final RunOptions options;
  private final AlarmSound sound;
  private final boolean emulated;
  private final BenchSupply supply;
  private final SleepInhibitor awake = SleepInhibitor.ofThisSystem();

  public RunModes(RunOptions options, AlarmSound sound, boolean emulated, BenchSupply supply) {
    this.options = options;
    this.sound = sound;
    this.emulated = emulated;
    this.supply = supply;
  }

  Speech speech() {
    return options.speech();
  }

  /** Before the run. */
  void begin(LiveRun watch, JobSheet effective) throws CliFailure {
    if (options.steps) {
      watch.bringUp();
    }
    if (supply != null) {
      begin(watch, supply, effective);
    }
    boolean mayFollowSoak = options.soakMicros != null || options.keys;
    Worded problem = mayFollowSoak ? keepAwake() : null;
    begin(watch::mode, effective, problem);
    if (options.keys) {
      new RunKeys(watch, sound, problem, options.speech()).start();
    }
  }

  /** Before a run in the window; what only a run without it carries out was refused before. */
  void begin(LiveBench bench, JobSheet effective) throws CliFailure {
    begin(bench::mode, effective, options.soakMicros == null ? null : keepAwake());
  }

  /** Takes a wish for a mode. */
  private interface Wish {
    void mode(BenchMode mode, Worded awakeProblem, long soakMicros);
  }

  /** Why the computer may fall asleep; null = it is kept awake, or nothing can burn. */
  private Worded keepAwake() {
    if (emulated) {
      return null;
    }
    awake.keep();
    return awake.problem();
  }

  private void begin(Wish wish, JobSheet effective, Worded problem) throws CliFailure {
    if (options.soakMicros != null) {
      Worded against = Soak.refused(effective, problem);
      if (against != null) {
        throw new CliFailure(ExitCode.REFUSED, against);
      }
      wish.mode(BenchMode.SOAK, problem, options.soakMicros);
    } else if (options.handsIn) {
      wish.mode(BenchMode.HANDS_IN, null, 0);
    }
  }

  private void begin(LiveRun watch, BenchSupply supply, JobSheet effective) throws CliFailure {
    Double limit = effective.supply().limitA();
    if (options.steps) {
      JobSheet.Step first = effective.steps().get(0);
      watch.supply(supply, first.supplyV(), first.limitA());
    } else if (limit != null) {
      watch.supply(supply, effective.supply().nominalV(), limit);
    } else {
      throw new CliFailure(ExitCode.BAD_DATA, Said.of("run-modes.the-sheet-does-not-say"));
    }
    supply.start();
  }

  @Override
  public void close() {
    awake.let();
  }
}
