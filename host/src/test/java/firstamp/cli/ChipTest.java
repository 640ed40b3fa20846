package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.cli.run.ThisBench;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The main job on the firmware's own binary, over a real port. Runs in real time, one test at a
 * time.
 */
@Tag("chip")
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class ChipTest extends ChipCase {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  @Test
  void shortIsCutWithinAMillisecondAndEveryConversionIsKept() throws Exception {
    Path log = folder.resolve("log.db");
    try (ChipRig chip =
        ChipRig.start(
            folder,
            waveform(SHORT_AT_1_S),
            "--noise-counts",
            "0.7",
            "--seed",
            "5",
            "--cross",
            "supply_A=1.0")) {
      CommandRunner.Result result = run(watch(chip, log, "--for", "3s"));
      assertThat(result.exitCode()).as(result.err()).isEqualTo(3);
      JsonNode summary = result.summary();
      assertThat(summary.path("tripCause").asText()).isEqualTo("running");
      assertThat(JsonSchemas.against(summary)).isEmpty();
      long crossed = -1;
      for (JsonNode event : chip.events()) {
        crossed = event.has("crossed") ? event.path("t_us").asLong() : crossed;
      }
      long off = chip.lastSwitchMicros("off");
      assertThat(off - crossed).as("from the crossing to the pin").isBetween(0L, 1000L);
      JsonNode sent = chip.end();
      assertThat(sent.path("bytesLost").asLong()).isZero();
      assertThat(summary.path("conversions").path("received").asLong())
          .isEqualTo(sent.path("conversionsSent").asLong())
          .isGreaterThan(40_000);
      assertThat(summary.path("conversions").path("lost").asLong()).isZero();
      assertThat(StoredRun.of(log).conversions).isEqualTo(sent.path("conversionsSent").asLong());
    }
    JsonNode replayed =
        CommandRunner.run(
                "replay", "last", "--headless", "--json", "--speed", "max", "--log", log.toString())
            .summary();
    JsonNode shown = CommandRunner.run("show", "last", "--json", "--log", log.toString()).summary();
    assertThat(replayed.path("alarms")).isEqualTo(shown.path("alarms"));
  }

  @Test
  void latchedTripIsRefusedUntilItsNumberIsGiven() throws Exception {
    Path log = folder.resolve("log.db");
    try (ChipRig chip = ChipRig.start(folder, waveform(SHORT_AT_1_S))) {
      assertThat(run(watch(chip, log, "--for", "2s")).exitCode()).isEqualTo(3);
      CommandRunner.Result refused = run(watch(chip, log, "--for", "2s"));
      assertThat(refused.exitCode()).isEqualTo(77);
      assertThat(refused.err()).contains("--restore 1").contains("running");
      CommandRunner.Result restored = run(watch(chip, log, "--for", "500ms", "--restore", "1"));
      assertThat(restored.exitCode()).as(restored.err()).isZero();
      assertThat(restored.summary().path("look").path("result").asText()).isEqualTo("clear");
    }
  }

  @Test
  void whatIsDifferentAndWhatWasMeasuredGoWithTheNextPowerUp() throws Exception {
    Path log = folder.resolve("log.db");
    try (ChipRig chip = ChipRig.start(folder, waveform(SHORT_AT_1_S))) {
      assertThat(run(watch(chip, log, "--for", "2s")).exitCode()).isEqualTo(3);
      List<String> half =
          watch(
              chip,
              log,
              "--for",
              "500ms",
              "--restore",
              "1",
              "--different",
              "nothing",
              "--half-volts");
      CommandRunner.Result full = run(half);
      assertThat(full.exitCode()).as("12 V where 6 V were promised: %s", full.err()).isEqualTo(3);
      assertThat(full.summary().path("look").path("result").asText()).isEqualTo("too-high");
      CommandRunner.Result restored =
          run(
              watch(
                  chip,
                  log,
                  "--for",
                  "500ms",
                  "--restore",
                  "1",
                  "--different",
                  "wire",
                  "--ohm",
                  "B1=820"));
      assertThat(restored.exitCode()).as(restored.err()).isZero();
      assertThat(restored.json("event"))
          .filteredOn(line -> line.path("kind").asText().equals("again"))
          .singleElement()
          .satisfies(
              line -> {
                assertThat(line.path("afterTrip").asInt()).isEqualTo(1);
                assertThat(line.path("different").asText()).isEqualTo("wire");
                assertThat(line.path("rail").asInt()).isEqualTo(1);
                assertThat(line.path("ohm").asDouble()).isEqualTo(820);
                assertThat(JsonSchemas.against(line)).isEmpty();
              });
    }
    assertThat(CommandRunner.run("show", "last", "--log", log.toString()).out())
        .anyMatch(line -> line.contains("Different: a wire.") && line.contains("820"));
  }

  @Test
  void secondHostOnOneProbeIsRefusedAndHarmsNothing() throws Exception {
    Path log = folder.resolve("log.db");
    try (ChipRig chip = ChipRig.start(folder, waveform(STEADY))) {
      List<String> command =
          new ArrayList<>(
              List.of(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-Dfirstamp.lockFolder=" + ThisBench.lockFolder(),
                  "-cp",
                  System.getProperty("java.class.path"),
                  "firstamp.cli.Main"));
      command.addAll(watch(chip, log, "--for", "2s"));
      Process first =
          new ProcessBuilder(command).redirectError(folder.resolve("host.err").toFile()).start();
      BufferedReader out =
          new BufferedReader(new InputStreamReader(first.getInputStream(), StandardCharsets.UTF_8));
      String started = out.readLine();
      assertThat(started).contains("started");
      CommandRunner.Result second = run(watch(chip, folder.resolve("second.db"), "--for", "1s"));
      assertThat(second.exitCode()).isEqualTo(69);
      assertThat(second.err()).contains(chip.port()).contains("in use by another Firstamp");
      String last = started;
      for (String line = out.readLine(); line != null; line = out.readLine()) {
        last = line;
      }
      assertThat(first.waitFor()).as(last).isZero();
      assertThat(MAPPER.readTree(last).path("conversions").path("lost").asLong()).isZero();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"healthy", "wire-short", "lost-head", "motor-stall"})
  void chipAndEmulatedProbeSeeTheSame(String scenario) throws Exception {
    Path csv = folder.resolve(scenario + ".csv");
    Path frontEnd = folder.resolve(scenario + ".front-end.json");
    Path larch =
        Files.writeString(
            folder.resolve("larch.json"), firstamp.emulate.Scenarios.sheetJson(scenario));
    CommandRunner.run(
        "demo",
        "--headless",
        "--speed",
        "max",
        "--scenario",
        scenario,
        "--noise-counts",
        "0",
        "--for",
        "1500ms",
        "--log",
        folder.resolve("source.db").toString(),
        "--save-waveform",
        csv.toString());
    CommandRunner.Result emulated =
        CommandRunner.run(
            "demo",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--noise-counts",
            "0",
            "--waveform",
            csv.toString(),
            "--front-end",
            frontEnd.toString(),
            "--sheet",
            larch.toString(),
            "--for",
            "1400ms",
            "--log",
            folder.resolve("emulated.db").toString());
    assertThat(emulated.out()).as(emulated.err()).isNotEmpty();
    sheet = larch;
    try (ChipRig chip =
        ChipRig.start(folder, csv, "--front-end", frontEnd.toString(), "--noise-counts", "0")) {
      CommandRunner.Result onChip = run(watch(chip, folder.resolve("chip.db"), "--for", "1400ms"));
      assertThat(onChip.exitCode()).as(onChip.err()).isEqualTo(emulated.exitCode());
    }
    StoredRun a = StoredRun.of(folder.resolve("emulated.db"));
    StoredRun b = StoredRun.of(folder.resolve("chip.db"));
    assertThat(b.decidedFromClosing)
        .as("trip on the same conversion")
        .isEqualTo(a.decidedFromClosing);
    a.sameWithinOneCount(b);
  }
}
