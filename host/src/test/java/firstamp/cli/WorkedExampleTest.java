package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.cli.output.ExitCode;
import firstamp.locate.Examples;
import firstamp.locate.signal.LocateAnswer;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.signal.Observation;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import firstamp.log.BenchLog;
import firstamp.model.TimeSource;
import firstamp.study.PowerUpStudy;
import firstamp.study.SearchState;
import firstamp.study.SignalSearch;
import firstamp.study.Thinking;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The three worked examples of the guide, run from the demo and replayed from its log. */
class WorkedExampleTest {
  @TempDir Path folder;

  private CommandRunner.Result demo(String name) {
    CommandRunner.Result result =
        CommandRunner.run(
            "demo", "--headless", "--json", "--example", name, "--log", log(name).toString());
    assertThat(result.exitCode()).as(result.err()).isZero();
    for (JsonNode line : result.json()) {
      assertThat(JsonSchemas.against(line)).as("%s", line).isEmpty();
    }
    return result;
  }

  private Path log(String name) {
    return folder.resolve(name + ".db");
  }

  @Test
  void theSilentHeadIsFoundWithTheClipAndReplays() throws Exception {
    CommandRunner.Result result = demo("silent-head");
    List<JsonNode> steps = result.json("step");
    JsonNode last = steps.get(steps.size() - 1);
    assertThat(last.path("state").asText()).isEqualTo("found");
    assertThat(last.path("text").asText()).contains("muting contact of the earphone jack");
    assertThat(last.path("remarks").toString()).contains("Dirty contact");
    // While the clip roves it is on neither head nor meter: no alarm about them.
    assertThat(result.json("alarm")).isEmpty();

    BenchLog log = BenchLog.openForReading(log("silent-head"), TimeSource.system());
    try (log) {
      SearchState once = SignalSearch.of(log.find("last"));
      SearchState again = SignalSearch.of(log.find("last"));
      assertThat(again).isEqualTo(once);
      LocateAnswer answer = once.search().answer();
      assertThat(answer.sentence()).isEqualTo(last.path("text").asText());
      assertThat(answer.odds().get(0).share())
          .isEqualTo(last.path("joints").get(0).path("share").asDouble());
      assertThat(once.search().observations()).hasSize(5);
      PowerUpStudy study = PowerUpStudy.of(log.find("last"));
      assertThat(Thinking.sentences(log, study, java.util.Locale.ROOT).get(0))
          .isEqualTo(answer.sentence());
    }
  }

  /** The invented path says -4 dBV at the driver; behind the contact 38 dB are missing. */
  @Test
  void theClipFindsTheLevelsOfTheInventedPath() throws Exception {
    demo("silent-head");
    BenchLog log = BenchLog.openForReading(log("silent-head"), TimeSource.system());
    try (log) {
      List<Observation> found = SignalSearch.of(log.find("last")).search().observations();
      Observation.Level driver = (Observation.Level) found.get(2);
      Observation.Level behind = (Observation.Level) found.get(3);
      assertThat(driver.point()).isEqualTo("driver out");
      assertThat(driver.levelDbv()).isBetween(-4.5, -3.5);
      assertThat(behind.point()).isEqualTo("behind the jack");
      assertThat(behind.levelDbv()).isBetween(-43.0, -41.0);
      Observation.Strokes strokes = (Observation.Strokes) found.get(4);
      assertThat(strokes.levelsDb()).hasSize(5);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"screened-lead", "cotton-leads"})
  void theWiresFindTheirPlacesByPowerUpsOfTheirOwn(String name) throws Exception {
    CommandRunner.Result result = demo(name);
    WireCase written = Examples.wires(name);
    String wire = written.wires().get(0).name();
    List<JsonNode> lines =
        result.json("wire").stream()
            .filter(line -> wire.equals(line.path("wire").asText()))
            .toList();
    assertThat(lines.get(lines.size() - 1).path("state").asText()).isEqualTo("belongs");
    assertThat(lines.get(lines.size() - 1).path("text").asText())
        .isEqualTo(written.answer(wire).sentence());
    assertThat(result.json("trip")).isEmpty();

    // What the log says is what the example in the guide says.
    BenchLog log = BenchLog.openForReading(log(name), TimeSource.system());
    try (log) {
      for (WireStep step : written.steps()) {
        if (step instanceof WireStep.Trial trial) {
          PowerUpStudy study = PowerUpStudy.of(log.find(trial.powerUp().toString()));
          assertThat(Thinking.compare(log, study, trial.wire()).judged().verdict())
              .isEqualTo(trial.verdict());
          assertThat(Thinking.compare(log, study, trial.wire()).judged().figures())
              .isEqualTo(trial.figures());
          assertThat(Thinking.sentences(log, study, java.util.Locale.ROOT)).hasSize(1);
          // 1.2 times the last good idle current, common practice, no source.
          assertThat(study.sheet().limits().runningA()).isLessThan(study.sheet().supply().limitA());
        }
      }
    }
  }

  @Test
  void theReportSaysWhatWasFoundAndWhatWasDoneAboutTheWires() throws Exception {
    demo("silent-head");
    assertThat(page("silent-head", "last")).contains("muting contact of the earphone jack");
    demo("screened-lead");
    Path wires = folder.resolve("wires.json");
    java.nio.file.Files.writeString(
        wires, firstamp.locate.wire.WireFile.write(Examples.wires("screened-lead")));
    assertThat(page("screened-lead", "last", "--wires", wires.toString()))
        .contains("W3 at preamp input, compared with power-up")
        .contains("Wires whose place was not known")
        .contains("W3 now:");
    java.nio.file.Files.writeString(wires, "{}");
    assertThat(report("screened-lead", "last", "--wires", wires.toString()).exitCode())
        .isEqualTo(ExitCode.BAD_DATA);
  }

  private String page(String name, String... more) throws Exception {
    CommandRunner.Result result = report(name, more);
    assertThat(result.exitCode()).as(result.err()).isZero();
    return java.nio.file.Files.readString(folder.resolve("page.html"));
  }

  private CommandRunner.Result report(String name, String... more) {
    List<String> words = new java.util.ArrayList<>(List.of("report"));
    words.addAll(List.of(more));
    words.addAll(
        List.of(
            "--force", "--to", folder.resolve("page.html").toString(), "--log", log(name) + ""));
    return CommandRunner.run(words.toArray(String[]::new));
  }

  @Test
  void aWireOnTheRailIsOverDraw() throws Exception {
    String file = folder.resolve("rail.db").toString();
    for (String[] run : new String[][] {{"lead-off", "good"}, {"lead-at-rail", "W3 at B1 tag"}}) {
      CommandRunner.run(
          "demo",
          "--headless",
          "--json",
          "--speed",
          "max",
          "--for",
          "5s",
          "--scenario",
          run[0],
          "--label",
          run[1],
          "--log",
          file);
    }
    CommandRunner.Result judged =
        CommandRunner.run(
            "trial",
            folder.resolve("wires.json").toString(),
            "--new",
            "screened-lead",
            "--wire",
            "W3",
            "--place",
            "B1 tag",
            "--power-up",
            "last",
            "--log",
            file,
            "--all");
    assertThat(judged.err()).contains("W3 at B1 tag").contains("over draw");
    assertThat(judged.out()).anyMatch(line -> line.contains("B1 tag: ruled out"));
  }

  @Test
  void theSearchOfALogIsTakenIntoAFile() {
    demo("silent-head");
    CommandRunner.Result taken =
        CommandRunner.run(
            "locate",
            folder.resolve("head.json").toString(),
            "--new",
            "record-chain",
            "--power-up",
            "last",
            "--log",
            log("silent-head").toString(),
            "--json");
    // The template knows the head and the meter, not the points of this set.
    assertThat(taken.exitCode()).as(taken.err()).isZero();
    assertThat(taken.json().get(0).path("number").asInt()).isEqualTo(3);
  }

  @Test
  void examplesStandInTheStateTheyAreIn() {
    LocateSession search = Examples.search("silent-head");
    assertThat(search.answer().state()).isEqualTo(LocateAnswer.State.FOUND);
    CommandRunner.Result unknown =
        CommandRunner.run("demo", "--headless", "--example", "nonsense", "--log", "x.db");
    assertThat(unknown.exitCode()).isEqualTo(64);
    assertThat(unknown.err()).contains("silent-head");
  }
}
