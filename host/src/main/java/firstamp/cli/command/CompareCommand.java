package firstamp.cli.command;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.account.Comparison;
import firstamp.account.ComparisonWords;
import firstamp.account.FigureList;
import firstamp.account.FigureWords;
import firstamp.account.MultipleComparison;
import firstamp.analysis.figures.Evidence;
import firstamp.analysis.statistics.Tukey;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.Logs;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.run.LiveSetup;
import firstamp.log.BenchLog;
import firstamp.model.JobSheet;
import firstamp.model.text.Worded;
import firstamp.study.PowerUpStudy;
import firstamp.study.ProbeIdentity;
import firstamp.study.StudyPart;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
  private final Speech speech;

  CompareCommand(Speech speech) {
    this.speech = speech;
  }

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
      LiveSetup.closeLog(log, speech);
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

  private void words(StudyPart one, StudyPart two) {
    ComparisonWords words = new ComparisonWords(speech.locale());
    FigureWords figures = speech.figures();
    Comparison comparison = two.against(one);
    PowerUpStudy earlier = one.study();
    PowerUpStudy later = two.study();
    speech.out(Said.of("compare.from-to", PartId.name(one), PartId.name(two)));
    if (!earlier.entry().setName().equals(later.entry().setName())) {
      speech.out(
          Said.of(
              "compare.two-different-sets", earlier.entry().setName(), later.entry().setName()));
    }
    if (!earlier.entry().uuid().equals(later.entry().uuid())) {
      ProbeIdentity identity = ProbeIdentity.of(earlier.header(), later.header());
      speech.out(Said.of("indented", probe(identity)));
    }
    for (Comparison.Difference difference : comparison.differences()) {
      speech.out(changed(difference.significant(), words.line(difference, later.sheet())));
    }
    for (Lone lone : lone(one, two)) {
      FigureList.Figure figure = lone.figure();
      speech.out(
          Said.of(
              lone.earlier() ? "compare.only-then" : "compare.only-now",
              figures.name(figure.key(), figure.rail(), lone.sheet()),
              figures.value(figure.value(), figure.unit())));
    }
    if (one.stretch() == null && two.stretch() == null) {
      speech.out(Said.of("indented", words.parting(comparison, later.sheet())));
    }
    if (comparison.leakageA() != null) {
      speech.out(Said.of("indented", words.leakage(comparison)));
    }
    String points = words.pointsTo(comparison);
    if (points != null) {
      speech.out(Said.of("indented", points));
    }
  }

  private static Worded changed(boolean significant, Object what) {
    return Said.of(significant ? "compare.changed" : "compare.unchanged", what);
  }

  static Worded probe(ProbeIdentity identity) {
    return Said.of("compare.probe." + identity.name().toLowerCase(Locale.ROOT).replace('_', '-'));
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
        speech.out(Said.of("compare.part", k + 1, PartId.name(parts.get(k))));
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
        speech.out(
            Said.of("compare.figure", speech.figures().name(figure.key(), figure.rail(), sheet)));
        for (Tukey.Pair pair : figure.pairs()) {
          speech.out(pair(figure, pair));
        }
      }
    }
  }

  private Worded pair(MultipleComparison.Figure figure, Tukey.Pair pair) {
    FigureWords figures = speech.figures();
    String unit = figure.unit();
    return changed(
        pair.significant(),
        Said.of(
            pair.difference() < 0 ? "compare.pair.less" : "compare.pair.more",
            pair.one() + 1,
            figures.value(figure.means().get(pair.one()), unit),
            pair.other() + 1,
            figures.value(figure.means().get(pair.other()), unit),
            figures.value(Math.abs(pair.difference()), unit),
            figures.value(pair.plusMinus(), unit)));
  }
}
