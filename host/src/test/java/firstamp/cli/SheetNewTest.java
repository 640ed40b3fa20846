package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.cli.output.ExitCode;
import firstamp.sheet.SheetReader;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SheetNewTest {
  @TempDir private Path folder;

  private static CommandRunner.Result typing(String lines, String... arguments) {
    synchronized (CommandRunner.class) {
      InputStream before = System.in;
      try {
        System.setIn(new ByteArrayInputStream(lines.getBytes(StandardCharsets.UTF_8)));
        return CommandRunner.run(arguments);
      } finally {
        System.setIn(before);
      }
    }
  }

  @Test
  void asksFiveQuestionsAndWrites() throws Exception {
    Path file = folder.resolve("set.json");
    CommandRunner.Result result =
        typing(
            "pocket radio\n9\n\npositive\nbatery\nbattery\n?\n", "sheet", "new", file.toString());
    assertThat(result.exitCode()).as(result.err()).isZero();
    assertThat(result.err()).contains("An answer is needed").contains("Did you mean \"battery\"?");
    assertThat(SheetReader.read(file).sheet().set().name()).isEqualTo("pocket radio");
    assertThat(String.join("\n", result.out()))
        .contains("limits.runningA 90 mA")
        .contains("No unattended running");
    assertThat(CommandRunner.run("sheet", "check", file.toString()).exitCode()).isZero();
  }

  @Test
  void optionsAreNotAskedForAndQuestionMarkIsTaken() throws Exception {
    Path file = folder.resolve("set.json");
    String[] arguments = {
      "sheet",
      "new",
      file.toString(),
      "--what",
      "box",
      "--volts",
      "?",
      "--chassis",
      "?",
      "--feed",
      "bench",
      "--fuse",
      "?",
      "--supply-limit",
      "0.5"
    };
    CommandRunner.Result result = typing("", arguments);
    assertThat(result.exitCode()).as(result.err()).isZero();
    assertThat(SheetReader.read(file).sheet().supply().limitA()).isEqualTo(0.5);
    assertThat(String.join("\n", result.out())).contains("watched as a 6 V set");

    CommandRunner.Result again = typing("", arguments);
    assertThat(again.exitCode()).isEqualTo(ExitCode.CANNOT_MAKE);
    assertThat(again.err()).contains("left as it is").contains("--force");
    arguments[4] = "other box";
    assertThat(typing("", arguments).exitCode()).isEqualTo(ExitCode.CANNOT_MAKE);
    assertThat(SheetReader.read(file).sheet().set().name()).isEqualTo("box");
    String[] forced = java.util.Arrays.copyOf(arguments, arguments.length + 1);
    forced[arguments.length] = "--force";
    assertThat(typing("", forced).exitCode()).isZero();
    assertThat(SheetReader.read(file).sheet().set().name()).isEqualTo("other box");
  }

  @Test
  void endOfInputWritesNothing() {
    Path file = folder.resolve("set.json");
    CommandRunner.Result result = typing("box\n12\n", "sheet", "new", file.toString());
    assertThat(result.exitCode()).isEqualTo(ExitCode.NO_INPUT);
    assertThat(result.err()).contains("Nothing was written");
    assertThat(Files.exists(file)).isFalse();
  }

  @Test
  void aBadOptionIsNamed() {
    CommandRunner.Result result =
        typing("", "sheet", "new", folder.resolve("s.json").toString(), "--volts", "230");
    assertThat(result.exitCode()).isEqualTo(ExitCode.USAGE);
    assertThat(result.err()).contains("--volts").contains("60 V");
  }

  @Test
  void learnsFromAGoodPowerUpAndOnlyFromThat() throws Exception {
    Path log = folder.resolve("bench.db");
    Path sheet = folder.resolve("set.json");
    Files.writeString(
        sheet,
        "{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":12,\"limitA\":1.5},\"limits\":{\"inrushA\":4.5,\"inrushMs\":60,\"runningA\":1},\"rails\":[{\"input\":1}]}");
    assertThat(demo(sheet, log, "healthy").exitCode()).isZero();
    Path fuller = folder.resolve("fuller.json");
    CommandRunner.Result learnt =
        CommandRunner.run(
            "sheet",
            "learn",
            sheet.toString(),
            "--from",
            "last",
            "--to",
            fuller.toString(),
            "--log",
            log.toString());
    assertThat(learnt.exitCode()).as(learnt.err()).isZero();
    var seen = SheetReader.read(fuller).sheet();
    assertThat(seen.rail(1).nominalV()).isBetween(8.0, 8.4);
    assertThat(seen.rail(1).overV()).isBetween(9.6, 10.1);
    assertThat(seen.supply().idleA()).isBetween(0.05, 0.2);
    assertThat(seen.supply().capacitanceUf()).isBetween(1500.0, 5000.0);

    assertThat(demo(sheet, log, "wire-short").exitCode()).isEqualTo(ExitCode.FINDING);
    CommandRunner.Result refused =
        CommandRunner.run(
            "sheet", "learn", sheet.toString(), "--from", "last", "--log", log.toString());
    assertThat(refused.exitCode()).isEqualTo(ExitCode.BAD_DATA);
    assertThat(refused.err()).contains("learns only from");
  }

  private static CommandRunner.Result demo(Path sheet, Path log, String scenario) {
    return CommandRunner.run(
        "demo",
        "--headless",
        "--speed",
        "max",
        "--scenario",
        scenario,
        "--sheet",
        sheet.toString(),
        "--for",
        "4s",
        "--log",
        log.toString());
  }
}
