package firstamp.report;

import firstamp.account.Comparison;
import firstamp.account.FigureList;
import firstamp.alarm.OffWords;
import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.TripPeak;
import firstamp.model.Alarm;
import firstamp.model.NotWatched;
import firstamp.model.Summary;
import firstamp.model.samples.Calibration;
import firstamp.model.text.Worded;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Writes the report of one power-up as one self-contained HTML page. */
public final class HtmlReport {
  private static final String STYLE =
      """
      @page { margin: 14mm; }
      body { font: 11pt/1.45 sans-serif; color: #17232c; background: #fff; max-width: 180mm;
        margin: 0 auto; padding: 6mm 4mm; overflow-wrap: anywhere; }
      h1 { font-size: 19pt; margin: 0; } h2 { font-size: 13pt; margin: 8mm 0 2mm;
        border-bottom: 1px solid #7a7f80; break-after: avoid; }
      .about { color: #46525b; margin: 1mm 0 4mm; }
      .cautions { border-left: 5px solid #a3291d; padding: 1mm 4mm; }
      .verdict li:first-child { font-weight: bold; }
      table { border-collapse: collapse; width: 100%; font-size: 10pt; }
      th, td { text-align: left; vertical-align: top; padding: 1mm 3mm 1mm 0;
        border-bottom: 1px solid #d8d4ca; }
      td:first-child { min-width: 18mm; }
      tr, figure, li { break-inside: avoid; } figure { margin: 0 0 4mm; }
      svg { width: 100%; height: auto; } figcaption { color: #46525b; font-size: 10pt; }
      """;

  private static final int CAUTIONS = 8;

  private final ReportInput input;
  private final ReportWords words;
  private final Html html = new Html();

  private HtmlReport(ReportInput input, ReportWords words) {
    this.input = input;
    this.words = words;
  }

  /** The page in English. */
  public static String page(ReportInput input) {
    return page(input, Locale.ROOT);
  }

  /** The page in a language; what the input holds as text is in its own. */
  public static String page(ReportInput input, Locale locale) {
    return new HtmlReport(input, new ReportWords(locale)).write();
  }

  private String write() {
    String set = input.sheet().set().name();
    html.raw(
        "<!DOCTYPE html>\n<html lang=\""
            + words.language()
            + "\"><head><meta charset=\"utf-8\">\n");
    html.raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ");
    html.raw("style-src 'unsafe-inline'\">\n");
    html.raw("<meta name=\"viewport\" content=\"width=device-width\">\n");
    html.element("title", set).raw("<style>\n" + STYLE + "</style></head><body>\n");
    html.element("h1", set);
    html.raw("<p class=\"about\">" + Html.escape(about()) + "</p>\n");
    Worded live = OffWords.words(input.sheet());
    if (live != null) {
      html.paragraph(words.in(live));
    }
    cautions();
    verdict();
    pictures();
    figures();
    stretches();
    comparison();
    alarms();
    marks();
    told();
    watched();
    uncertainty();
    tables();
    html.raw("</body></html>\n");
    return html.toString();
  }

  private String about() {
    Summary summary = input.summary();
    List<String> parts = new ArrayList<>();
    if (summary.powerUp() != null) {
      parts.add(word("power-up") + " " + summary.powerUp());
    }
    if (input.started() != null) {
      parts.add(input.started());
    }
    if (input.label() != null && !input.label().isBlank()) {
      parts.add(input.label());
    }
    boolean byRule = "rule-off".equals(summary.ended());
    parts.add(word("outcome." + (byRule ? summary.ended() : summary.outcome())));
    if (summary.onMs() != null) {
      parts.add(word("on") + " " + words.millis(summary.onMs()));
    }
    return String.join(" \u00b7 ", parts);
  }

  private void cautions() {
    List<String> lines = new ArrayList<>();
    for (int k = 1; k <= CAUTIONS; k++) {
      lines.add(word("caution." + k));
    }
    html.raw("<div class=\"cautions\">\n<p><strong>" + Html.escape(word("cautions")));
    html.raw("</strong></p>\n").list(lines).raw("</div>\n");
  }

  private void verdict() {
    html.heading(word("verdict")).raw("<div class=\"verdict\">\n");
    html.list(
        Stream.concat(
                input.verdict().sentences().stream()
                    .map(each -> words.verdict(each, input.summary().notWatched(), input.sheet())),
                input.found().stream())
            .toList());
    html.raw("</div>\n");
  }

  private void pictures() {
    ReportPictures pictures = new ReportPictures(input, words);
    html.heading(word("pictures"));
    String earlier =
        input.before() == null ? "" : " " + word("picture.earlier") + " " + input.before().name();
    TripPeak peak = input.evidence().tripPeak();
    String highest = "";
    if (peak != null) {
      String key = peak.atLeast() ? "picture.trip.highest.at-least" : "picture.trip.highest";
      highest = " " + words.word(key, words.figures().value(peak.amps(), "A"));
    }
    picture(pictures.trip(), word("picture.trip") + highest);
    picture(pictures.start(), word("picture.start") + earlier);
    picture(pictures.whole(), word("picture.whole") + earlier);
    picture(pictures.leakage(), word("picture.leakage"));
  }

  private void picture(String svg, String caption) {
    if (svg != null) {
      html.figure(svg, caption);
    }
  }

  private void figures() {
    html.heading(word("figures"));
    List<List<String>> rows = new ArrayList<>();
    for (FigureList.Figure figure : FigureList.of(input.evidence()).figures()) {
      rows.add(
          List.of(
              words.figures().name(figure),
              words.figures().text(figure),
              words.figures().plusMinus(figure)));
    }
    html.table(List.of(word("figure"), word("value"), word("plus-minus")), rows);
  }

  /** Volts, amperes, ohms and hum from mark to mark, and what changed at each. */
  private void stretches() {
    List<Evidence.Stretch> stretches = input.evidence().stretches();
    if (stretches.isEmpty()) {
      return;
    }
    html.heading(word("stretches"));
    StretchTable table = new StretchTable(input.sheet(), words);
    html.table(table.columns(), stretches.stream().map(table::row).toList());
    List<String> changes = new ArrayList<>();
    for (int k = 1; k < stretches.size(); k++) {
      changes.addAll(table.changes(stretches.get(k - 1), stretches.get(k)));
    }
    html.list(changes);
  }

  private void comparison() {
    if (input.before() == null) {
      return;
    }
    Comparison comparison = input.before().comparison();
    html.heading(word("compared") + " " + input.before().name());
    List<List<String>> rows = new ArrayList<>();
    for (Comparison.Difference difference : comparison.differences()) {
      rows.add(
          List.of(
              words.figures().name(difference.figure(), difference.rail(), input.sheet()),
              words.figures().value(difference.before(), difference.valueUnit()),
              words.figures().value(difference.after(), difference.valueUnit()),
              words.figures().value(difference.difference(), difference.unit()),
              words.figures().value(difference.plusMinus(), difference.unit()),
              word(difference.significant() ? "changed" : "unchanged")));
    }
    html.table(
        List.of(
            word("figure"),
            word("before"),
            word("after"),
            word("difference"),
            word("plus-minus"),
            word("judged")),
        rows);
    Comparison.Parting parting = comparison.parting();
    html.paragraph(
        parting == null
            ? word("parting.none")
            : word("parting")
                + " "
                + words.millis(parting.atMs())
                + ": "
                + words.figures().parting(parting, input.sheet()));
    if (comparison.leakageA() != null) {
      html.paragraph(words.comparison().leakage(comparison));
    }
    String points = words.comparison().pointsTo(comparison);
    if (points != null) {
      html.paragraph(points);
    }
  }

  private void alarms() {
    List<Alarm> alarms = input.summary().alarms();
    html.heading(word("alarms"));
    if (alarms == null || alarms.isEmpty()) {
      html.paragraph(word("alarms.none"));
      return;
    }
    List<List<String>> rows = new ArrayList<>();
    for (Alarm alarm : alarms) {
      rows.add(List.of(words.millis(alarm.atMs()), words.alarm(alarm)));
    }
    html.table(List.of(word("time"), word("alarm")), rows);
  }

  private void marks() {
    if (!input.marks().isEmpty()) {
      html.heading(word("marks"));
      html.table(
          List.of(word("time"), word("mark")),
          input.marks().stream()
              .map(mark -> List.of(words.millis(mark.atMs()), String.valueOf(mark.text())))
              .toList());
    }
  }

  private void told() {
    if (!input.told().isEmpty()) {
      html.heading(word("told")).list(input.told());
    }
  }

  private void tables() {
    for (ReportInput.Table table : input.tables()) {
      html.heading(table.title()).table(table.columns(), table.rows());
    }
  }

  private void watched() {
    html.heading(word("watched"));
    List<String> watched = input.summary().watched();
    html.paragraph(watched == null ? "" : String.join(", ", watched));
    List<NotWatched> not = input.summary().notWatched();
    if (not != null && !not.isEmpty()) {
      html.paragraph(word("not-watched"));
      html.list(words.notWatched(not, input.sheet()));
    }
  }

  private void uncertainty() {
    Calibration calibration = input.evidence().calibration();
    html.heading(word("uncertainty"));
    boolean valid = calibration.kind() == Calibration.Kind.VALID;
    html.paragraph(word(valid ? "uncertainty.calibrated" : "uncertainty.blank"));
    if (valid && calibration.calibratedEpochSeconds() > 0) {
      html.paragraph(
          word("calibrated")
              + " "
              + StoredTexts.local(1000 * calibration.calibratedEpochSeconds()));
    }
    html.table(
        List.of(word("channel"), word("range"), word("gain"), word("zero")),
        CalibrationRows.of(calibration, words));
  }

  private String word(String key) {
    return words.word(key);
  }
}
