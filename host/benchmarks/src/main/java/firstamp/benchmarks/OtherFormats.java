package firstamp.benchmarks;

import java.io.BufferedReader;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.duckdb.DuckDBAppender;
import org.duckdb.DuckDBConnection;
import org.tukaani.xz.LZMA2Options;
import org.tukaani.xz.XZInputStream;
import org.tukaani.xz.XZOutputStream;

/** The same conversions in other formats: how large, how fast written and read. */
final class OtherFormats {
  private static final int SLOTS = 32;
  private static final int PER_READING = 160;

  /**
   * A format's figures.
   *
   * @param bytes a conversion
   * @param writes conversions a second
   * @param reads conversions a second
   */
  record Figures(double bytes, double writes, double reads) {}

  private final short[] counts;
  private final Path folder;
  private final Map<String, Figures> figures = new LinkedHashMap<>();

  OtherFormats(short[] counts, Path folder) {
    this.counts = counts;
    this.folder = folder;
  }

  Map<String, Figures> run() throws Exception {
    Path packed = folder.resolve("packed.raw");
    double writes = Clock.seconds(() -> PackedRaw.write(counts, packed));
    double reads = Clock.median(3, () -> same(PackedRaw.read(packed, counts.length)));
    byte[] packedBytes = Files.readAllBytes(packed);
    note("packed raw, 10 bits a conversion", packed, writes, reads);
    xz(packedBytes, "xz -9e of packed raw");
    xz(columns(), "xz -9e of 16-bit columns, one per channel");
    csv(false);
    csv(true);
    duckDb();
    sqliteConversions();
    sqliteReadings();
    return figures;
  }

  private void note(String name, Path file, double writeSeconds, double readSeconds)
      throws Exception {
    double n = counts.length;
    figures.put(name, new Figures(Files.size(file) / n, n / writeSeconds, n / readSeconds));
    System.err.println(name + " " + figures.get(name));
    Files.delete(file);
  }

  private void same(long sum) {
    long expected = 0;
    for (short count : counts) {
      expected += count;
    }
    if (sum != expected) {
      throw new IllegalStateException("read a sum of " + sum + ", expected " + expected);
    }
  }

  private byte[] columns() {
    byte[] bytes = new byte[2 * counts.length];
    int at = 0;
    for (int channel = 0; channel < 8; channel++) {
      for (int k = 0; k < counts.length; k++) {
        if (firstamp.model.samples.SamplePlan.channelAt(k).ordinal() == channel) {
          bytes[at++] = (byte) counts[k];
          bytes[at++] = (byte) (counts[k] >> 8);
        }
      }
    }
    return bytes;
  }

  private void xz(byte[] plain, String name) throws Exception {
    Path file = folder.resolve("a.xz");
    // What "xz -9e" sets: the largest dictionary, the longest matches, the deepest search.
    LZMA2Options extreme = new LZMA2Options(9);
    extreme.setNiceLen(273);
    extreme.setDepthLimit(512);
    double writes =
        Clock.seconds(
            () -> {
              try (OutputStream out = new XZOutputStream(Files.newOutputStream(file), extreme)) {
                out.write(plain);
              }
            });
    double reads =
        Clock.seconds(
            () -> {
              try (InputStream in = new XZInputStream(Files.newInputStream(file))) {
                if (in.readAllBytes().length != plain.length) {
                  throw new IllegalStateException("xz gave another length");
                }
              }
            });
    note(name, file, writes, reads);
  }

  /** A line per plan: index of the first conversion and the 32 counts. */
  private void csv(boolean gzip) throws Exception {
    Path file = folder.resolve("a.csv");
    double writes =
        Clock.seconds(
            () -> {
              OutputStream out = Files.newOutputStream(file);
              try (OutputStream to = gzip ? new GZIPOutputStream(out, 1 << 16) : out) {
                StringBuilder text = new StringBuilder();
                for (int k = 0; k < counts.length; k += SLOTS) {
                  text.append(k);
                  for (int s = 0; s < SLOTS; s++) {
                    text.append(',').append(counts[k + s]);
                  }
                  text.append('\n');
                  if (text.length() > 1 << 16 || k + SLOTS == counts.length) {
                    to.write(text.toString().getBytes(StandardCharsets.US_ASCII));
                    text.setLength(0);
                  }
                }
              }
            });
    double reads =
        Clock.seconds(
            () -> {
              InputStream in = Files.newInputStream(file);
              long sum = 0;
              try (BufferedReader lines =
                  new BufferedReader(
                      new InputStreamReader(
                          gzip ? new GZIPInputStream(in, 1 << 16) : in,
                          StandardCharsets.US_ASCII))) {
                for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                  sum += sum(line);
                }
              }
              same(sum);
            });
    note(gzip ? "CSV + gzip, a line per plan" : "CSV, a line per plan", file, writes, reads);
  }

  private static long sum(String line) {
    long sum = 0;
    int value = 0;
    for (int k = line.indexOf(',') + 1; k < line.length(); k++) {
      char c = line.charAt(k);
      if (c == ',') {
        sum += value;
        value = 0;
      } else {
        value = 10 * value + c - '0';
      }
    }
    return sum + value;
  }

  /** DuckDB with a row per plan, so a channel per column, and Parquet with zstd written by it. */
  private void duckDb() throws Exception {
    Path file = folder.resolve("a.duckdb");
    Path parquet = folder.resolve("a.parquet");
    StringBuilder columns = new StringBuilder("plan BIGINT");
    StringBuilder sum = new StringBuilder("0");
    for (int s = 0; s < SLOTS; s++) {
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
    note("DuckDB, row per plan of 2 ms", file, writes, reads);
    double parquetReads =
        readDuckDb("jdbc:duckdb:", "SELECT " + sum + " FROM read_parquet('" + parquet + "')");
    note(
        "Parquet V2 + zstd, row per plan, written by DuckDB", parquet, parquetWrites, parquetReads);
  }

  private void appendPlans(DuckDBConnection connection) throws SQLException {
    try (DuckDBAppender appender =
        connection.createAppender(DuckDBConnection.DEFAULT_SCHEMA, "run")) {
      for (int k = 0; k + SLOTS <= counts.length; k += SLOTS) {
        appender.beginRow();
        appender.append((long) k / SLOTS);
        for (int s = 0; s < SLOTS; s++) {
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
            same(row.getLong(1));
          }
        });
  }

  private void sqliteConversions() throws Exception {
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
              same(sum);
            });
    note("SQLite, row per conversion (number, count)", file, writes, reads);
  }

  /** Sum, lowest, highest and sum of squares of eight channels: not the conversions themselves. */
  private void sqliteReadings() throws Exception {
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
              if (rows != counts.length / PER_READING) {
                throw new IllegalStateException(rows + " readings");
              }
            });
    note("SQLite, row per reading (not the conversions)", file, writes, reads);
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
