package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.emulate.box.Box;
import firstamp.emulate.box.BoxKind;
import firstamp.model.samples.Channel;
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

/** The command on an emulated box as its parts allow, and on the chip. */
class CalibrateTest {
  /** The first practice box; its bow of under a count is no part of a line. */
  private static final Box TRULY = Box.of(BoxKind.NEW, 1);

  @TempDir Path folder;

  private static double truth(Channel channel, double counts) {
    return TRULY.input(channel).scale().valueAt(counts)
        / firstamp.model.samples.Calibration.basePerUnit(channel);
  }

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
      double trueStep = (truth(channel, 1024) - truth(channel, 0)) / 1024;
      double gain = line.path("gainPercentPlusMinus").asDouble() / 100;
      assertThat(Math.abs(step / trueStep - 1)).as(channel + " gain").isLessThan(gain);
      double restsAt = -atZero / step;
      double restsTrulyAt = TRULY.input(channel).counts(0);
      double off = Math.abs(restsAt - restsTrulyAt);
      double zero = line.path("zeroCountsPlusMinus").asDouble();
      // k = 2 holds for 95 of 100: of eight, two may be outside, but none outside k = 4.
      within += off <= zero ? 1 : 0;
      assertThat(off).as(channel + " zero").isLessThan(2 * zero);
      assertThat(zero).as(channel + " zero, stated").isLessThan(0.7);
      if (channel.ordinal() <= Channel.R3.ordinal()) {
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

  /** Meter and head: a cell and two resistors; 1 % of each on ohms and 0.8 % on volts are 1.6 %. */
  @Test
  void aCellAndTwoResistorsCalibrateMeterAndHead() {
    CommandRunner.Result result =
        run(
            "",
            "calibrate",
            "--emulated",
            "--yes",
            "--json",
            "--steps",
            "zero,levels",
            "--log",
            folder.resolve("log.db").toString());
    assertThat(result.exitCode()).as(result.err()).isZero();
    for (JsonNode line : result.json("calibration")) {
      Channel channel = Channel.valueOf(line.path("channel").asText());
      double step = (line.path("atFull").asDouble() - line.path("atZero").asDouble()) / 1024;
      double gain = line.path("gainPercentPlusMinus").asDouble();
      double off = 100 * Math.abs(step / ((truth(channel, 1024) - truth(channel, 0)) / 1024) - 1);
      if (channel == Channel.H || channel == Channel.M) {
        // Limits of error: 0.8 % and twice 1 % in quadrature, rectangular, k = 2: 1.87 %; M 0.92 %.
        assertThat(gain).as("%s", channel).isBetween(channel == Channel.M ? 0.92 : 1.87, 2.1);
        assertThat(off).as("%s", channel).isLessThan(gain);
      } else {
        assertThat(gain).as("%s: not calibrated", channel).isGreaterThanOrEqualTo(5);
      }
    }
    assertThat(String.join("\n", run("", "calibrate", "--emulated", "--show").out()))
        .contains("H ", "(not calibrated)");
  }

  /**
   * The resistors are measured loose, before the cell: measured in the circuit they would read
   * wrong, and taken off it afterwards there would be nothing on the clips.
   */
  @Test
  void theResistorsAreAskedForBeforeTheCellIsConnected() {
    CommandRunner.Result no =
        run(
            "\n\n22000\n100\n\n1.533\nno\n",
            "calibrate",
            "--emulated",
            "--steps",
            "zero,levels",
            "--log",
            folder.resolve("log.db").toString());
    assertThat(no.exitCode()).as(no.err()).isZero();
    assertThat(no.err())
        .containsSubsequence("the large one", "the small one", "across a 1.5 V cell", "the cell,");
    CommandRunner.Result wrong =
        run("\n\n100\n22000\n", "calibrate", "--emulated", "--steps", "zero,levels");
    assertThat(wrong.exitCode()).isEqualTo(65);
    assertThat(wrong.err()).contains("the larger one first", "Nothing was written.");
    CommandRunner.Result alone = run("", "calibrate", "--emulated", "--yes", "--steps", "levels");
    assertThat(alone.exitCode()).isEqualTo(64);
    assertThat(alone.err()).contains("levels needs zero");
  }

  /** What a first real box measures, here on a practice box; nothing is written. */
  @Test
  void aFirstBoxIsMeasuredAndNothingIsWritten() {
    CommandRunner.Result result =
        run("", "calibrate", "--emulated", "--yes", "--first-box", "--json", "--seed", "3");
    assertThat(result.exitCode()).as(result.err()).isZero();
    for (JsonNode line : result.json()) {
      assertThat(JsonSchemas.against(line)).isEmpty();
    }
    assertThat(result.json("firstBox").get(0).path("practice").asBoolean()).isTrue();
    assertThat(result.json("firstBox").get(0).path("calibration").asText()).isEqualTo("blank");
    assertThat(result.json("firstBoxChannel")).hasSize(8);
    Box third = Box.of(BoxKind.NEW, 3);
    for (JsonNode line : result.json("firstBoxChannel")) {
      Channel channel = Channel.valueOf(line.path("channel").asText());
      assertThat(line.path("zeroCounts").asDouble())
          .as("%s", channel)
          .isCloseTo(third.input(channel).counts(0), org.assertj.core.data.Offset.offset(0.15));
      assertThat(line.path("noiseCounts").asDouble()).isBetween(0.6, 0.9);
      assertThat(line.has("gainPercentFromKept")).as("%s", channel).isTrue();
    }
    assertThat(result.json("cut").get(0).path("works").asBoolean()).isTrue();
    CommandRunner.Result text = run("", "calibrate", "--emulated", "--yes", "--first-box");
    assertThat(String.join("\n", text.out())).contains("No box has been built or measured.");
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
