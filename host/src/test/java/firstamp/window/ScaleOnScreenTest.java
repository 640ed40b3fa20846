package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The program on screens of its own, at every kind of size: either OFF lies wholly on the screen
 * while a set is on, or the size is refused and the largest that fits is named.
 */
@NeedsDisplay
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class ScaleOnScreenTest {
  private static final Pattern OFF = Pattern.compile("OFF ready (\\d+) (\\d+) (\\d+) (\\d+)");
  private static final int USAGE = 64;

  @TempDir private Path folder;
  private Process screen;
  private Process program;

  @AfterEach
  void end() {
    if (program != null) {
      program.destroyForcibly();
    }
    if (screen != null) {
      screen.destroy();
    }
  }

  /** A screen of that size; its name. */
  private String screen(int width, int height) throws IOException {
    screen =
        new ProcessBuilder("Xvfb", "-displayfd", "1", "-screen", "0", width + "x" + height + "x24")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    return ":" + screen.inputReader().readLine();
  }

  private String run(int width, int height, String scale) throws Exception {
    return run(screen(width, height), "--scale", scale);
  }

  /** On the screen of this name, or on none. */
  private String run(String display, String option, String value) throws Exception {
    Path log = folder.resolve("demo.db");
    ProcessBuilder builder =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Djava.io.tmpdir=" + folder,
                "-cp",
                System.getProperty("java.class.path"),
                OffOnScreen.class.getName(),
                log.toString(),
                "demo",
                "--no-sound",
                "--log",
                log.toString(),
                option,
                value)
            .redirectErrorStream(true);
    if (display == null) {
      builder.environment().remove("DISPLAY");
    } else {
      builder.environment().put("DISPLAY", display);
    }
    builder.environment().put("XDG_DATA_HOME", folder.toString());
    builder.environment().put("XDG_CONFIG_HOME", folder.toString());
    program = builder.start();
    String said =
        new String(program.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    program.waitFor();
    return said;
  }

  @ParameterizedTest
  @CsvSource({"1280, 800, 1", "1024, 600, 1", "1920, 1080, 2"})
  void offLiesOnTheScreenWhileASetIsOn(int width, int height, String scale) throws Exception {
    String said = run(width, height, scale);
    Matcher off = OFF.matcher(said);
    assertThat(off.find()).as(said).isTrue();
    int[] side = new int[4];
    for (int at = 0; at < 4; at++) {
      side[at] = Integer.parseInt(off.group(at + 1));
    }
    int least = 90 * Integer.parseInt(scale);
    assertThat(side[0]).isNotNegative();
    assertThat(side[1]).isNotNegative();
    assertThat(side[2]).isLessThanOrEqualTo(width).isGreaterThanOrEqualTo(side[0] + least);
    assertThat(side[3]).isLessThanOrEqualTo(height).isGreaterThanOrEqualTo(side[1] + least);
  }

  @ParameterizedTest
  @CsvSource({
    "1280, 800, 1.25, 1",
    "1280, 800, 1.5, 1",
    "1280, 800, 2, 1",
    "1280, 800, 0, 1",
    "1280, 800, 9, 1",
    "1024, 600, 1.25, 1",
    "1024, 600, 1.5, 1",
    "1024, 600, 2, 1",
    "1024, 600, -1, 1",
    "1024, 600, 9, 1",
    "1920, 1080, 3, 2"
  })
  void aSizeThatDoesNotFitIsRefusedWithTheLargestThatDoes(
      int width, int height, String scale, String largest) throws Exception {
    String said = run(width, height, scale);
    assertThat(program.exitValue()).as(said).isEqualTo(USAGE);
    assertThat(said)
        .contains("--scale " + scale)
        .contains("The largest that does is " + largest + ".")
        .doesNotContain("OFF");
    assertThat(folder.resolve("demo.db")).as("nothing is begun, nothing is left").doesNotExist();
  }

  @ParameterizedTest
  @CsvSource({
    "true, --theme, purple, expected light",
    "true, --language, fr, expected en or de",
    "false, --theme, dark, No screen to open the window on"
  })
  void aWindowThatCannotBeHadLeavesNoLogBehind(
      boolean onScreen, String option, String value, String why) throws Exception {
    String said = run(onScreen ? screen(1280, 800) : null, option, value);
    assertThat(program.exitValue()).as(said).isEqualTo(USAGE);
    assertThat(said).contains(why);
    assertThat(folder.resolve("demo.db")).doesNotExist();
  }

  @ParameterizedTest
  @CsvSource({"1280, 800", "1024, 600"})
  void aWordIsNoSize(int width, int height) throws Exception {
    String said = run(width, height, "big");
    assertThat(program.exitValue()).as(said).isEqualTo(USAGE);
    assertThat(said).contains("--scale", "big");
  }
}
