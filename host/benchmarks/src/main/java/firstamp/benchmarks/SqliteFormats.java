package firstamp.benchmarks;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** The conversions as plain rows of SQLite. */
final class SqliteFormats {
  private final OtherFormats to;
  private final short[] counts;
  private final Path folder;

  SqliteFormats(OtherFormats to, short[] counts, Path folder) {
    this.to = to;
    this.counts = counts;
    this.folder = folder;
  }

  void conversions() throws Exception {
    Path file = folder.resolve("rows.db");
    double writes =
        Clock.seconds(
            () -> {
              try (Connection connection = sqlite(file, "n INTEGER PRIMARY KEY, count INTEGER");
                  PreparedStatement insert =
                      connection.prepareStatement("INSERT INTO run VALUES (?, ?)")) {
                for (int k = 0; k < counts.length; k++) {
                  insert.setInt(1, k);
                  insert.setInt(2, counts[k]);
                  insert.addBatch();
                  if (k % 16_000 == 15_999) {
                    insert.executeBatch();
                  }
                }
                insert.executeBatch();
                connection.commit();
              }
            });
    double reads =
        Clock.seconds(
            () -> {
              long sum = 0;
              try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                  Statement statement = connection.createStatement();
                  ResultSet row = statement.executeQuery("SELECT count FROM run ORDER BY n")) {
                while (row.next()) {
                  sum += row.getInt(1);
                }
              }
              to.same(sum);
            });
    to.note("SQLite, row per conversion (number, count)", file, writes, reads);
  }

  /** Sum, lowest, highest and sum of squares of eight channels: not the conversions themselves. */
  void readings() throws Exception {
    Path file = folder.resolve("readings.db");
    StringBuilder columns = new StringBuilder("n INTEGER PRIMARY KEY");
    StringBuilder marks = new StringBuilder("?");
    for (int c = 0; c < 32; c++) {
      columns.append(", c").append(c).append(" INTEGER");
      marks.append(",?");
    }
    double writes =
        Clock.seconds(
            () -> {
              try (Connection connection = sqlite(file, columns.toString());
                  PreparedStatement insert =
                      connection.prepareStatement("INSERT INTO run VALUES (" + marks + ")")) {
                firstamp.model.samples.ReadingReducer reducer =
                    new firstamp.model.samples.ReadingReducer(reading -> insert(insert, reading));
                reducer.accept(0, counts, 0, counts.length);
                insert.executeBatch();
                connection.commit();
              }
            });
    double reads =
        Clock.seconds(
            () -> {
              long rows = 0;
              try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                  Statement statement = connection.createStatement();
                  ResultSet row = statement.executeQuery("SELECT * FROM run ORDER BY n")) {
                while (row.next()) {
                  for (int c = 1; c <= 33; c++) {
                    row.getLong(c);
                  }
                  rows++;
                }
              }
              if (rows != counts.length / OtherFormats.PER_READING) {
                throw new IllegalStateException(rows + " readings");
              }
            });
    to.note("SQLite, row per reading (not the conversions)", file, writes, reads);
  }

  private static void insert(PreparedStatement insert, firstamp.model.samples.Reading reading) {
    try {
      insert.setLong(1, reading.firstIndex());
      int column = 2;
      for (firstamp.model.samples.Channel channel : firstamp.model.samples.Channel.values()) {
        insert.setInt(column++, reading.sum(channel));
        insert.setInt(column++, reading.lowest(channel));
        insert.setInt(column++, reading.highest(channel));
        insert.setLong(column++, reading.sumOfSquares(channel));
      }
      insert.addBatch();
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Connection sqlite(Path file, String columns) throws SQLException {
    Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA journal_mode = OFF");
      statement.execute("PRAGMA synchronous = OFF");
      statement.execute("CREATE TABLE run (" + columns + ")");
    }
    connection.setAutoCommit(false);
    return connection;
  }
}
