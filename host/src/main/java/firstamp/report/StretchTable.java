package firstamp.report;

import firstamp.account.Comparison;
import firstamp.account.FigureList;
import firstamp.analysis.figures.Evidence;
import firstamp.model.JobSheet;
import java.util.ArrayList;
import java.util.List;

/** The time on from mark to mark, one row each: the table of a step by step start. */
final class StretchTable {
  private final JobSheet sheet;
  private final ReportWords words;

  StretchTable(JobSheet sheet, ReportWords words) {
    this.sheet = sheet;
    this.words = words;
  }

  List<String> columns() {
    List<String> columns = new ArrayList<>();
    columns.add(words.word("stretch.from"));
    columns.add(words.word("stretch.mark"));
    columns.add("A");
    columns.add("V");
    columns.add(words.word("stretch.ohm"));
    sheet.rails().forEach(rail -> columns.add(rail.name() == null ? "" : rail.name()));
    if (sheet.levels() != null) {
      columns.add(words.word("stretch.hum"));
    }
    return columns;
  }

  List<String> row(Evidence.Stretch stretch) {
    FigureList figures = FigureList.of(stretch.evidence());
    List<String> row = new ArrayList<>();
    row.add(words.millis(stretch.fromMs()));
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
      return words.word("stretch.first");
    }
    String mark = stretch.mark() == null || stretch.mark().isBlank() ? "" : " " + stretch.mark();
    return "#" + stretch.number() + mark;
  }

  private String text(FigureList.Figure figure) {
    return figure == null ? "" : words.figures().text(figure);
  }

  /** What changed at the mark between two parts. */
  List<String> changes(Evidence.Stretch before, Evidence.Stretch after) {
    Comparison comparison = Comparison.of(before.evidence(), after.evidence(), true);
    List<String> changes = new ArrayList<>();
    for (Comparison.Difference difference : comparison.differences()) {
      if (difference.significant()) {
        changes.add(
            words.word("stretch.changed", name(after), words.comparison().line(difference, sheet)));
      }
    }
    if (changes.isEmpty()) {
      changes.add(words.word("stretch.unchanged", name(after)));
    }
    return changes;
  }
}
