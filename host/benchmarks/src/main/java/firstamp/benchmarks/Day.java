package firstamp.benchmarks;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * A log of 24 h, its rows those of ten minutes again and again, as a writer would have made them.
 */
final class Day {
  private static final int HOURS = 24;

  private Day() {}

  /**
   * Makes it.
   *
   * @param conversions in the power-up that is repeated, a whole number of minutes
   * @return conversions in the new one
   */
  static long make(Path from, Path to, long conversions) throws Exception {
    Files.copy(from, to);
    int times = (int) (HOURS * 3600L * 16_000 / conversions);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + to);
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA synchronous = OFF");
      connection.setAutoCommit(false);
      String chunks =
          "INSERT INTO chunk (power_up, position, channel, version, count, first_index, crc32c,"
              + " data) SELECT power_up, position + ?1, channel, version, count, first_index + ?1,"
              + " crc32c, data FROM chunk WHERE position < ?2";
      String levels =
          "INSERT INTO span_level (power_up, level, position, first_bucket, buckets, version,"
              + " crc32c, data) SELECT power_up, level, position + ?1, first_bucket + ?1 / CASE"
              + " level WHEN 0 THEN 1600 WHEN 1 THEN 16000 ELSE 160000 END, buckets, version,"
              + " crc32c, data FROM span_level WHERE position < ?2";
      for (int k = 1; k < times; k++) {
        shifted(connection, chunks, k * conversions, conversions);
        shifted(connection, levels, k * conversions, conversions);
      }
      connection.commit();
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    }
    return times * conversions;
  }

  private static void shifted(Connection connection, String sql, long by, long below)
      throws SQLException {
    try (PreparedStatement insert = connection.prepareStatement(sql)) {
      insert.setLong(1, by);
      insert.setLong(2, below);
      insert.executeUpdate();
    }
  }
}
