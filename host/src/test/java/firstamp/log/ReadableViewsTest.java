package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a person reads from the views of a log: one zero of time, physical values, nothing that was
 * not measured. On a log in which a wire shorts the set 1.2 s after closing; the probe counts 4.21
 * s up to there.
 */
final class ReadableViewsTest {
  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void bringTheSampleForward() throws Exception {
    file = folder.resolve("log.db");
    Files.copy(Path.of("src/test/resources/logs/trip-at-1200-ms.firstamp"), file);
    BenchLog.open(file, Fixture.TIME).close();
  }

  @Test
  void aTripIsTimedFromClosingAndInAmperes() throws Exception {
    assertThat(
            rows(
                "SELECT at_s, cause, channel, took_ms, value, limit_value, unit FROM trip_readable"))
        .containsExactly("1.200545|running|I|0.545|4.7698974609375|0.9857177734375|A");
    assertThat(rows("SELECT at_s, value FROM alarm_readable WHERE rule = 'over-current'"))
        .as("the same moment and value as the alarm's")
        .containsExactly("1.200545|4.7698974609375");
  }

  @Test
  void theOtherTripsHaveTheirUnits() throws Exception {
    try (Connection connection = connection()) {
      trip(connection, "i2t", "I2T", "I", 0, 0, 952_679, 8_053_063);
      assertThat(rows("SELECT round(value, 6), round(limit_value, 6), unit FROM trip_readable"))
          // One count is 12.5 A / 1024, 4 000 conversions a second: 952 679 counts^2 are 0.0355
          // A2s.
          .containsExactly("0.03549|0.3|A2s");
      trip(connection, "running", "MEAN", "J", 8004, 4004, 0, 0);
      assertThat(rows("SELECT round(value, 6), round(limit_value, 6), unit FROM trip_readable"))
          // 500 and 250 counts of 0.4 A / 1024, the zero of 4/16 count taken off.
          .containsExactly("0.195313|0.097656|A");
      trip(connection, "over-voltage", "OVER_VOLTAGE", "R1", 768, 763, 0, 0);
      assertThat(rows("SELECT value, limit_value, unit FROM trip_readable"))
          .containsExactly("10.0|9.8046875|V");
      trip(connection, "hard-short", "HARD_SHORT", null, 0, 0, 0, 0);
      assertThat(rows("SELECT value, limit_value, unit FROM trip_readable"))
          .containsExactly("10.0|10.0|A");
      trip(connection, "host-silence", "HOST_SILENCE", null, 0, 0, 0, 0);
      assertThat(rows("SELECT value, limit_value, unit FROM trip_readable"))
          .containsExactly("0.545|null|ms");
      trip(connection, "chassis-clip", "CHASSIS_CLIP", null, 0, 0, 0, 0);
      assertThat(rows("SELECT value, limit_value, unit FROM trip_readable"))
          .containsExactly("null|null|null");
    }
  }

  @Test
  void secondsCountFromClosingAndAnOpenClipHasNoVolts() throws Exception {
    assertThat(rows("SELECT probe_second, at_s FROM second_readable"))
        .startsWith("0|-4.21", "1|-3.21", "2|-2.21", "3|-1.21", "4|-0.21", "5|0.79");
    assertThat(rows("SELECT DISTINCT rail2_v, rail3_v FROM second_readable"))
        .containsExactly("null|null");
    assertThat(rows("SELECT round(rail1_v, 1) FROM second_readable WHERE probe_second = 4"))
        .isNotEqualTo(List.of("null"));
  }

  @Test
  void aClipThatComesOffLeavesNoVoltsInItsSecond() throws Exception {
    try (Connection connection = connection()) {
      Rows.update(connection, "UPDATE second SET r1_uv_highest = 19960938 WHERE second = 4");
    }
    assertThat(rows("SELECT rail1_v FROM second_readable WHERE probe_second = 4"))
        .containsExactly("null");
    assertThat(rows("SELECT rail1_v FROM second_readable WHERE probe_second = 3"))
        .isNotEqualTo(List.of("null"));
  }

  @Test
  void marksAndEventsCountFromClosing() throws Exception {
    try (Connection connection = connection()) {
      for (int k = 0; k < 2; k++) {
        Rows.update(
            connection,
            "INSERT INTO mark VALUES (1, ?, ?, ?)",
            1 + 4 * k,
            3_210_000 + 2_000_000 * k,
            "m");
      }
    }
    assertThat(rows("SELECT at_s, text FROM mark_readable")).containsExactly("-1.0|m", "1.0|m");
    assertThat(rows("SELECT at_s, kind FROM event_readable"))
        .startsWith("-2.00925|switch", "-1.8|switch")
        .contains("0.0|switch", "1.200545|trip");
  }

  @Test
  void aPowerUpThatNeverClosedCountsFromTheLook() throws Exception {
    try (Connection connection = connection()) {
      Rows.update(connection, "DELETE FROM event WHERE fields LIKE '%\"ON\"%'");
    }
    assertThat(rows("SELECT at_s, kind FROM event_readable")).contains("1.8|look");
  }

  private static void trip(
      Connection connection,
      String cause,
      String name,
      String channel,
      int value,
      int limit,
      long sum,
      long sumLimit)
      throws SQLException {
    Rows.update(
        connection,
        "UPDATE trip SET cause = ?, channel = ?, value_counts = ?, limit_counts = ?",
        cause,
        channel,
        value,
        limit);
    Rows.update(
        connection,
        "UPDATE event SET fields = json_set(fields, '$.trip.cause', ?, '$.trip.i2tSum', ?,"
            + " '$.trip.i2tLimit', ?) WHERE kind = 'trip'",
        name,
        sum,
        sumLimit);
  }

  private Connection connection() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  private List<String> rows(String sql) throws SQLException {
    List<String> rows = new ArrayList<>();
    try (Connection connection = connection();
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      while (row.next()) {
        StringBuilder text = new StringBuilder();
        for (int k = 1; k <= row.getMetaData().getColumnCount(); k++) {
          text.append(k == 1 ? "" : "|").append(row.getString(k));
        }
        rows.add(text.toString());
      }
    }
    return rows;
  }
}
