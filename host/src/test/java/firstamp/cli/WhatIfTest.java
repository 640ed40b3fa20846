package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.bench.ReplayBench;
import firstamp.bench.Snapshot;
import firstamp.log.BenchLog;
import firstamp.log.PowerUpReader;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.TimeSource;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import java.nio.file.Files;
import java.nio.file.Path;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** "What would other limits have done?": the window and the command line give one answer. */
@Timeout(60)
class WhatIfTest {
  private static final Path LOGS = Path.of("..", "sample-logs");

  /** A reading of I, J, V or a rail starts every 62.5 us. */
  private static final Offset<Double> ONE_CONVERSION_MS = Offset.offset(0.0625);

  @TempDir Path folder;

  private CommandRunner.Result commandLine(String log, Path sheet) {
    return CommandRunner.run(
        "replay",
        "last",
        "--headless",
        "--json",
        "--speed",
        "max",
        "--log",
        LOGS.resolve(log + ".firstamp").toString(),
        "--sheet",
        sheet.toString());
  }

  /** What the window shows for the same question, times from closing. */
  private record Window(Snapshot.WhatIf whatIf, double closedMs) {
    Double offMs() {
      return whatIf.firstOffMs() == null ? null : whatIf.firstOffMs() - closedMs;
    }
  }

  private static JobSheet read(String json) throws Exception {
    return Defaults.fill(SheetReader.parse("sheet", json).sheet());
  }

  private static Window window(String log, Path sheet) throws Exception {
    BenchLog open = BenchLog.openForReading(LOGS.resolve(log + ".firstamp"), TimeSource.system());
    PowerUpReader reader = open.find("last");
    try (ReplayBench bench =
        new ReplayBench(
            reader,
            read(reader.header().effectiveSheetJson()),
            TimeSource.system(),
            Double.POSITIVE_INFINITY,
            log)) {
      bench.start();
      bench.whatIf(read(Files.readString(sheet)));
      Snapshot now = bench.snapshot();
      while (now.beside().whatIf() == null || now.beside().whatIf().share() < 1) {
        Thread.onSpinWait();
        now = bench.snapshot();
      }
      bench.seek(1e9);
      return new Window(now.beside().whatIf(), bench.snapshot().times().closedMs());
    } finally {
      open.close();
    }
  }

  private Path other(String log, String key, String value) throws Exception {
    String json = Files.readString(LOGS.resolve(log + ".json"));
    // Nominal volts below what was there, so that a limit between them may be written.
    String changed =
        json.replace("\"nominalV\":12,\"minV\":11", "\"nominalV\":11,\"minV\":10")
            .replace("\"nominalV\":8.2", "\"nominalV\":7")
            .replaceFirst("\"" + key + "\":[0-9.]+", "\"" + key + "\":" + value);
    return Files.writeString(folder.resolve(key + ".json"), changed);
  }

  /** Moments of the log as it was recorded; volts are not judged in the first millisecond. */
  @ParameterizedTest
  @CsvSource({
    "i2tA2s, 0.002, i2t, over-current, 1.045",
    "maxV, 11.5, over-voltage, over-voltage, 12.232",
    "overV, 7.5, over-voltage, over-voltage, 147.482",
  })
  void aTighterLimitSwitchesOffAtTheSameMomentInWindowAndCommandLine(
      String key, String value, String cause, String rule, double atMs) throws Exception {
    Path sheet = other("healthy", key, value);
    CommandRunner.Result result = commandLine("healthy", sheet);
    JsonNode summary = result.summary();
    assertThat(summary.path("tripCause").asText()).isEqualTo(cause);
    assertThat(summary.path("outcome").asText()).isEqualTo("tripped");
    assertThat(summary.path("tripAtMs").asDouble()).isEqualTo(atMs, ONE_CONVERSION_MS);
    assertThat(summary.path("onMs").asDouble()).isEqualTo(summary.path("tripAtMs").asDouble());

    Window window = window("healthy", sheet);
    assertThat(window.offMs()).isCloseTo(summary.path("tripAtMs").asDouble(), Offset.offset(1e-6));
    // A trip raises an alarm, in both.
    assertThat(window.whatIf().alarms()).extracting(Alarm::rule).contains(rule);
    assertThat(window.whatIf().alarms())
        .extracting(Alarm::rule)
        .containsExactlyInAnyOrderElementsOf(summary.path("alarms").findValuesAsText("rule"));
    assertThat(window.whatIf().firstOff().english())
        .isEqualTo(alarm(summary, rule).path("text").asText());
    JsonNode row = beside(result, rule);
    assertThat(row.path("tripCause").asText()).isEqualTo(cause);
    assertThat(row.path("wouldAtMs").asDouble()).isEqualTo(summary.path("tripAtMs").asDouble());
    assertThat(row.has("thenAtMs")).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"wire-short", "motor-stall"})
  void theRecordsOwnSheetComesToTheTripThatWas(String log) throws Exception {
    Path sheet = LOGS.resolve(log + ".json");
    JsonNode stored =
        CommandRunner.run(
                "show", "last", "--json", "--log", LOGS.resolve(log + ".firstamp").toString())
            .summary();
    JsonNode would = commandLine(log, sheet).summary();
    assertThat(would.path("tripCause")).isEqualTo(stored.path("tripCause"));
    assertThat(would.path("tripAtMs").asDouble())
        .isEqualTo(stored.path("tripAtMs").asDouble(), ONE_CONVERSION_MS);
    assertThat(window(log, sheet).offMs())
        .isCloseTo(would.path("tripAtMs").asDouble(), Offset.offset(1e-6));
  }

  /** The set drew more than the limit then; the wider one lets it pass, and the record ends. */
  @Test
  void aWiderLimitLetsThePowerUpGoOnToTheEndOfTheRecord() throws Exception {
    Path wider =
        Files.writeString(
            folder.resolve("wider.json"),
            Files.readString(LOGS.resolve("wire-short.json"))
                .replaceFirst("\"inrushA\":[0-9.]+", "\"inrushA\":12")
                .replaceFirst("\"runningA\":[0-9.]+", "\"runningA\":12")
                .replaceFirst("\"i2tA2s\":[0-9.]+", "\"i2tA2s\":70"));
    CommandRunner.Result result = commandLine("wire-short", wider);
    assertThat(result.summary().has("tripCause")).isFalse();
    assertThat(result.summary().path("ended").asText()).isEqualTo("input-end");
    assertThat(beside(result, "over-current").has("wouldAtMs")).isFalse();
    Window window = window("wire-short", wider);
    assertThat(window.offMs()).isNull();
    assertThat(window.whatIf().alarms()).isEmpty();
  }

  @Test
  void limitsThatTheProbeCannotWatchAreRefusedInBoth() throws Exception {
    Path sheet = other("healthy", "runningA", "0.001");
    CommandRunner.Result result = commandLine("healthy", sheet);
    assertThat(result.exitCode()).isEqualTo(65);
    Window window = window("healthy", sheet);
    assertThat(window.whatIf().judged()).isEqualTo(Snapshot.Judged.NOTHING);
    assertThat(String.join("\n", result.err())).contains(window.whatIf().firstOff().english());
  }

  private static JsonNode alarm(JsonNode summary, String rule) {
    for (JsonNode alarm : summary.path("alarms")) {
      if (alarm.path("rule").asText().equals(rule)) {
        return alarm;
      }
    }
    throw new AssertionError("no alarm " + rule + " in " + summary);
  }

  private static JsonNode beside(CommandRunner.Result result, String rule) {
    return result.json("beside").stream()
        .filter(line -> line.path("rule").asText().equals(rule))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no " + rule + " in " + result.out()));
  }
}
