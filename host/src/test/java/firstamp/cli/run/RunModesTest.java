package firstamp.cli.run;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.cli.CommandRunner;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Speech;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class RunModesTest {
  @TempDir private Path folder;

  private CommandRunner.Result demo(String... more) {
    java.util.List<String> arguments =
        new java.util.ArrayList<>(
            java.util.List.of(
                "demo",
                "--headless",
                "--json",
                "--speed",
                "max",
                "--log",
                folder.resolve("bench.db").toString()));
    arguments.addAll(java.util.List.of(more));
    return CommandRunner.run(arguments.toArray(String[]::new));
  }

  @Test
  void withoutSoundMeansWithoutSound() {
    assertThat(CommandLine.populateCommand(new RunOptions(Speech.ENGLISH), "--no-sound").sound)
        .isFalse();
    assertThat(CommandLine.populateCommand(new RunOptions(Speech.ENGLISH), "--sound").sound)
        .isTrue();
    assertThat(CommandLine.populateCommand(new RunOptions(Speech.ENGLISH)).sound).isNull();
  }

  @Test
  void soakEndsWithItsTimeAndIsReplayedToTheSame() {
    CommandRunner.Result result = demo("--soak", "2s");
    assertThat(result.exitCode()).as(result.err()).isZero();
    assertThat(result.summary().path("ended").asText()).isEqualTo("time");
    assertThat(result.summary().path("onMs").asDouble()).isBetween(2000.0, 2500.0);
    assertThat(result.json("mark")).isEmpty();
    assertThat(result.json("event"))
        .extracting(e -> e.path("mode").asText())
        .contains("soak", "soak-over");
    CommandRunner.Result replay =
        CommandRunner.run(
            "replay",
            "last",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--log",
            folder.resolve("bench.db").toString());
    assertThat(replay.summary().path("onMs")).isEqualTo(result.summary().path("onMs"));
  }

  @Test
  void soakWithoutAFuseOnTheSheetIsRefused() throws Exception {
    Path sheet = folder.resolve("s.json");
    Files.writeString(
        sheet,
        "{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":12},\"limits\":{\"runningA\":1}}");
    CommandRunner.Result result = demo("--soak", "2s", "--sheet", sheet.toString());
    assertThat(result.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(result.err()).contains("fuse");
  }

  /** The rule is looked at before the window opens: this needs no display. */
  @Test
  void soakInTheWindowIsRefusedByTheSameRule() throws Exception {
    Path sheet = folder.resolve("s.json");
    Files.writeString(sheet, "{\"sheet\":1,\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":12}}");
    CommandRunner.Result result =
        CommandRunner.run(
            "demo",
            "--no-sound",
            "--soak",
            "1s",
            "--sheet",
            sheet.toString(),
            "--log",
            folder.resolve("bench.db").toString());
    assertThat(result.exitCode()).as(result.err()).isEqualTo(77);
    assertThat(result.err()).contains("fuse");
  }

  @Test
  void wordsOnStandardInputAreTaken() {
    synchronized (CommandRunner.class) {
      InputStream before = System.in;
      try {
        System.setIn(
            new ByteArrayInputStream("hands in\nnonsense\n".getBytes(StandardCharsets.UTF_8)));
        CommandRunner.Result result = demo("--keys", "--for", "9s");
        assertThat(result.exitCode()).as(result.err()).isZero();
        assertThat(result.json("event"))
            .extracting(e -> e.path("mode").asText())
            .containsExactly("hands-in");
        assertThat(result.err()).contains("nonsense").contains("Switches off above");
      } finally {
        System.setIn(before);
      }
    }
  }
}
