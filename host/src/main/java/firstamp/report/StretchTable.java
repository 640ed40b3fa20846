package firstamp.report;

import firstamp.account.Comparison;
import firstamp.account.ComparisonWords;
import firstamp.account.FigureList;
import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.FigureText;
import firstamp.model.JobSheet;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;

/** The time on from mark to mark, one row each: the table of a step by step start. */
final class StretchTable {
  private final JobSheet sheet;
  private final ResourceBundle words;

  StretchTable(JobSheet sheet, ResourceBundle words) {
    this.sheet = sheet;
    this.words = words;
  }

  List<String> columns() {
    List<String> columns = new ArrayList<>();
    columns.add(words.getString("stretch.from"));
    columns.add(words.getString("stretch.mark"));
    columns.add("A");
    columns.add("V");
    columns.add(words.getString("stretch.ohm"));
    sheet.rails().forEach(rail -> columns.add(rail.name() == null ? "" : rail.name()));
    if (sheet.levels() != null) {
      columns.add(words.getString("stretch.hum"));
    }
    return columns;
  }

  List<String> row(Evidence.Stretch stretch) {
    FigureList figures = FigureList.of(stretch.evidence());
    List<String> row = new ArrayList<>();
    row.add(FigureText.millis(stretch.fromMs()));
    row.add(name(stretch));
    row.add(text(figures.find("steadyA", 0)));
    row.add(text(figures.find("steadyV", 0)));
    row.add(text(figures.find("loadOhm", 0)));
    sheet.rails().forEach(rail -> row.add(text(figures.find("finalV", rail.input()))));
    if (sheet.levels() != null) {
      row.add(text(figures.find("humDbv", 0)));
    }
    return row;
  }

  private String name(Evidence.Stretch stretch) {
    if (stretch.number() == 0) {
      return words.getString("stretch.first");
    }
    String mark = stretch.mark() == null || stretch.mark().isBlank() ? "" : " " + stretch.mark();
    return "#" + stretch.number() + mark;
  }

  private static String text(FigureList.Figure figure) {
    return figure == null ? "" : figure.text();
  }

  /** What changed at the mark between two parts. */
  List<String> changes(Evidence.Stretch before, Evidence.Stretch after) {
    Comparison comparison = Comparison.of(before.evidence(), after.evidence(), true);
    List<String> changes = new ArrayList<>();
    for (Comparison.Difference difference : comparison.differences()) {
      if (difference.significant()) {
        changes.add(
            say("stretch.changed", name(after), ComparisonWords.ENGLISH.line(difference, sheet)));
      }
    }
    if (changes.isEmpty()) {
      changes.add(say("stretch.unchanged", name(after)));
    }
    return changes;
  }

  private String say(String key, String... texts) {
    return new MessageFormat(words.getString(key), Locale.ROOT).format(texts);
  }
}
