package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Printed procedures and tables of others, run through the commands: the search asks where the
 * course says, names the stage that the chart names, and a run shows the figures as printed.
 *
 * <p>Sources, read in stored copies of the public pages on 2026-11-30:
 *
 * <ul>
 *   <li>Half-split: US Army correspondence course, subcourse IT 0338, frame 10 and its answer: a
 *       linear path between its first brackets, the first check (E) is good: move the first bracket
 *       there, the next check is at G.
 *   <li>Stage gains: TM 11-6625-847-45, paragraph 2-16 b (stage gain chart of an amplifier module):
 *       50 mV in, 847 mV at the collector of the first transistor, 625 mV out, each within 10
 *       percent; gains 16.9 and 0.74. "Agreement within 10 percent" is normal operation.
 *   <li>Supply: TM 55-1905-219-14-11, voltage measurements of a transistor amplifier of 10 W, step
 *       (e): at full signal, 12.65 V across 16 ohm, the battery ammeter reads 1.2 to 1.4 A at 11.5
 *       to 12 V; battery of 12 V through a fuse of 2 A.
 * </ul>
 */
class PublishedProceduresTest {
  @TempDir Path folder;

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private JsonNode locate(String... more) {
    List<String> words = new ArrayList<>(List.of("locate", folder.resolve("path.json") + ""));
    words.addAll(List.of(more));
    words.add("--json");
    CommandRunner.Result result = CommandRunner.run(words.toArray(String[]::new));
    assertThat(result.exitCode()).as(result.err()).isZero();
    return result.json().get(0);
  }

  /** Points A to I with stages between them. */
  private void linearPath() throws IOException {
    StringBuilder points = new StringBuilder();
    StringBuilder joints = new StringBuilder();
    for (char point = 'A'; point <= 'I'; point++) {
      points.append(point == 'A' ? "" : ",").append("{\"name\":\"").append(point).append("\"}");
      if (point > 'A') {
        char before = (char) (point - 1);
        joints.append(point == 'B' ? "" : ",");
        joints.append(
            String.format(
                "{\"name\":\"%c to %c\",\"from\":\"%c\",\"to\":\"%c\",\"kind\":\"stage\"}",
                before, point, before, point));
      }
    }
    write(
        "path.json",
        "{\"locate\":1,\"name\":\"a linear path\",\"modes\":[{\"name\":\"usual\",\"source\":\"A\"}],"
            + "\"points\":["
            + points
            + "],\"joints\":["
            + joints
            + "],\"railAlarms\":[],\"steps\":[]}");
  }

  @Test
  void asksAtTheMidpointsOfTheHalfSplit() throws IOException {
    linearPath();
    assertThat(locate("--at", "I", "--gone").path("next").path("point").asText()).isEqualTo("E");
    assertThat(locate("--at", "E", "--there").path("next").path("point").asText()).isEqualTo("G");
    // Halved on to the end: the fault is put between G and H.
    assertThat(locate("--at", "G", "--there").path("next").path("point").asText()).isEqualTo("H");
    JsonNode found = locate("--at", "H", "--gone");
    assertThat(found.path("joints").get(0).path("joint").asText()).isEqualTo("G to H");
  }

  /** 20 log 0.05 = -26.02, 20 log 0.847 = -1.44, 20 log 0.625 = -4.08 dBV. */
  private void stageGainChart() throws IOException {
    write(
        "path.json",
        "{\"locate\":1,\"name\":\"an amplifier module\",\"modes\":["
            + "{\"name\":\"usual\",\"source\":\"input\"}],\"points\":["
            + "{\"name\":\"input\",\"expectedDbv\":-26.02},"
            + "{\"name\":\"first collector\",\"expectedDbv\":-1.44},"
            + "{\"name\":\"output\",\"expectedDbv\":-4.08}],\"joints\":["
            + "{\"name\":\"first stage\",\"from\":\"input\",\"to\":\"first collector\","
            + "\"kind\":\"stage\"},"
            + "{\"name\":\"second stage\",\"from\":\"first collector\",\"to\":\"output\","
            + "\"kind\":\"stage\"}],\"railAlarms\":[],\"steps\":[]}");
  }

  private static String dbv(double volts) {
    return String.format(Locale.ROOT, "%.2f", 20 * Math.log10(volts));
  }

  /** 0.1 of the printed output behind a collector as printed: gain 0.074 instead of 0.74. */
  @Test
  void namesTheStageWhoseGainIsNotThatOfTheChart() throws IOException {
    stageGainChart();
    JsonNode first = locate("--at", "output", "--level", dbv(0.0625), "--plus-minus", "0.5");
    assertThat(first.path("next").path("point").asText()).isEqualTo("first collector");
    JsonNode second = locate("--at", "first collector", "--level", dbv(0.847));
    assertThat(second.path("state").asText()).isEqualTo("found");
    assertThat(second.path("text").asText()).startsWith("The signal is lost at second stage");

    stageGainChart();
    locate("--at", "output", "--level", dbv(0.0625), "--plus-minus", "0.5");
    JsonNode low = locate("--at", "first collector", "--level", dbv(0.0847));
    assertThat(low.path("text").asText()).startsWith("The signal is lost at first stage");
  }

  /** Ten percent low is 0.9 dB. */
  @Test
  void tenPercentOfTheChartIsInOrder() throws IOException {
    stageGainChart();
    locate("--at", "output", "--level", dbv(0.9 * 0.625), "--plus-minus", "0.5");
    JsonNode all = locate("--at", "first collector", "--level", dbv(0.9 * 0.847));
    assertThat(all.path("state").asText()).isNotEqualTo("found");
  }

  /**
   * The tables as one run: battery and current of the one, levels of the other, a tone of 400 Hz.
   */
  @Test
  void aRunShowsTheFiguresAsPrinted() throws IOException {
    StringBuilder rows = new StringBuilder("t_s,supply_V,supply_A,head_V,meter_V\n");
    int perSecond = 16_000;
    for (int row = 0; row <= 4 * perSecond; row++) {
      double seconds = row / (double) perSecond;
      double wave = Math.sqrt(2) * Math.sin(2 * Math.PI * 400 * seconds);
      rows.append(
          String.format(
              Locale.ROOT, "%.7f,11.75,1.3,%.6f,%.6f%n", seconds, 0.05 * wave, 0.625 * wave));
    }
    Path waveform = write("printed.csv", rows.toString());
    Path sheet =
        write(
            "sheet.json",
            "{\"sheet\":1,\"set\":{\"name\":\"An amplifier of 10 W\",\"kind\":\"amplifier\"},"
                + "\"supply\":{\"nominalV\":12,\"minV\":11.5,\"maxV\":12.5,\"limitA\":2,\"fuseA\":2},"
                + "\"limits\":{\"inrushA\":1.9,\"inrushMs\":50,\"runningA\":1.6,\"i2tA2s\":0.5},"
                + "\"levels\":{\"toneHz\":400,\"expectedDb\":21.9,\"marginDb\":6,\"fromMs\":500}}");
    Path frontEnd =
        write("front-end.json", "{\"channels\":{\"H\":{\"atZero\":-0.1,\"atFull\":0.1}}}");
    CommandRunner.Result run =
        CommandRunner.run(
            "demo",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--for",
            "3s",
            "--waveform",
            waveform.toString(),
            "--sheet",
            sheet.toString(),
            "--front-end",
            frontEnd.toString(),
            "--log",
            folder.resolve("log.db").toString());
    List<JsonNode> summaries = run.json("summary");
    assertThat(summaries).as(run.err()).hasSize(1);
    JsonNode summary = summaries.get(0);
    assertThat(summary.path("outcome").asText()).as(summary.toString()).isEqualTo("normal");
    JsonNode supply = summary.path("supply");
    assertThat(supply.path("steadyA").asDouble()).isBetween(1.2, 1.4).isCloseTo(1.3, within(0.02));
    assertThat(supply.path("steadyV").asDouble()).isBetween(11.5, 12.0);
    JsonNode levels = summary.path("levels");
    assertThat(levels.path("toneHz").asDouble()).isCloseTo(400, within(1.0));
    assertThat(levels.path("meterDbv").asDouble()).isCloseTo(-4.08, within(0.2));
    assertThat(levels.path("headDbv").asDouble()).isCloseTo(-26.02, within(0.2));
    // 16.9 times 0.74 is 12.5, and 20 log 12.5 is 21.94 dB.
    assertThat(levels.path("headBelowMeterDb").asDouble()).isCloseTo(21.94, within(0.2));
  }
}
