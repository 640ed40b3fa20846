package firstamp.cli.command;

import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.UsageProblem;
import firstamp.cli.run.Sheets;
import firstamp.model.NotWatched;
import firstamp.model.limits.LimitException;
import firstamp.model.samples.Calibration;
import firstamp.model.text.Worded;
import firstamp.sheet.CheckWords;
import firstamp.sheet.SheetCheck;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Job sheets. */
@Command(
    name = "sheet",
    description = "Works with job sheets.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp sheet new set.json                 five questions",
      "  firstamp sheet check set.json               what will be watched, and what not",
      "  firstamp sheet learn set.json --from last   what a good power-up can add"
    },
    subcommands = {SheetCommand.Check.class, SheetNewCommand.class, SheetLearnCommand.class})
public final class SheetCommand implements Runnable {
  private final Speech speech;

  SheetCommand(Speech speech) {
    this.speech = speech;
  }

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new UsageProblem(spec.commandLine(), Said.of("sheet.what-about-the-sheet-for"));
  }

  /** Says what a sheet makes the program watch. */
  @Command(
      name = "check",
      description =
          "Reads a job sheet and prints what will be watched, on which range, how fast, and what will"
              + " not.",
      footerHeading = "%nExamples:%n",
      footer = {"  firstamp sheet check set.json", "  firstamp sheet check set.json --json"})
  static final class Check implements Callable<Integer> {
    private final Speech speech;

    Check(Speech speech) {
      this.speech = speech;
    }

    @Parameters(paramLabel = "FILE", description = "job sheet (JSON); - = standard input")
    private Path file;

    @Option(names = "--json", description = "one JSON object per line")
    private boolean json;

    @Option(names = "--reduced", description = "for the reduced stream")
    private boolean reduced;

    @Override
    public Integer call() throws CliFailure {
      Sheets.Ready sheet = Sheets.read(file);
      SheetCheck check;
      try {
        check = SheetCheck.of(sheet.document().sheet(), Calibration.nominal(), reduced);
      } catch (LimitException unfit) {
        throw new CliFailure(ExitCode.BAD_DATA, sheet.document().locate(unfit).words(), unfit);
      }
      if (json) {
        printJson(check);
      } else {
        printText(sheet, check);
      }
      return ExitCode.NORMAL;
    }

    void printText(Sheets.Ready sheet, SheetCheck check) {
      System.out.println(sheet.effective().set().name());
      speech.out(Said.of("sheet.watched"));
      check.watched().forEach(one -> speech.out(Said.of("indented", one.text())));
      speech.out(Said.of("sheet.not-watched"));
      for (NotWatched gap : check.notWatched()) {
        speech.out(Said.of("indented", CheckWords.line(gap)));
      }
      for (Worded warning : check.warnings()) {
        speech.out(Said.of("sheet-new.mind", warning));
      }
    }

    private static void printJson(SheetCheck check) {
      JsonLines lines = new JsonLines(System.out);
      for (SheetCheck.Watched one : check.watched()) {
        ObjectNode node = JsonLines.object("watched");
        node.put("rule", one.rule());
        node.put("rail", one.rail());
        node.put("on", one.on());
        node.put("limit", one.limit());
        node.put("unit", one.unit());
        node.put("withinMs", one.withinMs());
        node.put("by", one.by());
        node.put("text", one.text().english());
        lines.print(node);
      }
      for (NotWatched gap : check.notWatched()) {
        ObjectNode node = JsonLines.object("notWatched");
        node.put("what", gap.what());
        node.put("why", gap.why());
        lines.print(node);
      }
      for (Worded warning : check.warnings()) {
        ObjectNode node = JsonLines.object("warning");
        node.put("text", warning.english());
        lines.print(node);
      }
    }
  }
}
