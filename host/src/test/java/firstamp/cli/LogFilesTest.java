package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Commands on files of power-ups: export, import, log. */
class LogFilesTest {
  private static final Path SAMPLE = Path.of("..", "sample-logs", "wire-short.firstamp");

  @TempDir Path folder;

  private Path log;

  @BeforeEach
  void importASample() {
    log = folder.resolve("bench.db");
    CommandRunner.Result imported = run("import", SAMPLE.toString(), "--log", log.toString());
    assertThat(imported.exitCode()).as(imported.err()).isZero();
  }

  private static CommandRunner.Result run(String... arguments) {
    return CommandRunner.run(arguments);
  }

  private CommandRunner.Result export(Path to, String... more) {
    List<String> arguments =
        new ArrayList<>(List.of("export", "last", "--to", to.toString(), "--log", log.toString()));
    arguments.addAll(List.of(more));
    return run(arguments.toArray(String[]::new));
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void anExportIsALogOfOnePowerUpThatSaysTheSame() throws IOException {
    Path file = folder.resolve("one.firstamp");
    assertThat(export(file).exitCode()).isZero();
    assertThat(run("show", "last", "--json", "--log", file.toString()).out())
        .isEqualTo(run("show", "last", "--json", "--log", SAMPLE.toString()).out());
    assertThat(names()).containsExactly("bench.db", "one.firstamp");
  }

  @Test
  void importingTwiceAddsNothing() {
    CommandRunner.Result again = run("import", SAMPLE.toString(), "--log", log.toString());
    assertThat(again.exitCode()).isZero();
    assertThat(again.out()).singleElement().asString().contains("in the log already");
    assertThat(run("list", "--json", "--log", log.toString()).out()).hasSize(1);
  }

  @Test
  void csvFollowsRfc4180AndItsTimeCountsFromSwitchingOn() throws IOException {
    Path file = folder.resolve("one.csv");
    assertThat(export(file, "--format", "csv").exitCode()).isZero();
    String text = Files.readString(file);
    // RFC 4180, section 2: every line ends with CR LF, all lines have the same number of fields.
    assertThat(text.replace("\r\n", "")).doesNotContain("\r").doesNotContain("\n");
    List<String> lines = List.of(text.split("\r\n"));
    assertThat(lines.get(0)).startsWith("t_s,supply_V,supply_A,rail1_V,");
    int fields = lines.get(0).split(",").length;
    double before = Double.NEGATIVE_INFINITY;
    double settledA = Double.NaN;
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      assertThat(cells).hasSize(fields);
      double seconds = Double.parseDouble(cells[0]);
      assertThat(seconds).isGreaterThan(before);
      before = seconds;
      if (seconds < 0) {
        assertThat(Double.parseDouble(cells[2])).as("open, t %s", seconds).isLessThan(0.05);
      }
      if (Math.abs(seconds - 1.0) < 0.0051) {
        settledA = Double.parseDouble(cells[2]);
      }
    }
    JsonNode stored = run("show", "last", "--json", "--log", log.toString()).summary();
    assertThat(settledA)
        .as("a reading one second after switching on against the stored mean")
        .isCloseTo(
            stored.path("supply").path("steadyA").asDouble(),
            org.assertj.core.api.Assertions.within(0.03));
  }

  @Test
  void noCellOfTheCsvCanBeTakenForAFormula() throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + log);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("UPDATE power_up SET label = '=1+1', set_name = '@SUM(A1)'");
    }
    Path file = folder.resolve("one.csv");
    assertThat(export(file, "--format", "csv").exitCode()).isZero();
    List<String> lines = Files.readAllLines(file);
    for (String line : lines.subList(1, lines.size())) {
      for (String cell : line.split(",")) {
        // Empty: nothing was measured there.
        assertThat(cell).matches("|-?[0-9]+(\\.[0-9]+)?(e-[0-9]+)?");
      }
    }
  }

  @Test
  void jsonHoldsTheSummaryAsStoredAndAsManyReadingsAsTheCsv() throws IOException {
    Path json = folder.resolve("one.json");
    Path csv = folder.resolve("one.csv");
    assertThat(export(json, "--format", "json").exitCode()).isZero();
    assertThat(export(csv, "--format", "csv").exitCode()).isZero();
    JsonNode all = new ObjectMapper().readTree(json.toFile());
    assertThat(all.path("summary"))
        .isEqualTo(run("show", "last", "--json", "--log", log.toString()).summary());
    assertThat(all.path("readings")).hasSize(Files.readAllLines(csv).size() - 1);
    assertThat(all.path("alarmTransitions")).isNotEmpty();
    assertThat(JsonSchemas.againstPowerUp(all)).isEmpty();
    all.path("alarmTransitions").forEach(a -> assertThat(JsonSchemas.against(a)).isEmpty());
    ((com.fasterxml.jackson.databind.node.ObjectNode) all).put("readings", 3);
    assertThat(JsonSchemas.againstPowerUp(all)).isNotEmpty();
  }

  @Test
  void filesAndLinksThatAreThereStayUnlessForced() throws IOException {
    Path there = folder.resolve("there.firstamp");
    Files.writeString(there, "mine");
    Path link = folder.resolve("link.firstamp");
    Files.createSymbolicLink(link, there);
    for (Path target : List.of(there, link)) {
      CommandRunner.Result refused = export(target);
      assertThat(refused.exitCode()).isEqualTo(73);
      assertThat(refused.err()).contains(target.toString()).contains("--force");
    }
    assertThat(export(link, "--force").exitCode()).isZero();
    assertThat(there).hasContent("mine");
    assertThat(Files.isSymbolicLink(link)).isFalse();
    assertThat(names()).containsExactly("bench.db", "link.firstamp", "there.firstamp");
  }

  @Test
  void checkFindsNothingInAGoodLogAndNamesWhatIsWrongInABadOne() throws Exception {
    assertThat(run("log", "check", "--log", log.toString()).exitCode()).isZero();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + log);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("UPDATE chunk SET crc32c = crc32c + 1 WHERE id = 3");
    }
    CommandRunner.Result result = run("log", "check", "--log", log.toString());
    assertThat(result.exitCode()).isEqualTo(65);
    assertThat(result.out()).anyMatch(line -> line.contains("CRC-32C"));
    assertThat(result.err()).contains(log.toString());
  }

  @Test
  void aDamagedFileIsNotImported() throws Exception {
    Path bad = folder.resolve("bad.firstamp");
    Files.copy(SAMPLE, bad);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + bad);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("UPDATE power_up SET uuid = '00000000-0000-4000-8000-000000000000'");
      statement.executeUpdate("UPDATE chunk SET crc32c = crc32c + 1 WHERE id = 3");
    }
    CommandRunner.Result result = run("import", bad.toString(), "--log", log.toString());
    assertThat(result.exitCode()).isEqualTo(65);
    assertThat(run("list", "--json", "--log", log.toString()).out()).hasSize(1);
  }

  @Test
  void backupIsAWholeLog() {
    Path copy = folder.resolve("copy.db");
    assertThat(run("log", "backup", "--to", copy.toString(), "--log", log.toString()).exitCode())
        .isZero();
    assertThat(run("log", "check", "--log", copy.toString()).exitCode()).isZero();
    assertThat(run("show", "last", "--json", "--log", copy.toString()).out())
        .isEqualTo(run("show", "last", "--json", "--log", log.toString()).out());
  }

  @Test
  void deleteAsksAndGivesTheRoomBack() throws IOException {
    long before = Files.size(log);
    assertThat(delete("no\n").exitCode()).isEqualTo(77);
    assertThat(delete("").exitCode()).as("end of input is no yes").isEqualTo(77);
    assertThat(run("list", "--json", "--log", log.toString()).out()).hasSize(1);
    assertThat(delete("yes\n").exitCode()).isZero();
    assertThat(run("list", "--json", "--log", log.toString()).out()).isEmpty();
    assertThat(Files.size(log)).isLessThan(before);
  }

  private CommandRunner.Result delete(String answer) {
    InputStream before = System.in;
    try {
      System.setIn(new ByteArrayInputStream(answer.getBytes(StandardCharsets.UTF_8)));
      return run("log", "delete", "last", "--log", log.toString());
    } finally {
      System.setIn(before);
    }
  }

  @Test
  void missingThingsEndWith66() {
    Path none = folder.resolve("none.firstamp");
    assertThat(run("import", none.toString(), "--log", log.toString()).exitCode()).isEqualTo(66);
    assertThat(run("export", "99", "--to", none.toString(), "--log", log.toString()).exitCode())
        .isEqualTo(66);
    assertThat(run("log", "check", "--log", none.toString()).exitCode()).isEqualTo(66);
    assertThat(run("log").exitCode()).isEqualTo(64);
  }
}
