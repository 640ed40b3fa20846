package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A probe reports each trip three times within 200 ms: it is shown, kept and counted once. */
class TripToldAgainTest {
  @TempDir private Path folder;

  @Test
  void oneTripIsOneLineOneAlarmAndOneRow() throws SQLException {
    String log = folder.resolve("l.db").toString();
    CommandRunner.Result live =
        CommandRunner.run(
            "demo",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--scenario",
            "wire-short",
            "--log",
            log);
    JsonNode summary = live.summary();
    assertThat(live.json("trip")).hasSize(1);
    assertThat(summary.path("alarms"))
        .extracting(alarm -> alarm.path("rule").asText())
        .containsOnlyOnce("over-current", "short");
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + log)) {
      assertThat(rows(connection, "trip")).isEqualTo(1);
      assertThat(rows(connection, "capture")).isEqualTo(1);
      assertThat(rows(connection, "event WHERE kind = 'trip'")).isEqualTo(1);
    }
    CommandRunner.Result replay =
        CommandRunner.run("replay", "last", "--headless", "--json", "--speed", "max", "--log", log);
    assertThat(replay.json("trip")).isEqualTo(live.json("trip"));
  }

  private static int rows(Connection connection, String of) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT count(*) FROM " + of)) {
      return row.getInt(1);
    }
  }
}
