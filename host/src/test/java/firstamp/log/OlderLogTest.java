package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Logs of every schema before the newest, kept as they were written: raw repacked, raw in live
 * chunks, raw and reduced without an end, with every kind of event.
 */
final class OlderLogTest {
  @TempDir Path folder;

  private Path kept(int schema) throws IOException {
    Path file = folder.resolve("schema-" + schema + ".db");
    try (InputStream in =
        OlderLogTest.class.getResourceAsStream("/logs/schema-" + schema + ".firstamp")) {
      Files.copy(in, file);
    }
    return file;
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void isReadAsItIs(int schema) throws Exception {
    Path file = kept(schema);
    byte[] before = Files.readAllBytes(file);
    try (BenchLog log = BenchLog.openForReading(file, Fixture.TIME)) {
      assertThat(log.check()).isEmpty();
      assertThat(lengths(log)).containsExactly(20_500L, 16_500L, 10_500L, 1_040L);
    }
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void isBroughtForwardWhenItIsWritten(int schema) throws Exception {
    Path file = kept(schema);
    List<Object> before;
    try (BenchLog log = BenchLog.openForReading(file, Fixture.TIME)) {
      before = replayed(log);
    }
    Path fresh = folder.resolve("new.db");
    BenchLog.open(fresh, Fixture.TIME).close();
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      assertThat(layout(file)).isEqualTo(layout(fresh));
      assertThat(replayed(log)).isEqualTo(before);
      assertThat(log.check()).isEmpty();
    }
    assertThatCode(() -> BenchLog.open(file, Fixture.TIME).close()).doesNotThrowAnyException();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void isTakenByAnImport(int schema) throws Exception {
    Path file = kept(schema);
    try (BenchLog old = BenchLog.openForReading(file, Fixture.TIME);
        BenchLog log = BenchLog.open(folder.resolve("new.db"), Fixture.TIME)) {
      assertThat(log.importFrom(file).numbers()).hasSize(4);
      assertThat(log.check()).isEmpty();
      assertThat(replayed(log)).isEqualTo(replayed(old));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void oneThatIsStoppedOnTheWayStaysWhatItWas(int schema) throws Exception {
    Path file = kept(schema);
    try (Connection connection = LogDatabase.openForWriting(file);
        Statement statement = connection.createStatement()) {
      // The last step of the migration finds its name taken and fails.
      statement.execute("CREATE VIEW job_readable AS SELECT 1");
      assertThat(
              org.assertj.core.api.Assertions.catchThrowable(
                  () -> LogSchema.bringForward(connection, schema)))
          .isInstanceOf(SQLException.class);
    }
    assertThat(layout(file)).contains("user_version " + schema).doesNotContain("finding");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void aCopyOfItIsKeptBesideBeforeItIsBroughtForward(int schema) throws Exception {
    Path file = kept(schema);
    Path copy = folder.resolve("schema-" + schema + "-schema-" + schema + ".db");
    List<Object> before;
    try (BenchLog log = BenchLog.openForReading(file, Fixture.TIME)) {
      before = replayed(log);
    }
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      assertThat(log.keptBefore()).isEqualTo(copy);
    }
    try (BenchLog log = BenchLog.open(file, Fixture.TIME);
        BenchLog old = BenchLog.openForReading(copy, Fixture.TIME)) {
      assertThat(log.keptBefore()).as("brought forward once").isNull();
      assertThat(replayed(old)).isEqualTo(before);
      assertThat(layout(copy)).contains("user_version " + schema);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void oneThatCannotBeCopiedStaysWhatItWas(int schema) throws Exception {
    // So long that SQLite's own files have room beside it, a longer name has not.
    Path file = folder.resolve("x".repeat(247));
    Files.move(kept(schema), file);
    assertThatThrownBy(() -> BenchLog.open(file, Fixture.TIME))
        .isInstanceOf(LogException.class)
        .hasMessageContaining("x-schema-" + schema)
        .hasMessageContaining("cannot write");
    assertThat(layout(file)).contains("user_version " + schema);
  }

  /** Longest match that ends with a word; read, brought forward and imported alike. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void itsTrialsComeFromTheLabels(int schema) throws Exception {
    Path file = kept(schema);
    String sheet =
        "{\"unknownWires\":[{\"name\":\"W3\",\"places\":[\"tag 1\",{\"name\":\"tag 10\"},\"tag\"]}]}";
    String[] labels = {"W3 at tag 10, again", "W3 at tag 1", "W3 at tag 12", "about W3 at tag 1"};
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      for (int k = 0; k < labels.length; k++) {
        Rows.update(
            connection,
            "UPDATE power_up SET label = ?, effective_sheet = ? WHERE id = ?",
            labels[k],
            sheet,
            k + 1);
      }
    }
    List<String> expected =
        List.of("W3 at tag 10 by 1", "W3 at tag 1 by 1", "W3 at tag by 1", "null at null by 1");
    try (BenchLog old = BenchLog.openForReading(file, Fixture.TIME);
        BenchLog other = BenchLog.open(folder.resolve("other.db"), Fixture.TIME)) {
      assertThat(trials(old)).isEqualTo(expected);
      other.importFrom(file);
      assertThat(trials(other)).isEqualTo(expected);
      Path single = folder.resolve("single.firstamp");
      old.exportTo(List.of(1L), single);
      try (BenchLog one = BenchLog.openForReading(single, Fixture.TIME)) {
        assertThat(trials(one)).containsExactly("W3 at tag 10 by 1");
      }
    }
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      assertThat(trials(log)).isEqualTo(expected);
      PowerUpHeader header = Fixture.header(PowerUpHeader.Stream.RAW).trying("W3", "tag 1");
      log.begin(header, state -> {}).close();
      assertThat(trials(log)).endsWith("W3 at tag 1 by 4").hasSize(5);
      assertThat(log.find("last").header().trialPlace()).isEqualTo("tag 1");
      Path copy = folder.resolve("copy.db");
      log.backupTo(copy);
      try (BenchLog backup = BenchLog.openForReading(copy, Fixture.TIME);
          BenchLog third = BenchLog.open(folder.resolve("third.db"), Fixture.TIME)) {
        assertThat(trials(backup)).isEqualTo(trials(log));
        third.importFrom(copy);
        assertThat(trials(third)).isEqualTo(trials(log));
      }
    }
  }

  @org.junit.jupiter.api.Test
  void theStateOfItsJobsBecomesTheirFirstEntry() throws Exception {
    Path file = kept(2);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      Rows.update(
          connection,
          "INSERT INTO job VALUES ('Larch D2', 'on the shelf', '47 uF 25 V', 1700000000000, 'x')");
    }
    BenchLog.open(file, Fixture.TIME).close();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                "SELECT r.*, e.text, length(j.uuid), e.job_uuid = j.uuid FROM job_readable r,"
                    + " job_entry e, job j")) {
      row.next();
      List<String> columns = new ArrayList<>();
      for (int k = 1; k <= 7; k++) {
        columns.add(row.getString(k));
      }
      assertThat(columns)
          .containsExactly(
              "Larch D2", "on the shelf", "47 uF 25 V", "2023-11-14 22:13:20", "x", "36", "1");
    }
  }

  private static List<String> trials(BenchLog log) throws LogException {
    return log.list().stream()
        .map(e -> e.trialWire() + " at " + e.trialPlace() + " by " + e.rulesVersion())
        .toList();
  }

  private static List<Long> lengths(BenchLog log) throws LogException {
    List<Long> lengths = new ArrayList<>();
    for (PowerUpEntry entry : log.list()) {
      Fixture.Kept kept = new Fixture.Kept();
      log.find(Long.toString(entry.number())).replay(kept);
      lengths.add(
          kept.items.stream()
              .mapToLong(
                  item ->
                      item instanceof Fixture.Run run
                          ? run.counts.size()
                          : item instanceof firstamp.model.samples.Reading ? 1 : 0)
              .sum());
    }
    return lengths;
  }

  private static List<Object> replayed(BenchLog log) throws LogException {
    Fixture.Kept kept = new Fixture.Kept();
    for (PowerUpEntry entry : log.list()) {
      log.find(Long.toString(entry.number())).replay(kept);
    }
    return kept.items;
  }

  private static List<String> layout(Path file) throws SQLException {
    List<String> layout = new ArrayList<>();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      try (ResultSet row =
          statement.executeQuery(
              "SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name")) {
        while (row.next()) {
          layout.add(row.getString(1));
          layout.add(
              row.getString(2).replaceAll("\\s+", " ").replace(" ,", ",").replace(" )", ")"));
        }
      }
      layout.add("user_version " + LogDatabase.number(connection, "PRAGMA user_version"));
    }
    return layout;
  }
}
