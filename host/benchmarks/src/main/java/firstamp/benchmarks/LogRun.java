package firstamp.benchmarks;

import firstamp.log.BenchLog;
import firstamp.log.PowerUpReader;
import firstamp.log.stream.StreamSink;
import firstamp.model.ProbeEvent;
import firstamp.model.TimeSource;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;

/** One power-up through the whole chain into a log, read, drawn and repacked. */
final class LogRun {
  private static final int COLUMNS = 1000;
  private static final int PER_SECOND = 16_000;
  private static final int READS = 5;
  private static final int PICTURES = 41;

  private final Map<String, Double> figures = new LinkedHashMap<>();
  private final short[] counts;
  private final Path file;
  private final long emptyBytes;

  LogRun(short[] counts, Path folder, String name) throws Exception {
    this.counts = counts;
    this.file = folder.resolve(name + ".db");
    Path empty = folder.resolve("empty.db");
    BenchLog.open(empty, TimeSource.system()).close();
    this.emptyBytes = used(empty);
    Files.delete(empty);
  }

  Path file() {
    return file;
  }

  /** Everything; the log stays where it is. */
  Map<String, Double> run(byte[] line) throws Exception {
    try (BenchLog log = BenchLog.open(file, TimeSource.system())) {
      WholeChain.Spent spent = WholeChain.run(log, line);
      figures.put("chainWallPerSecond", counts.length / spent.wallSeconds());
      figures.put("alarmTransitions", (double) spent.alarms());
      tier(log, "live");
      double seconds = Clock.seconds(() -> log.repack(() -> true));
      figures.put("repackPerSecond", counts.length / seconds);
    }
    try (BenchLog log = BenchLog.openForReading(file, TimeSource.system())) {
      tier(log, "repacked");
    }
    return figures;
  }

  private void tier(BenchLog log, String tier) throws Exception {
    figures.put(tier + "Bytes", (used(file) - emptyBytes) / (double) counts.length);
    figures.put(tier + "QuietChannelsBytes", quietChannels());
    PowerUpReader power = log.find("1");
    compare(power);
    figures.put(tier + "ReadPerSecond", counts.length / Clock.median(READS, () -> sum(power)));
    pictures(file, power, tier, counts.length);
  }

  /** Overview on a log opened again, and zooms on an open one, of so many conversions. */
  void pictures(Path file, PowerUpReader power, String what, long length) throws Exception {
    double overview =
        Clock.median(
            PICTURES,
            () -> {
              try (BenchLog log = BenchLog.openForReading(file, TimeSource.system())) {
                log.find("1").overview(0, length, COLUMNS);
              }
            });
    figures.put(what + "OverviewMillis", 1000 * overview);
    SplittableRandom random = new SplittableRandom(7);
    double zoom =
        Clock.median(
            5 * PICTURES,
            () -> {
              long from = random.nextLong(length - 2 * PER_SECOND);
              power.overview(from, from + 2 * PER_SECOND, COLUMNS);
            });
    figures.put(what + "ZoomMillis", 1000 * zoom);
  }

  Map<String, Double> figures() {
    return figures;
  }

  private void compare(PowerUpReader power) throws Exception {
    long[] next = {0};
    power.replay(
        new Sink() {
          @Override
          public void conversions(ConversionBlock block) {
            int from = (int) block.firstIndex();
            int to = from + block.counts().length;
            if (from != next[0]
                || !java.util.Arrays.equals(
                    block.counts(), 0, block.counts().length, counts, from, to)) {
              throw new IllegalStateException("the log gives other conversions from " + from);
            }
            next[0] = to;
          }
        });
    if (next[0] != counts.length) {
      throw new IllegalStateException("the log gives " + next[0] + " of " + counts.length);
    }
  }

  private static long sum(PowerUpReader power) throws Exception {
    long[] sum = {0};
    power.replay(
        new Sink() {
          @Override
          public void conversions(ConversionBlock block) {
            sum[0] += PackedRaw.sum(block);
          }
        });
    return sum[0];
  }

  private abstract static class Sink implements StreamSink {
    @Override
    public void reading(Reading reading) {
      throw new IllegalStateException("readings in a raw stream");
    }

    @Override
    public void event(ProbeEvent event) {
      // Nothing to add up.
    }
  }

  /** Bytes of the pages in use, the WAL written back. */
  private static long used(Path file) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
      return (long)
          (number(statement, "PRAGMA page_size")
              * (number(statement, "PRAGMA page_count")
                  - number(statement, "PRAGMA freelist_count")));
    }
  }

  /** Chunks of V, R2 and R3 with 60 bytes for each row, and three eighths of the pyramid. */
  private double quietChannels() throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      return number(
          statement,
          "SELECT (sum(length(data) + 60.0) + 0.375 *"
              + " (SELECT sum(length(data) + 60.0) FROM span_level)) / sum(count)"
              + " FROM chunk WHERE channel IN (2, 4, 5)");
    }
  }

  private static double number(Statement statement, String sql) throws SQLException {
    try (ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getDouble(1);
    }
  }
}
