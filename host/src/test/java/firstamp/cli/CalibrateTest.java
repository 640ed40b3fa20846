package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.emulate.CalibrationDemo;
import firstamp.model.Channel;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command on the emulated probe whose inputs are off by known shares, and on the chip. */
class CalibrateTest {
  @TempDir Path folder;

  private CommandRunner.Result run(String typed, String... arguments) {
    InputStream before = System.in;
    try {
      System.setIn(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)));
      return CommandRunner.run(arguments);
    } finally {
      System.setIn(before);
    }
  }

  @Test
  void findsTheTrueScalesWithinTheUncertaintyThatItStates() throws Exception {
    Path log = folder.resolve("log.db");
    CommandRunner.Result result =
        run("", "calibrate", "--emulated", "--yes", "--json", "--log", log.toString());

    assertThat(result.exitCode()).as(result.err()).isZero();
    assertThat(result.json("calibration")).hasSize(8);
    int within = 0;
    for (JsonNode line : result.json("calibration")) {
      assertThat(JsonSchemas.against(line)).isEmpty();
      Channel channel = Channel.valueOf(line.path("channel").asText());
      double atZero = line.path("atZero").asDouble();
      double step = (line.path("atFull").asDouble() - atZero) / 1024;
      double trueStep =
          (CalibrationDemo.truth(channel, 1024) - CalibrationDemo.truth(channel, 0)) / 1024;
      double gain = line.path("gainPercentPlusMinus").asDouble() / 100;
      assertThat(Math.abs(step / trueStep - 1)).as(channel + " gain").isLessThan(gain);
      double restsAt = -atZero / step;
      double restsTrulyAt = -CalibrationDemo.truth(channel, 0) / trueStep;
      double off = Math.abs(restsAt - restsTrulyAt);
      double zero = line.path("zeroCountsPlusMinus").asDouble();
      // k = 2 holds for 95 of 100: of eight, two may be outside, but none outside k = 4.
      within += off <= zero ? 1 : 0;
      assertThat(off).as(channel + " zero").isLessThan(2 * zero);
      assertThat(zero).as(channel + " zero, stated").isLessThan(0.7);
      if (channel.ordinal() <= Channel.R3.ordinal()) {
        // The true error is 0.6 % at least: nominal values would fail here.
        assertThat(Math.abs(step / trueStep - 1)).as(channel + " better").isLessThan(0.004);
        assertThat(gain).as(channel + " stated").isBetween(0.008, 0.03);
      }
    }
    assertThat(within).as("zeros within k = 2").isGreaterThanOrEqualTo(6);
    try (Connection base = DriverManager.getConnection("jdbc:sqlite:" + log);
        ResultSet row = base.createStatement().executeQuery("SELECT fields FROM calibration")) {
      assertThat(row.next()).isTrue();
      assertThat(row.getString(1)).contains("VALID");
      assertThat(row.next()).isFalse();
    }
  }

  @Test
  void asksStepByStepAndWritesNothingWithoutAYes() {
    CommandRunner.Result no =
        run(
            "\n\nabc\n9.137\n\n0.32\n\n0.905\nno\n",
            "calibrate",
            "--emulated",
            "--log",
            folder.resolve("log.db").toString());

    assertThat(no.exitCode()).as(no.err()).isZero();
    assertThat(no.err())
        .contains("Step 1, zero", "Step 2, volts", "Step 3, current", "\"abc\" is no number")
        .contains("Nothing was written.");
    assertThat(folder.resolve("log.db")).doesNotExist();
    assertThat(String.join("\n", no.out())).contains("quantisation", "meter", "k = 2");
  }

  @Test
  void pointsOutOfOrderAreRefused() {
    // R1 really stands at 5 V; the person typed the battery's volts wrong way round.
    CommandRunner.Result bad =
        run("\n\n-9.137\n", "calibrate", "--emulated", "--steps", "zero,volts");

    assertThat(bad.exitCode()).isEqualTo(65);
    assertThat(bad.err()).contains("not monotonic").contains("Nothing was written");
  }

  @Test
  void inputThatEndsWritesNothing() {
    CommandRunner.Result ended = run("\n", "calibrate", "--emulated");

    assertThat(ended.exitCode()).isEqualTo(66);
    assertThat(ended.err()).contains("Nothing was written");
  }

  @Test
  void triesTheCut() {
    CommandRunner.Result text = run("", "calibrate", "--emulated", "--try-the-cut", "--yes");
    assertThat(text.exitCode()).as(text.err()).isZero();
    assertThat(text.out()).hasSize(1);
    assertThat(text.out().get(0))
        .matches("It switched 1\\.2 A off in 0\\.[0-8] ms\\. Not tried: the 10 A path\\.");

    JsonNode cut =
        run("", "calibrate", "--emulated", "--try-the-cut", "--yes", "--json").json("cut").get(0);
    assertThat(JsonSchemas.against(cut)).isEmpty();
    // Third conversion of I: 0.5 ms after closing, and 45 us until the pin.
    assertThat(cut.path("afterMs").asDouble()).isBetween(0.5, 0.83);
  }

  @Test
  void usageIsChecked() {
    assertThat(run("", "calibrate").exitCode()).isEqualTo(64);
    assertThat(
            run("", "calibrate", "--emulated", "--yes", "--meter-volts-percent", "90").exitCode())
        .isEqualTo(64);
    assertThat(run("", "calibrate", "--emulated", "--steps", "warm").exitCode()).isEqualTo(64);
    assertThat(run("", "calibrate", "--port", "/dev/none", "--yes").exitCode()).isEqualTo(64);
    assertThat(run("", "calibrate", "--emulated", "--show").out()).hasSize(9);
  }

  /** The firmware itself: a tenth of a second of 1.2 A is behind the switch. */
  @org.junit.jupiter.api.Tag("chip")
  @Test
  void triesTheCutAndKeepsACalibrationInTheChip() throws Exception {
    ChipRig.assumeTools();
    Path waveform =
        Files.writeString(
            folder.resolve("resistor.csv"), "t_s,supply_V,supply_A\n0,12,1.2\n60,12,1.2\n");
    Path front =
        Files.writeString(
            folder.resolve("front.json"),
            "{\"look\":{\"supplyV\":12,\"loadOhm\":10,\"loadUf\":0.1},\"decayMs\":5}");
    try (ChipRig chip = ChipRig.start(folder, waveform, "--front-end", front.toString())) {
      CommandRunner.Result cut =
          run("", "calibrate", "--port", chip.port(), "--try-the-cut", "--yes");
      assertThat(cut.exitCode()).as(cut.err()).isZero();
      assertThat(cut.out().get(0))
          .contains("switched 1.2 A off")
          .contains("Not tried: the 10 A path.");

      String log = folder.resolve("log.db").toString();
      CommandRunner.Result zero =
          run("\nyes\n", "calibrate", "--port", chip.port(), "--steps", "zero", "--log", log);
      assertThat(zero.exitCode()).as(zero.err()).isZero();
      CommandRunner.Result shown = run("", "calibrate", "--port", chip.port(), "--show", "--json");
      assertThat(shown.json("calibration")).hasSize(8);
      assertThat(shown.json("calibration").get(0).path("kind").asText()).isEqualTo("valid");
    }
  }
}
