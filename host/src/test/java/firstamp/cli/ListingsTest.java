package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.log.BenchLog;
import firstamp.model.TimeSource;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Lists, exports, and runs that end by themselves. */
class ListingsTest {
  /**
   * Reads a CSV file with the reader of another language: rows with an empty field, and the rest.
   */
  private static final String READER =
      "import csv,sys\n"
          + "rows=list(csv.DictReader(open(sys.argv[1],newline='')))\n"
          + "print(len(rows),len(rows[0]),"
          + "*['/'.join(sorted({'' if r[c]=='' else 'number' for r in rows})) for c in"
          + " ('rail1_V','rail2_V','rail3_V')],"
          + "max(float(v) for r in rows for v in r.values() if v!=''))\n";

  @TempDir Path folder;

  private Path log() {
    return folder.resolve("bench.db");
  }

  private CommandRunner.Result demo(String... more) {
    List<String> line =
        new ArrayList<>(
            List.of(
                "demo", "--headless", "--speed", "max", "--no-sound", "--log", log().toString()));
    line.addAll(List.of(more));
    return CommandRunner.run(line.toArray(String[]::new));
  }

  private CommandRunner.Result list(String... more) {
    List<String> line = new ArrayList<>(List.of("list", "--log", log().toString()));
    line.addAll(List.of(more));
    return CommandRunner.run(line.toArray(String[]::new));
  }

  @Test
  void aListHasAHeadAndOneWordForEachState() throws Exception {
    demo("--for", "1s", "--label", "first");
    demo("--for", "2s", "--scenario", "wire-short");
    demo("--for", "1s");
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + log());
        Statement statement = connection.createStatement()) {
      statement.execute("DELETE FROM event WHERE power_up = 3 AND kind = 'ended'");
      statement.execute(
          "UPDATE power_up SET state = 'open', outcome = NULL, ended = NULL, summary = NULL,"
              + " ended_epoch_ms = NULL WHERE id = 3");
    }
    List<String> lines = list().out();
    assertThat(lines).hasSize(4);
    assertThat(lines.get(0)).matches(" +# +switched on +on for +result +size +set, label");
    assertThat(lines.get(1))
        .matches(" +1 .* 1\\.0[0-9]* s +no fault seen +[0-9.]+ kB  .*\"first\"");
    assertThat(lines.get(2)).matches(" +2 .* 1\\.2[0-9]* s +tripped +[0-9.]+ kB .*");
    assertThat(lines.get(3)).matches(" +3 .* +stopped early +[0-9.]+ kB .*");
    assertThat(String.join("\n", lines)).doesNotContain("normal").doesNotContain("interrupted");
    List<JsonNode> json = list("--json").json("powerUp");
    assertThat(json.get(0).path("onMs").asDouble()).isBetween(1000.0, 1040.0);
    assertThat(json.get(0).path("bytes").asLong()).isGreaterThan(1000);
    assertThat(json.get(2).path("outcome").asText()).isEqualTo("interrupted");
    for (JsonNode line : json) {
      assertThat(JsonSchemas.against(line)).isEmpty();
    }
    CommandRunner.Result shown = CommandRunner.run("show", "3", "--log", log().toString());
    assertThat(shown.out().get(0)).contains("stopped early").doesNotContain("interrupted");
  }

  @Test
  void anEmptyLogHasNoPowerUpsYet() throws Exception {
    BenchLog.open(log(), TimeSource.system()).close();
    CommandRunner.Result empty = list();
    assertThat(empty.exitCode()).isZero();
    assertThat(empty.out()).isEmpty();
    assertThat(empty.err()).contains("no power-ups yet");
  }

  @Test
  @Timeout(value = 60, unit = TimeUnit.SECONDS)
  void aDemoWithoutATimeEnds() throws Exception {
    JsonNode usual = demo("--json").summary();
    assertThat(usual.path("ended").asText()).isEqualTo("time");
    assertThat(usual.path("onMs").asDouble()).isBetween(10_000.0, 10_040.0);
    // This one says that it needs 30 s.
    assertThat(demo("--json", "--scenario", "creep").summary().path("onMs").asDouble())
        .isGreaterThan(10_040.0);
    Path wave = folder.resolve("wave.csv");
    Files.writeString(wave, "t_s,supply_V,supply_A\r\n0,12,0.1\r\n1.5,12,0.1\r\n");
    Path sheet = folder.resolve("sheet.json");
    Files.writeString(
        sheet,
        "{\"sheet\":1,\"set\":{\"name\":\"A wave\"},\"supply\":{\"nominalV\":12,\"fuseA\":1}}");
    JsonNode ended =
        demo("--json", "--waveform", wave.toString(), "--sheet", sheet.toString()).summary();
    assertThat(ended.path("ended").asText()).isEqualTo("input-end");
    assertThat(ended.path("onMs").asDouble()).isBetween(1500.0 * 0.995, 1540.0);
  }

  @Test
  void withoutACountdownNoSecondsAreCounted() {
    assertThat(demo("--for", "300ms", "--countdown", "0").err())
        .contains("switching on")
        .doesNotContain("switching on in");
    assertThat(demo("--for", "300ms", "--countdown", "3").err()).contains("switching on in 3 s");
  }

  @Test
  void aSheetWithStepsHintsAtThem() {
    CommandRunner.Result without = demo("--for", "1s", "--scenario", "bring-up");
    assertThat(without.err()).contains("--steps goes through them");
  }

  @Test
  void openClipsAreEmptyFieldsAndAbsentValues() throws Exception {
    demo("--for", "1s");
    Path csv = folder.resolve("one.csv");
    CommandRunner.Result made =
        CommandRunner.run(
            "export", "last", "--format", "csv", "--to", csv.toString(), "--log", log().toString());
    assertThat(made.exitCode()).as(made.err()).isZero();
    assertThat(Files.readString(csv)).doesNotContain("19.96");
    CommandRunner.Result json =
        CommandRunner.run(
            "export", "last", "--format", "json", "--to", "-", "--log", log().toString());
    JsonNode whole = new ObjectMapper().readTree(String.join("\n", json.out()));
    assertThat(json.exitCode()).isZero();
    int rail1 = columns(whole).indexOf("rail1_V");
    for (JsonNode row : whole.path("readings")) {
      assertThat(row.get(rail1).isNumber()).isTrue();
      assertThat(row.get(rail1 + 1).isNull()).isTrue();
      assertThat(row.get(rail1 + 2).isNull()).isTrue();
    }
    // An independent reader: the csv module of Python, which follows RFC 4180.
    assertThat(readByPython(csv)).matches("[0-9]+ 11 number   [0-9.]+\\s*").endsWith("\n");
  }

  private String readByPython(Path csv) throws Exception {
    Process python;
    Path out = folder.resolve("python.txt");
    try {
      python =
          new ProcessBuilder("python3", "-c", READER, csv.toString())
              .redirectErrorStream(true)
              .redirectOutput(out.toFile())
              .start();
    } catch (java.io.IOException missing) {
      System.err.println("SKIPPED: the CSV in another language's reader, python3 is missing");
      Assumptions.abort("python3 is missing");
      return "";
    }
    assertThat(python.waitFor()).as(Files.readString(out)).isZero();
    return Files.readString(out, StandardCharsets.UTF_8);
  }

  private static List<String> columns(JsonNode whole) {
    List<String> columns = new ArrayList<>();
    whole.path("columns").forEach(column -> columns.add(column.asText()));
    return columns;
  }

  @Test
  void exportAndReportPrintWhereTheFileIsAMinus() {
    demo("--for", "300ms");
    CommandRunner.Result csv =
        CommandRunner.run(
            "export", "last", "--format", "csv", "--to", "-", "--log", log().toString());
    assertThat(csv.exitCode()).as(csv.err()).isZero();
    assertThat(csv.out().get(0)).startsWith("t_s,supply_V,");
    CommandRunner.Result page =
        CommandRunner.run("report", "last", "--to", "-", "--log", log().toString());
    assertThat(page.exitCode()).as(page.err()).isZero();
    assertThat(page.out().get(0)).startsWith("<!DOCTYPE html>");
    assertThat(Path.of("-")).doesNotExist();
  }
}
