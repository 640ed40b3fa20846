package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.cli.output.ExitCode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What {@code watch --restore} asks before the set is switched on again: common practice at the
 * bench, no source. The port is none, so what is let through ends with 69 and what is refused with
 * 77.
 */
class SwitchOnAgainTest {
  private static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Set that trips (invented)\"},"
          + "\"supply\":{\"nominalV\":12,\"fuseA\":1},"
          + "\"limits\":{\"inrushA\":4.5,\"inrushMs\":60,\"runningA\":1.0,\"i2tA2s\":0.5},"
          + "\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":8.2}]}";
  private static final String SHORT =
      "t_s,supply_V,supply_A,rail1_V\r\n0,12,0.1,8.2\r\n0.3,12,0.1,8.2\r\n0.300001,6,2,5\r\n2,6,2,5\r\n";
  private static final String GOOD =
      "t_s,supply_V,supply_A,rail1_V\r\n0,12,0.1,8.2\r\n2,12,0.1,8.2\r\n";

  @TempDir private Path folder;
  private Path sheet;
  private Path log;

  @BeforeEach
  void files() throws IOException {
    sheet = Files.writeString(folder.resolve("set.json"), SHEET);
    log = folder.resolve("log.db");
  }

  private void powerUp(String waveform, int exitCode) throws IOException {
    Path file = Files.writeString(folder.resolve("w.csv"), waveform);
    CommandRunner.Result result =
        CommandRunner.run(
            "demo",
            "--headless",
            "--speed",
            "max",
            "--no-sound",
            "--waveform",
            file.toString(),
            "--sheet",
            sheet.toString(),
            "--log",
            log.toString());
    assertThat(result.exitCode()).as(result.err()).isEqualTo(exitCode);
  }

  private void trip() throws IOException {
    powerUp(SHORT, ExitCode.FINDING);
  }

  private CommandRunner.Result again(String... more) {
    List<String> line =
        new ArrayList<>(
            List.of(
                "watch",
                "--port",
                "/dev/null",
                "--sheet",
                sheet.toString(),
                "--headless",
                "--for",
                "1s",
                "--accept",
                "floating-supply,above-60",
                "--log",
                log.toString(),
                "--restore",
                "1"));
    line.addAll(List.of(more));
    return CommandRunner.run(line.toArray(String[]::new));
  }

  private void refused(CommandRunner.Result result, String... words) {
    assertThat(result.exitCode()).as(result.err()).isEqualTo(ExitCode.REFUSED);
    assertThat(result.err()).contains(words);
    assertThat(result.out()).isEmpty();
  }

  private void letThrough(CommandRunner.Result result) {
    assertThat(result.exitCode()).as(result.err()).isEqualTo(ExitCode.NO_PORT);
  }

  @Test
  void aFirstTripGoesOnWithItsNumberAloneAndSaysWhatWasNotSaid() throws Exception {
    trip();
    CommandRunner.Result bare = again();
    letThrough(bare);
    assertThat(bare.err()).contains("what is different since number 1 was not said");
    CommandRunner.Result said = again("--different", "wire");
    letThrough(said);
    assertThat(said.err()).doesNotContain("was not said");
  }

  @Test
  void nothingDifferentWantsOhmsOrHalfTheVolts() throws Exception {
    trip();
    refused(
        again("--different", "nothing"),
        "nothing is different",
        "--ohm OHMS",
        "--half-volts",
        "discharge");
    letThrough(again("--different", "nothing", "--ohm", "820"));
    letThrough(again("--different", "nothing", "--ohm", "b1=820"));
    letThrough(again("--different", "nothing", "--half-volts"));
  }

  @Test
  void theSameCauseTwiceWantsThemWhateverIsDifferent() throws Exception {
    trip();
    trip();
    refused(again(), "2 times in a row for the same cause (running)", "--different", "--ohm");
    refused(again("--different", "wire"), "2 times in a row", "--half-volts");
    letThrough(again("--different", "wire", "--ohm", "1=820"));
    powerUp(GOOD, ExitCode.NORMAL);
    letThrough(again());
  }

  @Test
  void theThirdTimeItRestsWhateverWasMeasured() throws Exception {
    trip();
    trip();
    trip();
    refused(
        again("--different", "part", "--ohm", "820"),
        "3 times in a row for the same cause (running)",
        "It rests until");
  }

  @Test
  void ohmsThatWouldDrawMoreThanTheRunningLimitForbid() throws Exception {
    trip();
    // 8.2 V / 4.1 ohm = 2 A, the running limit is 1 A.
    refused(again("--different", "part", "--ohm", "B1=4.1"), "would draw 2 A", "Find that short");
    refused(again("--different", "part", "--ohm", "0"), "any current");
  }

  @Test
  void whatDoesNotFitTogetherIsUsage() throws Exception {
    trip();
    for (String[] line :
        new String[][] {
          {"--different", "wirre"},
          {"--ohm", "820"},
          {"--half-volts"},
          {"--different", "wire", "--ohm", "B7=820"},
          {"--different", "wire", "--ohm", "much"},
          {"--different", "wire", "--ohm", "-3"},
          {"--different", "wire", "--half-volts", "--steps"}
        }) {
      CommandRunner.Result result = again(line);
      assertThat(result.exitCode())
          .as("%s: %s", List.of(line), result.err())
          .isEqualTo(ExitCode.USAGE);
    }
    assertThat(again("--different", "wirre").err()).contains("Did you mean 'wire'?");
  }
}
