package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.account.FigureList;
import firstamp.account.VerdictSentence;
import firstamp.analysis.figures.Evidence;
import firstamp.log.BenchLog;
import firstamp.model.TimeSource;
import firstamp.study.PowerUpStudy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Power-ups whose truth is known: netlists of ours, solved by ngspice, played to the firmware's own
 * binary in the simulated chip with converter noise, watched over a real port. Figures within 3 %,
 * levels within 0.5 dB of the netlist. In real time, one at a time.
 */
@Tag("chip")
@Timeout(value = 180, unit = TimeUnit.SECONDS)
class ChipFiguresTest {
  @TempDir private Path folder;

  @BeforeEach
  void tools() {
    ChipRig.assumeTools();
    boolean there = SpiceRun.installed();
    if (!there) {
      String text = "SKIPPED: figures of known power-ups: there is no ngspice";
      System.err.println(text);
      assertThat(Boolean.getBoolean("firstamp.requireTools")).as(text).isFalse();
    }
    Assumptions.assumeTrue(there, "ngspice");
  }

  private static String sheet(String supply, String rail, String levels) {
    return "{\"sheet\":1,\"set\":{\"name\":\"Netlist (invented)\",\"kind\":\"recorder\","
        + "\"chassis\":\"negative\"},\"supply\":{"
        + supply
        + ",\"limitA\":6,\"fuseA\":5},\"limits\":{\"inrushA\":4.5,\"inrushMs\":60,\"runningA\":1.0,"
        + "\"i2tA2s\":0.5}"
        + rail
        + levels
        + "}";
  }

  private PowerUpStudy run(Path waveform, String sheetJson, String seconds) throws Exception {
    Path sheet = Files.writeString(folder.resolve("sheet.json"), sheetJson);
    Path file = folder.resolve("log.db");
    try (ChipRig chip = ChipRig.start(folder, waveform, "--noise-counts", "0.7", "--seed", "12")) {
      CommandRunner.Result result =
          CommandRunner.run(
              "watch",
              "--port",
              chip.port(),
              "--sheet",
              sheet.toString(),
              "--accept",
              "floating-supply,above-60,tape-out",
              "--headless",
              "--json",
              "--countdown",
              "0",
              "--for",
              seconds,
              "--log",
              file.toString());
      assertThat(result.exitCode()).as(result.err()).isIn(0, 3);
      assertThat(result.summary().path("ended").asText()).isEqualTo("time");
    }
    try (BenchLog log = BenchLog.openForReading(file, TimeSource.system())) {
      return PowerUpStudy.of(log.find("last"));
    }
  }

  private static void near(PowerUpStudy study, String key, int rail, double truth) {
    FigureList.Figure figure = study.figures().find(key, rail);
    assertThat(figure).as(key).isNotNull();
    assertThat(figure.value()).as(key).isCloseTo(truth, within(0.03 * Math.abs(truth)));
  }

  private static void nearDb(PowerUpStudy study, String key, double truthV) {
    FigureList.Figure figure = study.figures().find(key, 0);
    assertThat(figure).as(key).isNotNull();
    assertThat(figure.value()).as(key).isCloseTo(20 * Math.log10(truthV), within(0.5));
  }

  private static List<String> keys(PowerUpStudy study) {
    return study.verdict().sentences().stream().map(VerdictSentence::key).toList();
  }

  /** 8 ohm beside 150 and 253 ohm into 2200 uF: one time constant of 16.2 ms. */
  @Test
  void surgeChargeAndTimeConstantOfAnRcStart() throws Exception {
    SpiceRun truth = SpiceRun.of(folder, "start.cir", 3);
    Path waveform =
        truth.waveform(
            folder.resolve("w.csv"), List.of("supply_V", "supply_A", "rail1_V"), 0, 1, 2);
    PowerUpStudy study =
        run(
            waveform,
            sheet(
                "\"kind\":\"bench\",\"nominalV\":12,\"minV\":5",
                ",\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":9.6,\"settleMs\":300}]",
                ""),
            "5s");
    near(study, "inrushPeakA", 0, truth.highest(1, 0, 0.1));
    near(study, "inrushI2tA2s", 0, truth.squares(1, 0, 0.1));
    near(study, "chargeC", 0, truth.mean(1, 0, 1));
    near(study, "steadyA", 0, truth.mean(1, 4, 5));
    near(study, "steadyV", 0, truth.mean(0, 4, 5));
    near(study, "finalV", 1, truth.mean(2, 4, 5));
    double parallel = 1 / (1 / 8.0 + 1 / 150.0 + 1 / 253.0);
    near(study, "tauMs", 1, parallel * 2200e-6 * 1000);
    near(study, "chargingMs", 0, parallel * 2200e-6 * 1000);
    near(study, "loadOhm", 0, 1 / (1 / 150.0 + 1 / 253.0));
    // 2 % after tau ln 50 = 63 ms, in readings of 10 ms.
    assertThat(study.figures().find("settledMs", 1).value()).isBetween(60.0, 80.0);
  }

  @Test
  void filterAndHumBehindAFullWaveRectifier() throws Exception {
    SpiceRun truth = SpiceRun.of(folder, "full-wave.cir", 4);
    Path waveform =
        truth.waveform(
            folder.resolve("w.csv"),
            List.of("supply_V", "supply_A", "rail1_V", "head_V", "meter_V"),
            0,
            1,
            0,
            2,
            3);
    PowerUpStudy study =
        run(
            waveform,
            sheet(
                "\"kind\":\"mains-transformer\",\"probeSits\":\"after-reservoir\",\"nominalV\":13,"
                    + "\"minV\":5",
                ",\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":13,\"settleMs\":300,"
                    + "\"capacitanceUf\":2200,\"rectifier\":\"full\"}]",
                ",\"levels\":{\"toneHz\":400,\"headOhm\":10,\"expectedDb\":40}"),
            "6s");
    near(study, "steadyA", 0, 0.1);
    near(study, "finalV", 1, truth.mean(0, 5, 6));
    near(study, "rippleVrms", 1, truth.rippleRms(0, 2, 6));
    assertThat(study.figures().find("rippleHz", 1).value()).isEqualTo(100);
    near(study, "filterUf", 1, 2200);
    nearDb(study, "headDbv", truth.tone(2, 400, 2, 6));
    nearDb(study, "meterDbv", truth.tone(3, 400, 2, 6));
    assertThat(study.figures().find("headBelowMeterDb", 0).value()).isCloseTo(40, within(0.5));
    double hum = 0;
    for (int multiple = 1; multiple <= 3; multiple++) {
      double line = truth.tone(2, multiple * 100.14, 2, 6);
      hum += line * line;
    }
    nearDb(study, "humDbv", Math.sqrt(hum));
    Evidence.InStep inStep = study.evidence().heard().inStep().get(0);
    assertThat(inStep.share()).isGreaterThan(0.9);
    assertThat(keys(study)).contains("filter.holds", "hum.in-step");
  }

  @Test
  void halfWaveRippleAt60HzIsFoundAndItsFilterMeasured() throws Exception {
    SpiceRun truth = SpiceRun.of(folder, "half-wave.cir", 2);
    Path waveform =
        truth.waveform(
            folder.resolve("w.csv"), List.of("supply_V", "supply_A", "rail1_V"), 0, 1, 0);
    PowerUpStudy study =
        run(
            waveform,
            sheet(
                "\"kind\":\"mains-transformer\",\"probeSits\":\"after-reservoir\",\"nominalV\":13,"
                    + "\"minV\":5",
                ",\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":13,\"settleMs\":300,"
                    + "\"capacitanceUf\":4700,\"rectifier\":\"half\"}]",
                ""),
            "5s");
    near(study, "steadyA", 0, 0.06);
    near(study, "rippleVrms", 1, truth.rippleRms(0, 2, 5));
    assertThat(study.figures().find("rippleHz", 1).value()).isEqualTo(60);
    near(study, "filterUf", 1, 2200);
    // 2200 of 4700 uF marked: tired.
    assertThat(keys(study)).contains("filter.dry");
  }

  @Test
  void aMotorThatStartsAndTheLevelsOfARecordAmplifier() throws Exception {
    SpiceRun truth = SpiceRun.of(folder, "motor.cir", 4);
    Path waveform =
        truth.waveform(
            folder.resolve("w.csv"),
            List.of("supply_V", "supply_A", "head_V", "meter_V"),
            0,
            1,
            2,
            3);
    PowerUpStudy study =
        run(
            waveform,
            sheet(
                "\"kind\":\"bench\",\"nominalV\":12,\"minV\":5",
                "",
                ",\"levels\":{\"toneHz\":400,\"headOhm\":10,\"expectedDb\":38}"),
            "7s");
    near(study, "steadyA", 0, truth.mean(1, 6, 7));
    near(study, "steadyV", 0, truth.mean(0, 6, 7));
    nearDb(study, "headDbv", truth.tone(2, 400, 2, 7));
    nearDb(study, "meterDbv", truth.tone(3, 400, 2, 7));
    near(study, "headUa", 0, 1e6 * truth.tone(2, 400, 2, 7) / 10);
    nearDb(study, "humDbv", Math.hypot(truth.tone(2, 50, 2, 7), truth.tone(2, 150, 2, 7)));
    assertThat(study.evidence().course().steps()).hasSize(1);
    var step = study.evidence().course().steps().get(0);
    assertThat(step.atMs()).isCloseTo(3000, within(20.0));
    assertThat(step.beforeA()).isCloseTo(truth.mean(1, 2.8, 3), within(0.003));
    assertThat(step.peakA()).isCloseTo(truth.highest(1, 3, 5), within(0.03 * step.peakA()));
    assertThat(step.afterA()).isCloseTo(truth.mean(1, 4.8, 5), within(0.005));
    assertThat(step.fellBack()).isTrue();
    // The field of 50 and 150 Hz is 67 uV rms, -83.5 dBV: under -75 dBV a hum asks for nothing.
    assertThat(keys(study)).contains("motor.started").noneMatch(key -> key.startsWith("hum."));
  }
}
