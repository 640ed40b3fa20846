package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.emulate.Scenarios;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Stored power-ups compared with each other. */
class CompareReportTest extends FourPowerUps {
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
          .contains("raises the leakage current of its germanium parts by 3.48 mA")
          .contains("one probe box with one calibration took both");
      assertThat(run("compare", "1", "2", "--json").json().stream())
          .anyMatch(line -> Math.abs(line.path("leakageA").asDouble() - 0.00348) < 1e-5);
    } finally {
      log = before;
    }
  }
}
