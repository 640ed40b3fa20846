package firstamp.benchmarks;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;

/** The conversions in column stores: DuckDB and Parquet. */
final class ColumnFormats {
  private final OtherFormats to;
  private final short[] counts;
  private final Path folder;

  ColumnFormats(OtherFormats to, short[] counts, Path folder) {
    this.to = to;
    this.counts = counts;
    this.folder = folder;
  }

  /** DuckDB with a row per plan, so a channel per column, and Parquet with zstd written by it. */
  void run() throws Exception {
    Path file = folder.resolve("a.duckdb");
    Path parquet = folder.resolve("a.parquet");
    StringBuilder columns = new StringBuilder("plan BIGINT");
    StringBuilder sum = new StringBuilder("0");
    for (int s = 0; s < OtherFormats.SLOTS; s++) {
      columns.append(", c").append(s).append(" SMALLINT");
      sum.append(" + sum(c").append(s).append(')');
    }
    double writes =
        Clock.seconds(
            () -> {
              try (Connection connection = DriverManager.getConnection("jdbc:duckdb:" + file);
                  Statement statement = connection.createStatement()) {
                statement.execute("CREATE TABLE run (" + columns + ")");
                appendPlans((DuckDBConnection) connection);
                statement.execute("CHECKPOINT");
              }
            });
    double reads = readDuckDb("jdbc:duckdb:" + file, "SELECT " + sum + " FROM run");
    double parquetWrites = writes;
    try (Connection connection = DriverManager.getConnection("jdbc:duckdb:" + file);
        Statement statement = connection.createStatement()) {
      parquetWrites =
          Clock.seconds(
              () ->
                  statement.execute(
                      "COPY run TO '"
                          + parquet
                          + "' (FORMAT parquet, COMPRESSION zstd, PARQUET_VERSION v2)"));
    }
    to.note("DuckDB, row per plan of 2 ms", file, writes, reads);
    double parquetReads =
        readDuckDb("jdbc:duckdb:", "SELECT " + sum + " FROM read_parquet('" + parquet + "')");
    to.note(
        "Parquet V2 + zstd, row per plan, written by DuckDB", parquet, parquetWrites, parquetReads);
  }

  private void appendPlans(DuckDBConnection connection) throws SQLException {
    try (DuckDBAppender appender =
        connection.createAppender(DuckDBConnection.DEFAULT_SCHEMA, "run")) {
      for (int k = 0; k + OtherFormats.SLOTS <= counts.length; k += OtherFormats.SLOTS) {
        appender.beginRow();
        appender.append((long) k / OtherFormats.SLOTS);
        for (int s = 0; s < OtherFormats.SLOTS; s++) {
          appender.append(counts[k + s]);
        }
        appender.endRow();
      }
    }
  }

  private double readDuckDb(String url, String query) throws Exception {
    return Clock.median(
        3,
        () -> {
          try (Connection connection = DriverManager.getConnection(url);
              Statement statement = connection.createStatement();
              ResultSet row = statement.executeQuery(query)) {
            row.next();
            to.same(row.getLong(1));
          }
        });
  }
}
