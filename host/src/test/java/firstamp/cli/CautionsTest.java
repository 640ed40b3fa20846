package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.log.BenchLog;
import firstamp.model.TimeSource;
import firstamp.run.questions.Cautions;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CautionsTest {
  @TempDir Path folder;

  private String set(String scenario, Path file) {
    JsonNode started =
        CommandRunner.run(
                "demo",
                "--headless",
                "--json",
                "--speed",
                "max",
                "--for",
                "1s",
                "--scenario",
                scenario,
                "--log",
                file.toString())
            .json("started")
            .get(0);
    assertThat(started.path("powerUp").asInt()).isPositive();
    return "Larch D2 dictation unit (invented)";
  }

  private static String question(Path file, String set) throws Exception {
    BenchLog log = BenchLog.open(file, TimeSource.system());
    try {
      return Cautions.question(log, set);
    } finally {
      log.close();
    }
  }

  @Test
  void showsTheWholePageOncePerSet() throws Exception {
    Path file = folder.resolve("log.db");
    assertThat(question(file, "Larch D2 dictation unit (invented)")).isEqualTo("cautions");
    String set = set("healthy", file);
    assertThat(question(file, set)).isEqualTo("cautions-short");
    assertThat(question(file, "another set")).isEqualTo("cautions");
  }

  @Test
  void aSetThatWasNeverOnIsNotKnown() throws Exception {
    Path file = folder.resolve("log.db");
    assertThat(question(file, set("look-short", file))).isEqualTo("cautions");
  }
}
