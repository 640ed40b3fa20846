package firstamp.report;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.account.Comparison;
import firstamp.account.Verdict;
import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.PowerUpFigures;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.Priority;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.Trip;
import firstamp.model.TripCause;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ReadingReducer;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Scaling;
import firstamp.model.samples.Zero;
import java.awt.Color;
import java.io.StringReader;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

class HtmlReportTest {
  private static final String HOSTILE =
      "</title><script>alert('1')</script>\"&\u202e\u0000<img src=x>";

  static JobSheet sheet(String name, String railName) {
    return new JobSheet(
        1,
        new JobSheet.SetInfo(name, "recorder", "negative"),
        new JobSheet.Supply("bench", "supply-lead", 12.0, 11.0, 13.0, 1.5, 1.0, true),
        new JobSheet.Limits(4.5, 60.0, 1.0, 0.3, null),
        List.of(new JobSheet.Rail(1, railName, 8.2, 5.0, 300.0, 9.8, 0.05, 2200.0, "none")),
        null,
        Map.of());
  }

  private static short counts(Channel channel, double value) {
    double counts = Calibration.nominal().scale(channel).counts(value);
    return (short) Math.max(0, Math.min(1023, Math.floor(counts + 0.5)));
  }

  private static Evidence evidence(JobSheet sheet, double idleA) {
    return evidence(sheet, idleA, null);
  }

  private static Evidence evidence(JobSheet sheet, double idleA, String mark) {
    PowerUpFigures figures = new PowerUpFigures(sheet, Calibration.nominal(), 330, 10);
    ReadingReducer reducer = new ReadingReducer(figures::onReading);
    figures.closedAt(0);
    short[] counts = new short[16_000];
    for (int second = 0; second < 14; second++) {
      if (second == 6 && mark != null) {
        figures.onEvent(new ProbeEvent.Happened(6_000_000, new Happening.SetChanged(mark)));
      }
      for (int k = 0; k < counts.length; k++) {
        double t = second + k / 16_000.0;
        Channel channel = SamplePlan.channelAt(k);
        double value =
            switch (channel) {
              case I, J -> idleA + 0.2 * Math.exp(-t / 0.1);
              case V -> 12;
              case R1 -> 8.2 * (1 - Math.exp(-t / 0.1));
              default -> 0;
            };
        counts[k] = counts(channel, value);
      }
      reducer.accept(second * 16_000L, counts, 0, counts.length);
    }
    return figures.evidence();
  }

  static ReportInput input(JobSheet sheet, String text, boolean tripped) {
    Evidence evidence = evidence(sheet, 0.118, text);
    Alarm alarm =
        new Alarm(
            1,
            "over-current",
            0,
            text,
            14_000,
            13_999,
            14_000,
            Priority.HIGH,
            AlarmState.UNACKNOWLEDGED,
            8.1,
            false,
            1.0,
            "A",
            "Over 1 A: " + text,
            0);
    Summary summary =
        new Summary(
            12,
            "u",
            tripped ? "tripped" : "normal",
            tripped ? "trip" : "time",
            tripped ? "running" : null,
            tripped ? 14_000.0 : null,
            evidence.onMs(),
            null,
            evidence.supply(),
            evidence.rails(),
            null,
            List.of("over-current", text),
            List.of(new NotWatched("rail 2", text)),
            tripped ? List.of(alarm) : List.of(),
            null,
            null,
            null);
    short[] capture = new short[Capture.LENGTH];
    for (int k = 0; k < capture.length; k++) {
      capture[k] = counts(Channel.I, k > 124 && k < 130 ? 8.1 : 0.1);
    }
    Trip trip =
        new Trip(
            1,
            TripCause.RUNNING,
            0,
            3,
            13_999_500,
            14_000_000,
            14_000_060,
            660,
            82,
            0,
            0,
            null,
            null);
    Evidence before = evidence(sheet, 0.15);
    return new ReportInput(
        sheet,
        summary,
        evidence,
        Verdict.of(sheet, summary, evidence),
        List.of("lost " + text),
        "2026-03-04 17:05",
        text,
        List.of(new ReportInput.Mark(1200, text)),
        List.of("Why it was switched off: " + text),
        tripped
            ? new ReportInput.TripPicture(
                trip,
                new Capture(1, 14_000_000, 0, capture),
                new Scaling(Calibration.nominal(), Zero.NONE))
            : null,
        List.of(
            new ReportInput.Table(
                text, List.of("Point", text), List.of(List.of("B1 to chassis", text)))),
        new ReportInput.Before(text, before, Comparison.of(before, evidence, true)));
  }

  /**
   * The page is written so that an XML reader takes it too, but for the doctype and void elements.
   */
  private static Document parsed(String page) throws Exception {
    String xml =
        page.replaceFirst("<!DOCTYPE html>\n", "").replaceAll("(<meta [^>]*[^/])>", "$1/>");
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
  }

  @Test
  void holdsFiguresVerdictPicturesAndComparison() throws Exception {
    JobSheet sheet = sheet("Larch D2 dictation unit (invented)", "B1");
    String page = HtmlReport.page(input(sheet, "after the switch was cleaned", true));
    Document document = parsed(page);
    String text = document.getDocumentElement().getTextContent();
    assertThat(text)
        .contains("Larch D2 dictation unit (invented)")
        .contains("Power-up 12 \u00b7 2026-03-04 17:05 \u00b7 after the switch was cleaned")
        .contains("the probe switched itself off \u00b7 on for 14 s")
        .contains("Local electrical codes and licensed practice come first")
        .contains("Supply current at the end118.0 mA5.9 mA")
        .contains("Inrush, current squared x time, first 100 ms0.0061 A\u00b2s")
        .contains("B1: time constant100 ms")
        .contains("Supply current at the end150 mA118 mA")
        .contains("The two curves part at")
        .contains("Not watched:")
        .contains("This probe box was never calibrated")
        .contains("From change to change")
        .contains("#1 after the switch was cleaned")
        .contains("no significant change")
        .contains("Supply current, fine0 A to 400 mA5.0 %");
    assertThat(document.getElementsByTagName("svg").getLength()).isEqualTo(4);
    assertThat(document.getElementsByTagName("h1").getLength()).isEqualTo(1);
    assertThat(page).contains("limit crossed").contains("switched off");
  }

  @Test
  void asksForNothingFromOutside() {
    String page = HtmlReport.page(input(sheet("Larch", "B1"), "x", true));
    assertThat(page.replaceAll("xmlns(:[a-z]+)?=\"http://www.w3.org/[^\"]*\"", ""))
        .doesNotContain("http:")
        .doesNotContain("https:")
        .doesNotContain("src=")
        .doesNotContain("@import")
        .doesNotContain("<link")
        .doesNotContainPattern("url\\((?!#)");
    assertThat(page).contains("default-src 'none'");
  }

  @Test
  void hostileTextsStayTexts() throws Exception {
    JobSheet sheet = sheet(HOSTILE, HOSTILE);
    String page = HtmlReport.page(input(sheet, HOSTILE, true));
    assertThat(page).doesNotContain("<script").doesNotContain("<img").doesNotContain("\u202e");
    assertThat(page).doesNotContain("\u0000");
    Document document = parsed(page);
    assertThat(document.getElementsByTagName("script").getLength()).isZero();
    assertThat(document.getElementsByTagName("title").item(0).getTextContent())
        .startsWith("</title><script>alert('1')</script>");
  }

  @Test
  void namesInsideThePicturesAreUniqueOnThePage() throws Exception {
    String page = HtmlReport.page(input(sheet("Larch", "B1"), "x", true));
    List<String> names =
        java.util.regex.Pattern.compile(" id=\"([^\"]+)\"")
            .matcher(page)
            .results()
            .map(match -> match.group(1))
            .filter(name -> !name.equals("genericDefs"))
            .toList();
    assertThat(names).isNotEmpty().doesNotHaveDuplicates();
  }

  @Test
  void withoutATripOrACompanionThosePartsAreLeftOut() {
    ReportInput whole = input(sheet("Larch", "B1"), "x", false);
    ReportInput alone =
        new ReportInput(
            whole.sheet(),
            whole.summary(),
            whole.evidence(),
            whole.verdict(),
            List.of(),
            null,
            null,
            List.of(),
            List.of(),
            null,
            List.of(),
            null);
    String page = HtmlReport.page(alone);
    assertThat(page)
        .doesNotContain("limit crossed")
        .doesNotContain("Compared with")
        .contains("Ran 0:14, no fault seen.")
        .contains("no alarm")
        .doesNotContain("normal<")
        .doesNotContain("null");
  }

  @Test
  void theChartsKeepNothingOfTheLibrarysOwnLook() {
    JFreeChart chart =
        new StripPicture("t", "seconds")
            .chart(
                List.of(new Strip("Supply current", "A", new double[] {0, 1}, new double[] {0, 1})),
                List.of());
    assertThat(chart.getTitle()).isNull();
    assertThat(chart.getLegend()).isNull();
    assertThat(chart.getBackgroundPaint()).isEqualTo(Color.WHITE);
    CombinedDomainXYPlot all = (CombinedDomainXYPlot) chart.getPlot();
    XYPlot plot = all.getSubplots().get(0);
    assertThat(plot.getBackgroundPaint()).isEqualTo(StripPicture.SURFACE);
    assertThat(plot.isDomainGridlinesVisible()).isFalse();
    assertThat(plot.isRangeGridlinesVisible()).isFalse();
    assertThat(plot.isOutlineVisible()).isFalse();
    assertThat(plot.getRenderer().getSeriesPaint(0)).isEqualTo(StripPicture.INK);
    assertThat(plot.getRangeAxis().getAxisLinePaint()).isEqualTo(StripPicture.EDGE);
  }
}
