package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.emulate.Scenarios;
import firstamp.log.BenchLog;
import firstamp.log.SetNotes;
import firstamp.model.TimeSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Stored power-ups: shown, held against each other, put on a page. */
class CompareReportTest {
  private static final String HOSTILE =
      "</title><script>alert('1')</script><img src=http://127.0.0.1/x>\"&\u202e";

  @TempDir static Path folder;
  private static Path log;

  /** Power-up 1 and 3: a healthy set with different noise; 2: its wire short; 4: hostile names. */
  @BeforeAll
  static void logFourPowerUps() throws Exception {
    log = folder.resolve("bench.db");
    demo("healthy", "--seed", "1");
    demo("wire-short");
    demo("healthy", "--seed", "2", "--label", "after the wire went back");
    ObjectMapper mapper = new ObjectMapper();
    ObjectNode sheet = (ObjectNode) mapper.readTree(Scenarios.sheetJson("wire-short"));
    ((ObjectNode) sheet.path("set")).put("name", HOSTILE);
    sheet.path("rails").forEach(rail -> ((ObjectNode) rail).put("name", HOSTILE));
    ObjectNode path = sheet.putObject("path");
    path.putArray("points").addObject().put("name", HOSTILE);
    ObjectNode wire = sheet.putArray("unknownWires").addObject();
    wire.put("name", HOSTILE);
    wire.putArray("places").add(HOSTILE);
    Path file = folder.resolve("hostile.json");
    Files.writeString(file, mapper.writeValueAsString(sheet));
    demo("wire-short", "--sheet", file.toString(), "--label", HOSTILE);
    try (BenchLog notes = BenchLog.open(log, TimeSource.system())) {
      String cut = HOSTILE;
      SetNotes.add(notes, HOSTILE, new SetNotes.ColdCheck(1000, cut, cut, cut, 47_000.0, cut, cut));
      SetNotes.add(
          notes, HOSTILE, new SetNotes.ColdCheck(2000, "ohms", cut, cut, null, "ohm", null));
      SetNotes.add(
          notes, HOSTILE, new SetNotes.Trial(3000, cut, cut, 4L, "{\"verdict\":\"better\"}"));
      SetNotes.add(notes, HOSTILE, new SetNotes.Trial(3000, "W3", "P7", null, cut));
    }
  }

  private static CommandRunner.Result demo(String scenario, String... more) {
    List<String> arguments =
        new ArrayList<>(List.of("demo", "--headless", "--speed", "max", "--for", "4s", "--log"));
    arguments.addAll(List.of(log.toString(), "--scenario", scenario));
    arguments.addAll(List.of(more));
    return CommandRunner.run(arguments.toArray(String[]::new));
  }

  private static CommandRunner.Result run(String... arguments) {
    List<String> all = new ArrayList<>(List.of(arguments));
    all.addAll(List.of("--log", log.toString()));
    return CommandRunner.run(all.toArray(String[]::new));
  }

  private static JsonNode figure(CommandRunner.Result result, String key, int rail) {
    return result.json("figure").stream()
        .filter(
            line -> line.path("figure").asText().equals(key) && line.path("rail").asInt(0) == rail)
        .findFirst()
        .orElseThrow(() -> new AssertionError("no figure " + key + " in " + result.out()));
  }

  @Test
  void theTextSaysWhetherTheCurvesAgree() {
    assertThat(run("compare", "1", "3").out()).contains("  the two curves agree throughout");
  }

  /**
   * One in twenty is called a change although nothing has changed (level 5 %): of twenty pairs more
   * than four by a chance of 0.3 % (binomial distribution).
   */
  @Test
  void ofTwentyPairsOfOneSetNoMoreDifferThanChanceAllows() {
    String many = folder.resolve("many.db").toString();
    for (int seed = 1; seed <= 21; seed++) {
      CommandRunner.run(
          "demo",
          "--headless",
          "--speed",
          "max",
          "--for",
          "4s",
          "--seed",
          String.valueOf(seed),
          "--log",
          many);
    }
    Map<String, Integer> differs = new TreeMap<>();
    for (int first = 1; first <= 20; first++) {
      CommandRunner.run(
              "compare", String.valueOf(first), String.valueOf(first + 1), "--json", "--log", many)
          .json("figure")
          .forEach(
              line ->
                  differs.merge(
                      line.path("figure").asText(),
                      line.path("significant").asBoolean() ? 1 : 0,
                      Integer::sum));
    }
    assertThat(differs).containsKeys("steadyA", "steadyV", "finalV");
    assertThat(differs).allSatisfy((figure, count) -> assertThat(count).as(figure).isLessThan(5));
  }

  @Test
  void twoHealthyPowerUpsDifferInNoFigure() {
    CommandRunner.Result result = run("compare", "1", "3", "--json");
    assertThat(result.exitCode()).as(result.err()).isZero();
    result.json().forEach(line -> assertThat(JsonSchemas.against(line)).as("%s", line).isEmpty());
    List<JsonNode> all = result.json();
    JsonNode end = all.get(all.size() - 1);
    assertThat(end.path("type").asText()).isEqualTo("comparison");
    assertThat(end.path("before").asInt()).isEqualTo(1);
    assertThat(end.path("after").asInt()).isEqualTo(3);
    assertThat(end.path("figures").asInt()).isGreaterThan(8);
    // Two sets of noise of one set: at 95 % one figure in twenty may still stand out by chance.
    assertThat(end.path("significant").asInt()).isLessThanOrEqualTo(1);
    JsonNode steady = figure(result, "steadyA", 0);
    assertThat(steady.path("difference").asDouble())
        .isCloseTo(
            steady.path("after").asDouble() - steady.path("before").asDouble(), within(1e-9));
  }

  @Test
  void figuresOfOneAloneAreNamedAsSuch() {
    CommandRunner.Result result = run("compare", "1", "2", "--json");
    result.json().forEach(line -> assertThat(JsonSchemas.against(line)).as("%s", line).isEmpty());
    // The wire touches at 1.2 s: on for over a second, but the level of the head came later.
    JsonNode head = figure(result, "headDbv", 0);
    assertThat(head.has("before")).isTrue();
    assertThat(head.has("after")).isFalse();
    assertThat(head.has("difference")).isFalse();
    // 0.7 ms of short in the last second on: the mean of that second shows it.
    assertThat(figure(result, "steadyA", 0).path("significant").asBoolean()).isTrue();
  }

  @Test
  void peopleReadTheSameFiguresEverywhere() throws IOException {
    String compared = String.join("\n", run("compare", "1", "3").out());
    Path page = folder.resolve("same.html");
    assertThat(run("report", "1", "3", "--to", page.toString()).exitCode()).isZero();
    String html = Files.readString(page);
    JsonNode summary = run("show", "3", "--json").summary();
    String amps =
        firstamp.account.FigureList.value(
            summary.path("supply").path("inrushPeakA").asDouble(), "A");
    assertThat(compared).contains("Inrush current, peak: ").contains("then " + amps);
    assertThat(html).contains(">" + amps + "<").contains("after the wire went back");
    assertThat(compared).contains("power-up 3").contains("\"after the wire went back\"");
  }

  @Test
  void showEndsWithTheVerdict() {
    CommandRunner.Result result = run("show", "2");
    assertThat(result.exitCode()).isZero();
    int at = result.out().indexOf("What it showed:");
    assertThat(at).isPositive();
    String verdict = String.join("\n", result.out().subList(at, result.out().size()));
    assertThat(verdict)
        .contains("it switched itself off after 1.2 s")
        .doesNotContain("no fault")
        .doesNotContain("normal");
  }

  @Test
  void aRunEndsWithTheChangeAgainstTheLastOfTheSameSet() {
    Path own = folder.resolve("own.db");
    Path before = log;
    try {
      log = own;
      CommandRunner.Result first = demo("healthy");
      assertThat(first.out()).contains("What it showed:").noneMatch(x -> x.startsWith("Against"));
      CommandRunner.Result second = demo("lost-head");
      assertThat(second.out()).anyMatch(line -> line.startsWith("Against the last power-up 1 ("));
      assertThat(second.out())
          .anyMatch(line -> line.matches("  changed: Head below meter: (39|40)[.]\\d dB, then .*"));
    } finally {
      log = before;
    }
  }

  @Test
  void anExistingFileOrLinkIsNotWrittenOver() throws IOException {
    Path precious = folder.resolve("precious.txt");
    Files.writeString(precious, "precious");
    CommandRunner.Result refused = run("report", "1", "--to", precious.toString());
    assertThat(refused.exitCode()).isEqualTo(73);
    assertThat(refused.err()).contains("precious.txt").contains("--force");
    assertThat(Files.readString(precious)).isEqualTo("precious");
    Path link = folder.resolve("link.html");
    Files.createSymbolicLink(link, precious);
    assertThat(run("report", "1", "--to", link.toString()).exitCode()).isEqualTo(73);
    Path nowhere = folder.resolve("nowhere.html");
    Files.createSymbolicLink(nowhere, folder.resolve("not-there.html"));
    assertThat(run("report", "1", "--to", nowhere.toString()).exitCode()).isEqualTo(73);
    assertThat(folder.resolve("not-there.html")).doesNotExist();
    assertThat(run("report", "1", "--to", link.toString(), "--force").exitCode()).isZero();
    assertThat(Files.readString(precious)).isEqualTo("precious");
    assertThat(Files.isSymbolicLink(link)).isFalse();
    assertThat(Files.readString(link)).startsWith("<!DOCTYPE html>");
  }

  @Test
  void missingThingsHaveTheirExitCodes() {
    assertThat(run("report", "1").exitCode()).isEqualTo(64);
    assertThat(run("compare", "1").exitCode()).isEqualTo(64);
    assertThat(run("compare", "1", "99").exitCode()).isEqualTo(66);
    CommandRunner.Result noFolder =
        run("report", "1", "--to", folder.resolve("no/where.html").toString());
    assertThat(noFolder.exitCode()).isEqualTo(73);
    assertThat(noFolder.err()).contains("folder");
  }

  @Test
  void hostileNamesOfAStoredPowerUpStayTexts() throws IOException {
    Path page = folder.resolve("hostile.html");
    CommandRunner.Result result = run("report", "1", "4", "--to", page.toString());
    assertThat(result.exitCode()).as(result.err()).isZero();
    String html = Files.readString(page);
    assertThat(html)
        .contains("&lt;/title&gt;&lt;script&gt;")
        .doesNotContain("<script")
        .doesNotContain("<img")
        .doesNotContain("\u202e")
        .contains("Measured with the supply off")
        .contains("<td>open</td>")
        .contains("Wires tried")
        .contains("<td>verdict better</td>");
  }

  /** What changed at a mark, from the stored marks of one power-up. */
  @Test
  void partsBetweenMarksAreComparedAndThreeAreJudgedAtOnce() throws Exception {
    Path marked = folder.resolve("marked.db");
    MarkedRun.make(marked);
    Path before = log;
    try {
      log = marked;
      assertThat(run("show", "1").out())
          .anyMatch(line -> line.startsWith("  change #1 at 4 s: lamp on"))
          .anyMatch(line -> line.startsWith("  change #2 at 8 s"));
      CommandRunner.Result result = run("compare", "1#0", "1#1", "--json");
      assertThat(result.exitCode()).as(result.err()).isZero();
      result.json().forEach(line -> assertThat(JsonSchemas.against(line)).as("%s", line).isEmpty());
      JsonNode amps = figure(result, "steadyA", 0);
      assertThat(amps.path("difference").asDouble()).isCloseTo(0.03, within(0.001));
      assertThat(amps.path("significant").asBoolean()).isTrue();
      JsonNode end = result.json().get(result.json().size() - 1);
      assertThat(end.path("beforeMark").asInt()).isZero();
      assertThat(end.path("afterMark").asInt()).isEqualTo(1);
      CommandRunner.Result three = run("compare", "1#0", "1#1", "1#2", "--json");
      three.json().forEach(line -> assertThat(JsonSchemas.against(line)).as("%s", line).isEmpty());
      JsonNode pairs = figure(three, "steadyA", 0).path("pairs");
      assertThat(pairs).hasSize(3);
      assertThat(pairs.get(0).path("significant").asBoolean()).isTrue();
      assertThat(pairs.get(1).path("significant").asBoolean()).isFalse();
      assertThat(pairs.get(2).path("significant").asBoolean()).isTrue();
      assertThat(String.join("\n", run("compare", "1#0", "1#1", "1#2").out()))
          .contains("after change 1 \"lamp on\"");
      CommandRunner.Result none = run("compare", "1#0", "1#9");
      assertThat(none.exitCode()).isEqualTo(66);
      assertThat(none.err()).contains("it has #0 (before the first change) to #2");
      Path page = folder.resolve("marked.html");
      assertThat(run("report", "1", "--to", page.toString()).exitCode()).isZero();
      assertThat(Files.readString(page)).contains("From change to change").contains("#1 lamp on");
    } finally {
      log = before;
    }
  }

  /** The rooms differ, the sheet knows the leakage: the comparison says what that is worth. */
  @Test
  void theWarmthOfTheRoomIsCountedAndSaid() throws Exception {
    Path own = folder.resolve("rooms.db");
    Path sheet = folder.resolve("germanium.json");
    ObjectMapper mapper = new ObjectMapper();
    ObjectNode said = (ObjectNode) mapper.readTree(Scenarios.sheetJson("healthy"));
    ((ObjectNode) said.path("set")).put("leakageA", 0.004);
    Files.writeString(sheet, mapper.writeValueAsString(said));
    Path before = log;
    try {
      log = own;
      demo("healthy", "--room", "18", "--sheet", sheet.toString());
      demo("healthy", "--room", "28", "--sheet", sheet.toString());
      String text = String.join("\n", run("compare", "1", "2").out());
      // 4 mA at 20 C: 3.48 mA at 18, 6.96 mA at 28.
      assertThat(text)
          .contains("the leakage of its germanium parts 3.48 mA more")
          .contains("one probe box with one calibration took both");
      assertThat(run("compare", "1", "2", "--json").json().stream())
          .anyMatch(line -> Math.abs(line.path("leakageA").asDouble() - 0.00348) < 1e-5);
    } finally {
      log = before;
    }
  }

  /** One place for all numbers: every figure of show stands in the report, word for word. */
  @Test
  void showAndReportPrintTheSameFigures() throws IOException {
    Path page = folder.resolve("all.html");
    assertThat(run("report", "3", "--to", page.toString()).exitCode()).isZero();
    String html = Files.readString(page).replaceAll("<[^>]+>", "|").replaceAll("[|\n]+", "|");
    int seen = 0;
    for (String line : run("show", "3").out()) {
      int colon = line.lastIndexOf(": ");
      boolean figure = line.startsWith("  ") && !line.startsWith("  -") && colon > 0;
      String name = figure ? line.substring(2, colon) : "";
      String value = figure ? line.substring(colon + 2).split(" [+]- ")[0] : "";
      if (html.contains("|" + name + "|")) {
        seen++;
        assertThat(html).contains("|" + name + "|" + value + "|");
      }
    }
    assertThat(seen).isGreaterThan(20);
  }

  @Test
  void thePageHoldsSheetCautionsCaptureAndUncertainty() throws IOException {
    Path page = folder.resolve("whole.html");
    assertThat(run("report", "2", "--to", page.toString()).exitCode()).isZero();
    String html = Files.readString(page);
    assertThat(html)
        .contains("60 V dc / 30 V rms")
        .contains("isolation transformer")
        .contains("Local electrical codes")
        .contains("supply.nominalV")
        .contains("limit crossed")
        .contains("running limit")
        .contains("Uncertainty")
        .contains("emulated probe");
  }
}
