package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A short from the start reads less than the volts input can tell: one bound, said as one. */
class OneOhmFigureTest {
  @TempDir Path folder;

  private CommandRunner.Result run(String... more) {
    List<String> arguments =
        new java.util.ArrayList<>(
            List.of("demo", "--headless", "--speed", "max", "--scenario", "look-short", "--log"));
    arguments.add(folder.resolve("log.db").toString());
    arguments.addAll(List.of(more));
    return CommandRunner.run(arguments.toArray(String[]::new));
  }

  @Test
  void everyLineSaysTheSameOhms() {
    CommandRunner.Result result = run("--json");
    JsonNode look = result.json("look").get(0);
    JsonNode alarm = result.json("alarm").get(0);
    assertThat(look.path("ohm").asDouble()).isEqualTo(alarm.path("value").asDouble());
    assertThat(look.path("ohmAtMost").asBoolean()).isTrue();
    assertThat(result.summary().path("look").path("ohmAtMost").asBoolean()).isTrue();
    assertThat(result.summary().path("look").path("ohm")).isEqualTo(look.path("ohm"));
    result
        .json()
        .forEach(line -> assertThat(JsonSchemas.against(line)).as("schema of %s", line).isEmpty());
  }

  @Test
  void theTextSaysAtMostWhereverItSaysTheOhms() {
    CommandRunner.Result result = run();
    assertThat(result.out().stream().filter(line -> line.matches(".*\\d ohm.*")))
        .isNotEmpty()
        .allMatch(line -> line.contains("at most"));
  }
}
