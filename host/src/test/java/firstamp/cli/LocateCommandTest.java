package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
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
    assertThat(refused.exitCode()).isEqualTo(77);
    assertThat(refused.out().get(0)).contains("B1 is low");
    assertThat(run("--rails-well").exitCode()).isZero();
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
