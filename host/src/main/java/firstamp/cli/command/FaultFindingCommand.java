package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.UsageProblem;
import firstamp.cli.run.Sheets;
import firstamp.log.BenchLog;
import firstamp.model.JobSheet;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/**
 * What looking for a lost signal and placing a wire share: a small state file that one step at a
 * time is added to, examples that replay, and taking back.
 *
 * @param <T> the immutable state
 */
abstract class FaultFindingCommand<T> implements Callable<Integer> {
  final Speech speech;

  FaultFindingCommand(Speech speech) {
    this.speech = speech;
  }

  @Spec CommandSpec spec;

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "state file (JSON)")
  private Path file;

  @Option(names = "--new", paramLabel = "NAME", description = "start the file from a template")
  private String template;

  @Option(
      names = "--sheet",
      paramLabel = "FILE",
      description = "job sheet: a file that is not there yet is started from what it says")
  private Path sheet;

  @Option(names = "--example", paramLabel = "NAME", description = "replay a worked example")
  private String example;

  @Option(names = "--undo", description = "take back the last step")
  boolean undo;

  @Option(
      names = "--power-up",
      paramLabel = "ID",
      description = "a logged power-up: number, uuid or last")
  String powerUp;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log it is in")
  private Path logFile;

  @Option(names = "--all", description = "everything, not the first three")
  boolean all;

  @Option(names = "--json", description = "one JSON object per line")
  boolean json;

  @Override
  public final Integer call() throws CliFailure {
    if (example != null) {
      return replay(parse(StateFiles.bundled(example, examples())));
    }
    if (file == null) {
      throw new UsageProblem(spec.commandLine(), Said.of("think.a-state-file-or-example"));
    }
    if (template != null) {
      StateFiles.create(file, write(begin(parse(StateFiles.bundled(template, templates())))));
    } else if (sheet != null && !Files.exists(file)) {
      StateFiles.create(file, write(ofSheet()));
    }
    T before = read();
    T after = changed(before);
    if (!after.equals(before)) {
      StateFiles.write(file, write(after));
    }
    return shown(after);
  }

  private T ofSheet() throws CliFailure {
    try {
      return fromSheet(Sheets.read(sheet).effective());
    } catch (IllegalArgumentException says) {
      throw new CliFailure(
          ExitCode.BAD_DATA, Said.of("file-said", sheet, Explained.of(says)), says);
    }
  }

  private T read() throws CliFailure {
    Worded remedy = Said.of("state.start-one", templates().split(", ")[0]);
    String text = StateFiles.read(file, remedy);
    try {
      return parse(text);
    } catch (IllegalArgumentException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, Said.of("file-said", file, Explained.of(bad)), bad);
    }
  }

  private T changed(T state) throws CliFailure {
    try {
      return change(undo ? undone(state) : state);
    } catch (IllegalArgumentException unfit) {
      throw new UsageProblem(spec.commandLine(), Explained.of(unfit), unfit);
    }
  }

  private int shown(T state) {
    try {
      return show(state);
    } catch (IllegalArgumentException unknown) {
      throw new UsageProblem(spec.commandLine(), Explained.of(unknown), unknown);
    }
  }

  /** The bench log with the power-up that was named. */
  final BenchLog log() throws CliFailure {
    return Logs.openForReading(logFile);
  }

  /** Folder in which paths of the state file begin. */
  final Path folder() {
    Path folder = file.toAbsolutePath().getParent();
    return folder == null ? Path.of(".") : folder;
  }

  /** Names of the worked examples, with commas. */
  abstract String examples();

  /** Names of what a file can start from, with commas. */
  abstract String templates();

  abstract T parse(String text);

  abstract String write(T state);

  /** What a sheet says; refuses a sheet that says nothing about it. */
  abstract T fromSheet(JobSheet effective);

  /** The state without its steps. */
  abstract T begin(T state);

  abstract T undone(T state);

  /** The state with the step that the options describe, if they describe one. */
  abstract T change(T state) throws CliFailure;

  /** Prints where it stands; gives the exit code. */
  abstract int show(T state);

  /** The stages of a state, one per step, each with its step in words. */
  abstract List<Stage<T>> stages(T whole);

  /**
   * One stage of a replay.
   *
   * @param step in words, null at the start
   * @param state with it
   * @param show prints it
   */
  record Stage<T>(String step, T state, Runnable show) {}

  private int replay(T whole) {
    for (Stage<T> stage : stages(whole)) {
      if (stage.step() != null && !json) {
        System.out.println();
        speech.out(Said.of("demo-example.step", stage.step()));
      }
      stage.show().run();
    }
    return ExitCode.NORMAL;
  }
}
