package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

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
  @ValueSource(ints = {1})
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
  @ValueSource(ints = {1})
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
  @ValueSource(ints = {1})
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
  @ValueSource(ints = {1})
  void oneThatIsStoppedOnTheWayStaysWhatItWas(int schema) throws Exception {
    Path file = kept(schema);
    try (Connection connection = LogDatabase.openForWriting(file);
        Statement statement = connection.createStatement()) {
      // The last step of the migration finds its name taken and fails.
      statement.execute("CREATE VIEW mark_readable AS SELECT 1");
      assertThat(
              org.assertj.core.api.Assertions.catchThrowable(
                  () -> LogSchema.bringForward(connection, schema)))
          .isInstanceOf(SQLException.class);
    }
    assertThat(layout(file)).contains("user_version " + schema).doesNotContain("trip_readable");
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
                          : item instanceof firstamp.model.Reading ? 1 : 0)
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
          layout.add(row.getString(2).replaceAll("\\s+", " "));
        }
      }
      layout.add("user_version " + LogDatabase.number(connection, "PRAGMA user_version"));
    }
    return layout;
  }
}
