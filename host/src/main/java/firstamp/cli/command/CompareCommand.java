package firstamp.cli.command;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.account.Comparison;
import firstamp.account.ComparisonText;
import firstamp.account.FigureList;
import firstamp.account.MultipleComparison;
import firstamp.analysis.figures.Evidence;
import firstamp.analysis.statistics.Tukey;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.Logs;
import firstamp.cli.run.LiveSetup;
import firstamp.log.BenchLog;
import firstamp.model.JobSheet;
import firstamp.study.PowerUpStudy;
import firstamp.study.ProbeIdentity;
import firstamp.study.StudyPart;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What changed from one logged power-up to another, or from one mark to another. */
@Command(
    name = "compare",
    description =
        "Compares two logged power-ups figure by figure: difference, uncertainty, changed or not."
            + " ID#2 is the part after its mark 2, ID#0 the part before its first mark. With three"
            + " or more, supply and rails are judged together.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp compare 12 last",
      "  firstamp compare 3 12 --json",
      "  firstamp compare 12#0 12#1       before and after the first mark of power-up 12",
      "  firstamp compare 12#0 12#1 12#2"
    })
public final class CompareCommand implements Callable<Integer> {
  @Parameters(
      arity = "2..*",
      paramLabel = "ID",
      description = "number, uuid or last; the earlier one first")
  private List<String> ids;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to read")
  private Path file;

  @Option(names = "--json", description = "one JSON object per line")
  private boolean json;

  @Override
  public Integer call() throws CliFailure {
    BenchLog log = Logs.openForReading(file);
    try {
      List<StudyPart> parts = new ArrayList<>();
      for (String id : ids) {
        parts.add(PartId.read(log, id));
      }
      if (parts.size() > 2) {
        several(parts);
      } else if (json) {
        lines(parts.get(0), parts.get(1));
      } else {
        words(parts.get(0), parts.get(1));
      }
      return ExitCode.NORMAL;
    } finally {
      LiveSetup.closeLog(log);
    }
  }

  private static void lines(StudyPart one, StudyPart two) {
    JsonLines lines = new JsonLines(System.out);
    Comparison comparison = two.against(one);
    for (Comparison.Difference difference : comparison.differences()) {
      ObjectNode node = figure(difference.figure(), difference.rail(), two.study().sheet());
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

  private static ObjectNode end(Comparison comparison, StudyPart one, StudyPart two) {
    ObjectNode node = JsonLines.object("comparison");
    node.put("before", one.study().entry().number());
    node.put("beforeUuid", one.study().entry().uuid());
    mark(node, "beforeMark", one);
    node.put("after", two.study().entry().number());
    node.put("afterUuid", two.study().entry().uuid());
    mark(node, "afterMark", two);
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
    if (comparison.leakageA() != null) {
      node.put("leakageA", comparison.leakageA());
    }
    return node;
  }

  private static void mark(ObjectNode node, String key, StudyPart part) {
    if (part.stretch() != null) {
      node.put(key, part.stretch().number());
    }
  }

  private static void words(StudyPart one, StudyPart two) {
    Comparison comparison = two.against(one);
    PowerUpStudy earlier = one.study();
    PowerUpStudy later = two.study();
    System.out.println("From " + PartId.name(one) + " to " + PartId.name(two));
    if (!earlier.entry().setName().equals(later.entry().setName())) {
      System.out.println(
          "  two different sets: " + earlier.entry().setName() + "; " + later.entry().setName());
    }
    boolean samePowerUp = earlier.entry().uuid().equals(later.entry().uuid());
    if (!samePowerUp) {
      System.out.println("  " + probe(ProbeIdentity.of(earlier.header(), later.header())));
    }
    for (Comparison.Difference difference : comparison.differences()) {
      System.out.println(
          (difference.significant() ? "  changed:   " : "  unchanged: ")
              + ComparisonText.line(difference, later.sheet()));
    }
    for (Lone lone : lone(one, two)) {
      FigureList.Figure figure = lone.figure();
      System.out.println(
          (lone.earlier() ? "  only then: " : "  only now:  ")
              + FigureList.name(figure.key(), figure.rail(), lone.sheet())
              + ": "
              + FigureList.value(figure.value(), figure.unit()));
    }
    if (one.stretch() == null && two.stretch() == null) {
      System.out.println(ComparisonText.parting(comparison, later.sheet()));
    }
    if (comparison.leakageA() != null) {
      System.out.println("  " + ComparisonText.leakage(comparison));
    }
    String points = ComparisonText.pointsTo(comparison);
    if (points != null) {
      System.out.println("  " + points);
    }
  }

  static String probe(ProbeIdentity identity) {
    return switch (identity) {
      case ONE_CALIBRATION -> "one probe box with one calibration took both";
      case TAKEN_FOR_ONE ->
          "taken for one probe box (same port, never calibrated): its own error drops out";
      case NOT_KNOWN -> "two probe boxes or two calibrations: the errors of both are counted";
    };
  }

  /** A figure that only one of the two has. */
  private record Lone(FigureList.Figure figure, boolean earlier, JobSheet sheet) {}

  private static List<Lone> lone(StudyPart one, StudyPart two) {
    List<Lone> lone = new ArrayList<>();
    FigureList first = one.figures();
    FigureList second = two.figures();
    for (FigureList.Figure figure : first.figures()) {
      if (second.find(figure.key(), figure.rail()) == null) {
        lone.add(new Lone(figure, true, one.study().sheet()));
      }
    }
    for (FigureList.Figure figure : second.figures()) {
      if (first.find(figure.key(), figure.rail()) == null) {
        lone.add(new Lone(figure, false, two.study().sheet()));
      }
    }
    return lone;
  }

  private void several(List<StudyPart> parts) {
    List<Evidence> all = parts.stream().map(StudyPart::evidence).toList();
    MultipleComparison means = MultipleComparison.of(all);
    JobSheet sheet = parts.get(0).study().sheet();
    JsonLines lines = new JsonLines(System.out);
    if (!json) {
      for (int k = 0; k < parts.size(); k++) {
        System.out.println("  " + (k + 1) + ": " + PartId.name(parts.get(k)));
      }
    }
    for (MultipleComparison.Figure figure : means.figures()) {
      if (json) {
        ObjectNode node = figure(figure.key(), figure.rail(), sheet);
        node.put("unit", figure.unit());
        ArrayNode each = node.putArray("means");
        figure.means().forEach(each::add);
        ArrayNode pairs = node.putArray("pairs");
        for (Tukey.Pair pair : figure.pairs()) {
          ObjectNode one = pairs.addObject();
          one.put("one", pair.one() + 1);
          one.put("other", pair.other() + 1);
          one.put("difference", pair.difference());
          one.put("differencePlusMinus", pair.plusMinus());
          one.put("significant", pair.significant());
          one.put("p", pair.p());
        }
        lines.print(node);
      } else {
        System.out.println(FigureList.name(figure.key(), figure.rail(), sheet) + ":");
        for (Tukey.Pair pair : figure.pairs()) {
          System.out.println(pair(figure, pair));
        }
      }
    }
  }

  private static String pair(MultipleComparison.Figure figure, Tukey.Pair pair) {
    String unit = figure.unit();
    return (pair.significant() ? "  changed:   " : "  unchanged: ")
        + (pair.one() + 1)
        + " "
        + FigureList.value(figure.means().get(pair.one()), unit)
        + ", "
        + (pair.other() + 1)
        + " "
        + FigureList.value(figure.means().get(pair.other()), unit)
        + " ("
        + FigureList.value(Math.abs(pair.difference()), unit)
        + (pair.difference() < 0 ? " less" : " more")
        + ", \u00b1 "
        + FigureList.value(pair.plusMinus(), unit)
        + ")";
  }
}
