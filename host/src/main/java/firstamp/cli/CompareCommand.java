package firstamp.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.analysis.Comparison;
import firstamp.analysis.FigureList;
import firstamp.log.BenchLog;
import firstamp.model.JobSheet;
import firstamp.session.PowerUpStudy;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What changed from one logged power-up to another. */
@Command(
    name = "compare",
    description =
        "Holds two logged power-ups against each other, figure by figure: difference, uncertainty, changed or not.",
    footerHeading = "%nExamples:%n",
    footer = {"  firstamp compare 12 last", "  firstamp compare 3 12 --json"})
final class CompareCommand implements Callable<Integer> {
  @Parameters(index = "0", paramLabel = "ID", description = "the earlier one: number, uuid or last")
  private String before;

  @Parameters(index = "1", paramLabel = "ID", description = "the later one")
  private String after;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
  private Path file;

  @Option(names = "--json", description = "one JSON object per line")
  private boolean json;

  @Override
  public Integer call() throws CliFailure {
    BenchLog log = Logs.openForReading(file);
    try {
      PowerUpStudy one = Studies.read(log, before);
      PowerUpStudy two = Studies.read(log, after);
      if (json) {
        lines(one, two);
      } else {
        words(one, two);
      }
      return ExitCode.NORMAL;
    } finally {
      LiveSetup.closeLog(log);
    }
  }

  private static void lines(PowerUpStudy one, PowerUpStudy two) {
    JsonLines lines = new JsonLines(System.out);
    Comparison comparison = two.against(one);
    for (Comparison.Difference difference : comparison.differences()) {
      ObjectNode node = figure(difference.figure(), difference.rail(), two.sheet());
      node.put("unit", difference.unit());
      node.put("before", difference.before());
      node.put("after", difference.after());
      node.put("difference", difference.difference());
      node.put("differencePlusMinus", difference.plusMinus());
      node.put("significant", difference.significant());
      node.put("p", difference.p());
      lines.print(node);
    }
    for (Lone lone : lone(one, two)) {
      ObjectNode node = figure(lone.figure().key(), lone.figure().rail(), lone.sheet());
      node.put("unit", lone.figure().unit());
      node.put(lone.earlier() ? "before" : "after", lone.figure().value());
      lines.print(node);
    }
    lines.print(end(comparison, one, two));
  }

  private static ObjectNode figure(String key, int rail, JobSheet sheet) {
    ObjectNode node = JsonLines.object("figure");
    node.put("figure", key);
    if (rail > 0) {
      node.put("rail", rail);
      node.put("railName", sheet.rail(rail).name());
    }
    return node;
  }

  private static ObjectNode end(Comparison comparison, PowerUpStudy one, PowerUpStudy two) {
    ObjectNode node = JsonLines.object("comparison");
    node.put("before", one.entry().number());
    node.put("beforeUuid", one.entry().uuid());
    node.put("after", two.entry().number());
    node.put("afterUuid", two.entry().uuid());
    node.put("figures", comparison.differences().size());
    node.put(
        "significant",
        comparison.differences().stream().filter(Comparison.Difference::significant).count());
    Comparison.Parting parting = comparison.parting();
    if (parting != null) {
      ObjectNode at = node.putObject("parting");
      at.put("what", parting.what());
      if (parting.rail() > 0) {
        at.put("rail", parting.rail());
      }
      at.put("atMs", parting.atMs());
      at.put("before", parting.before());
      at.put("after", parting.after());
      at.put("unit", parting.what().equals("supply current") ? "A" : "V");
    }
    return node;
  }

  private static void words(PowerUpStudy one, PowerUpStudy two) {
    Comparison comparison = two.against(one);
    System.out.println("From " + Studies.name(one.entry()) + " to " + Studies.name(two.entry()));
    if (!one.entry().setName().equals(two.entry().setName())) {
      System.out.println(
          "  two different sets: " + one.entry().setName() + "; " + two.entry().setName());
    }
    for (Comparison.Difference difference : comparison.differences()) {
      System.out.println(
          (difference.significant() ? "  changed:   " : "  unchanged: ")
              + ComparisonText.line(difference, two.sheet()));
    }
    for (Lone lone : lone(one, two)) {
      FigureList.Figure figure = lone.figure();
      System.out.println(
          (lone.earlier() ? "  only then: " : "  only now:  ")
              + FigureList.name(figure.key(), figure.rail(), lone.sheet())
              + ": "
              + FigureList.value(figure.value(), figure.unit()));
    }
    System.out.println(ComparisonText.parting(comparison, two.sheet()));
  }

  /** A figure that only one of the two has. */
  private record Lone(FigureList.Figure figure, boolean earlier, JobSheet sheet) {}

  private static List<Lone> lone(PowerUpStudy one, PowerUpStudy two) {
    List<Lone> lone = new ArrayList<>();
    for (FigureList.Figure figure : one.figures().figures()) {
      if (two.figures().find(figure.key(), figure.rail()) == null) {
        lone.add(new Lone(figure, true, one.sheet()));
      }
    }
    for (FigureList.Figure figure : two.figures().figures()) {
      if (one.figures().find(figure.key(), figure.rail()) == null) {
        lone.add(new Lone(figure, false, two.sheet()));
      }
    }
    return lone;
  }
}
