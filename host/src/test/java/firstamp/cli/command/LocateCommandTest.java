package firstamp.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.cli.CommandRunner;
import firstamp.cli.JsonSchemas;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LocateCommandTest {
  @TempDir Path folder;

  private CommandRunner.Result run(String... options) {
    String[] all = new String[options.length + 2];
    all[0] = "locate";
    all[1] = folder.resolve("head.json").toString();
    System.arraycopy(options, 0, all, 2, options.length);
    return CommandRunner.run(all);
  }

  private static void matchesSchema(List<JsonNode> lines) {
    assertThat(lines).isNotEmpty();
    lines.forEach(line -> assertThat(JsonSchemas.against(line)).as("%s", line).isEmpty());
  }

  @Test
  void theExampleEndsAtTheMutingContact() {
    CommandRunner.Result result = CommandRunner.run("locate", "--example", "silent-head", "--json");
    assertThat(result.exitCode()).as(result.err()).isZero();
    List<JsonNode> steps = result.json("step");
    matchesSchema(steps);
    JsonNode last = steps.get(steps.size() - 1);
    assertThat(last.path("state").asText()).isEqualTo("found");
    assertThat(last.path("text").asText()).contains("muting contact of the earphone jack");
    assertThat(last.path("remarks").get(0).asText()).contains("Dirty contact");
    assertThat(steps.get(0).path("state").asText()).isEqualTo("measure");
  }

  @Test
  void keepsItsStateBesideTheSheetAndTakesBack() throws IOException {
    assertThat(run("--new", "play-chain").exitCode()).isZero();
    String before = Files.readString(folder.resolve("head.json"));
    assertThat(run("--at", "loudspeaker", "--gone").exitCode()).isZero();
    CommandRunner.Result step = run("--at", "preamp out", "--level", "-32.5", "--json");
    assertThat(step.exitCode()).as(step.err()).isZero();
    matchesSchema(step.json());
    assertThat(step.json().get(0).path("number").asInt()).isEqualTo(2);
    run("--undo");
    run("--undo");
    CommandRunner.Result none = run("--undo");
    assertThat(none.exitCode()).isEqualTo(64);
    assertThat(Files.readString(folder.resolve("head.json")).contains("\"there\""))
        .isEqualTo(before.contains("\"there\""));
  }

  @Test
  void refusesWhileARailAlarmStands() {
    run("--new", "receiver");
    CommandRunner.Result refused = run("--rail-alarm", "B1 is low");
    assertThat(refused.exitCode()).isEqualTo(3);
    assertThat(refused.out().get(0)).contains("B1 is low");
    assertThat(run("--rails-well").exitCode()).isZero();
  }

  /** The head is expected at -58 dBV. */
  @Test
  void afterMendingTheHeadIsAskedForAndReached() {
    run("--new", "record-chain");
    run("--at", "head", "--gone");
    String joint = "head contact, record";
    run("--work", joint, "--levels", "-80,-60,-75,-62");
    CommandRunner.Result mended = run("--mended", joint);
    assertThat(mended.out().get(0)).startsWith("Measure here next: head");
    assertThat(String.join(" ", mended.out())).doesNotContain("Dirty contact");
    CommandRunner.Result reached = run("--at", "Head", "--level", "-59", "--json");
    assertThat(reached.exitCode()).as(reached.err()).isZero();
    matchesSchema(reached.json());
    assertThat(reached.json().get(0).path("state").asText()).isEqualTo("nothing-found");
    assertThat(reached.json().get(0).path("text").asText())
        .isEqualTo("The signal reaches the head.");
  }

  @Test
  void mendingThatDidNotHelpGoesOnSearching() {
    run("--new", "record-chain");
    run("--at", "head", "--gone");
    run("--mended", "head contact, record");
    CommandRunner.Result still = run("--at", "head", "--level", "-90", "--json");
    assertThat(still.json().get(0).path("state").asText()).isEqualTo("measure");
  }

  @Test
  void namesAreFoundWhateverTheirCapitals() {
    run("--new", "record-chain");
    assertThat(run("--at", "METER", "--there").exitCode()).isZero();
    CommandRunner.Result typo = run("--at", "haed", "--gone");
    assertThat(typo.exitCode()).isEqualTo(64);
    assertThat(typo.err()).contains("Did you mean 'head'?");
  }

  /** A sheet's own path takes measurements of its own set alone, as a trial does. */
  @Test
  void aPowerUpOfAnotherSetIsRefused() throws IOException {
    Path sheet = Files.writeString(folder.resolve("set.json"), SHEET);
    Path other =
        Files.writeString(folder.resolve("other.json"), SHEET.replace("a path", "another"));
    String log = folder.resolve("log.db").toString();
    for (Path one : List.of(other, sheet)) {
      CommandRunner.Result made =
          CommandRunner.run(
              "demo",
              "--headless",
              "--speed",
              "max",
              "--for",
              "1s",
              "--no-sound",
              "--sheet",
              one.toString(),
              "--waveform",
              waveform(),
              "--log",
              log);
      assertThat(made.exitCode()).as(made.err()).isZero();
    }
    CommandRunner.Result made = run("--sheet", sheet.toString());
    assertThat(made.exitCode()).as(made.err()).isZero();
    String before = Files.readString(folder.resolve("head.json"));
    CommandRunner.Result refused = run("--power-up", "1", "--log", log);
    assertThat(refused.exitCode()).as(refused.err()).isEqualTo(65);
    assertThat(refused.err())
        .contains("power-up 1 is of Set with another (invented)")
        .contains("this path is of Set with a path (invented)");
    assertThat(folder.resolve("head.json")).hasContent(before);
    assertThat(run("--power-up", "2", "--log", log).err()).doesNotContain("is of Set");
  }

  private static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Set with a path (invented)\"},"
          + "\"supply\":{\"nominalV\":12,\"fuseA\":1},"
          + "\"levels\":{\"toneHz\":400,\"expectedDb\":38,\"fromMs\":200},"
          + "\"path\":{\"points\":[{\"name\":\"in\"},{\"name\":\"meter\"},{\"name\":\"head\"}],"
          + "\"joints\":[{\"name\":\"A\",\"from\":\"in\",\"to\":\"meter\"},"
          + "{\"name\":\"B\",\"from\":\"meter\",\"to\":\"head\"}]}}";

  private String waveform() throws IOException {
    return Files.writeString(
            folder.resolve("w.csv"), "t_s,supply_V,supply_A\r\n0,12,0.1\r\n2,12,0.1\r\n")
        .toString();
  }

  @Test
  void saysWhatIsWrong() throws IOException {
    assertThat(run().exitCode()).isEqualTo(66);
    run("--new", "amplifier");
    CommandRunner.Result point = run("--at", "nowhere", "--gone");
    assertThat(point.exitCode()).isEqualTo(64);
    assertThat(point.err()).contains("nowhere").contains("loudspeaker");
    assertThat(run("--at", "loudspeaker").exitCode()).isEqualTo(64);
    Files.writeString(folder.resolve("head.json"), "{\"locate\":1,\"nmae\":\"x\"}");
    CommandRunner.Result bad = run();
    assertThat(bad.exitCode()).isEqualTo(65);
    assertThat(bad.err()).contains("head.json").contains("nmae");
  }
}
