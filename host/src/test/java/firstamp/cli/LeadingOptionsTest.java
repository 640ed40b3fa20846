package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Options that come before the command, or without one. */
class LeadingOptionsTest {
  @TempDir static Path folder;

  @ParameterizedTest
  @CsvSource({
    "--language de, bench --language de",
    "--language=de, bench --language=de",
    "--language, bench --language",
    "--scale 2 --theme dark, bench --scale 2 --theme dark",
    "--language de --help, bench --language de --help",
    "--log a.db list --json, list --log a.db --json",
    "--log a.db log check --all, log check --log a.db --all",
    "--language de show last, show last --language de",
    "--help, --help",
    "list --log a.db, list --log a.db",
  })
  void goBehindTheCommandOrToTheWindow(String given, String expected) {
    assertThat(LeadingOptions.behindTheCommand(given.split(" ")))
        .containsExactly(expected.split(" "));
  }

  @Test
  void areReadAsThoseOfTheWindow() {
    for (List<String> line :
        List.of(List.of("--language", "fr"), List.of("bench", "--language", "fr"))) {
      CommandRunner.Result result = CommandRunner.run(line.toArray(String[]::new));
      assertThat(result.exitCode()).isEqualTo(64);
      assertThat(result.err()).isEqualTo("firstamp: --language fr, expected en or de.\n");
    }
  }

  @Test
  void nameTheLogOfTheCommandBehind() {
    Path log = folder.resolve("one.db");
    assertThat(
            CommandRunner.run(
                    "--log",
                    log.toString(),
                    "demo",
                    "--headless",
                    "--speed",
                    "max",
                    "--for",
                    "300ms",
                    "--no-sound")
                .exitCode())
        .isZero();
    assertThat(log).matches(Files::exists);
    assertThat(CommandRunner.run("--log", log.toString(), "list", "--json").json())
        .singleElement()
        .matches(line -> line.path("powerUp").asInt() == 1);
  }

  @Test
  void anUnknownOneIsStillRefused() {
    CommandRunner.Result result = CommandRunner.run("--colour", "red");
    assertThat(result.exitCode()).isEqualTo(64);
    assertThat(result.err()).startsWith("firstamp: firstamp has no option --colour.");
  }
}
