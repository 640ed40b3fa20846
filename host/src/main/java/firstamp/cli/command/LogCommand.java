package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Logs;
import firstamp.cli.output.OutputFile;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.UsageProblem;
import firstamp.cli.run.LiveSetup;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Care of a bench log. */
@Command(
    name = "log",
    description = "Checks a bench log, copies it, or removes a power-up from it.",
    subcommands = {LogCommand.Check.class, LogCommand.Backup.class, LogCommand.Delete.class},
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp log check",
      "  firstamp log backup --to bench-in-march.db",
      "  firstamp log delete 12",
    })
public final class LogCommand implements Runnable {
  private final Speech speech;

  LogCommand(Speech speech) {
    this.speech = speech;
  }

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new UsageProblem(spec.commandLine(), Said.of("log.log-does-what-expected-check"));
  }

  /** Every check there is. */
  @Command(
      name = "check",
      description = "Reads every page, chunk and event of a bench log and says what is damaged.",
      footerHeading = "%nExamples:%n",
      footer = {"  firstamp log check", "  firstamp log check --log bench-in-march.db"})
  static final class Check implements Callable<Integer> {
    private final Speech speech;

    Check(Speech speech) {
      this.speech = speech;
    }

    @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
    private Path file;

    @Override
    public Integer call() throws CliFailure {
      BenchLog log = Logs.openForReading(file);
      try {
        int powerUps = log.list().size();
        List<String> findings = log.check();
        findings.forEach(System.out::println);
        if (!findings.isEmpty()) {
          throw new CliFailure(
              ExitCode.BAD_DATA, Said.of("log.is-damaged-the-findings-are", log.file()));
        }
        speech.out(Said.of("log.power-ups-all-of-it", log.file(), powerUps));
        return ExitCode.NORMAL;
      } catch (LogException failed) {
        throw Logs.failure(failed);
      } finally {
        LiveSetup.closeLog(log, speech);
      }
    }
  }

  /** A copy of the whole log. */
  @Command(
      name = "backup",
      description = "Copies the whole bench log, also while it is being written.",
      footerHeading = "%nExamples:%n",
      footer = "  firstamp log backup --to bench-in-march.db")
  static final class Backup implements Callable<Integer> {
    private final Speech speech;

    Backup(Speech speech) {
      this.speech = speech;
    }

    @Option(names = "--to", paramLabel = "FILE", required = true, description = "file to make")
    private Path to;

    @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
    private Path file;

    @Option(names = "--force", description = "replace a file that is there already")
    private boolean force;

    @Override
    public Integer call() throws CliFailure {
      BenchLog log = Logs.openForReading(file);
      try {
        OutputFile.write(to, force, log::backupTo);
        speech.note(Said.of("log.is-copied-to", log.file(), to.toAbsolutePath()));
        return ExitCode.NORMAL;
      } finally {
        LiveSetup.closeLog(log, speech);
      }
    }
  }

  /** One power-up less. */
  @Command(
      name = "delete",
      description = "Removes one power-up for good and gives its room back. Asks first.",
      footerHeading = "%nExamples:%n",
      footer = {"  firstamp log delete 12", "  firstamp log delete last --yes"})
  static final class Delete implements Callable<Integer> {
    private final Speech speech;

    Delete(Speech speech) {
      this.speech = speech;
    }

    @Parameters(paramLabel = "ID", description = "number, uuid or last")
    private String id;

    @Option(names = "--log", paramLabel = "FILE", description = "bench log to write to")
    private Path file;

    @Option(names = "--yes", description = "do not ask")
    private boolean yes;

    @Override
    public Integer call() throws CliFailure {
      BenchLog log = Logs.openForReading(file);
      PowerUpEntry entry = Logs.find(log, id).entry();
      String what =
          "power-up "
              + entry.number()
              + " of "
              + entry.setName()
              + (entry.label() == null ? "" : " \"" + entry.label() + "\"");
      if (!yes && !confirmed(what)) {
        throw new CliFailure(ExitCode.REFUSED, Said.of("log.was-kept-the-answer-was", what));
      }
      BenchLog writable = Logs.openForWriting(log.file(), speech);
      try {
        writable.delete(entry.number());
        speech.out(Said.of("log.is-removed", what));
        return ExitCode.NORMAL;
      } catch (LogException failed) {
        throw Logs.failure(failed);
      } finally {
        LiveSetup.closeLog(writable, speech);
      }
    }

    private static boolean confirmed(String what) throws CliFailure {
      System.err.print("Remove " + what + " for good? Type yes: ");
      System.err.flush();
      try {
        // Not closed: standard input is not ours.
        BufferedReader in =
            new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        String answer = in.readLine();
        return answer != null && answer.strip().toLowerCase(Locale.ROOT).equals("yes");
      } catch (IOException failed) {
        throw new CliFailure(
            ExitCode.IO_ERROR, Said.of("log.cannot-read-the-answer", failed), failed);
      }
    }
  }
}
