package firstamp.log;

import firstamp.log.stream.StreamSink;
import firstamp.model.ProbeEvent;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Opens, checks, reads and imports logs that were damaged: by other bytes anywhere in the file, by
 * a lost end, and by other values in single columns with a CRC-32C that matches again. Runs in a
 * process of its own, whose memory the parent limits and looks at (see {@link LogMutationTest}).
 */
final class DamagedLogs {
  private static final long HANG_NANOS = 20_000_000_000L;

  /** Every table with rows, and the columns that say what to read and how much. */
  private static final String[][] TABLES = {
    {"chunk", "position", "channel", "version", "count", "first_index", "crc32c", "data"},
    {"chunk", "data", "data", "data", "count", "version"},
    {"tail", "position", "version", "count", "crc32c", "data"},
    {"span_level", "level", "position", "first_bucket", "buckets", "version", "crc32c", "data"},
    {"stretch", "position", "first_index"},
    {"event", "number", "kind", "place", "micros", "fields"},
    {"power_up", "stream", "state", "hello", "summary", "set_name", "sheet", "uuid", "calibration"},
    {"calibration", "fields"},
    {"alarm", "transition", "number", "state", "value", "folded_under"},
    {"capture", "counts", "missing"},
    {"second", "place", "second", "conversions", "i_ua"},
    {"gap", "place", "first_index", "conversions"},
  };

  private final Path folder;
  private final Random random;
  private final AtomicLong begun = new AtomicLong();
  private final Map<String, Integer> defects = new TreeMap<>();
  private byte[] good;
  private byte[] empty;
  private int refused;
  private int read;

  private DamagedLogs(Path folder, long seed) {
    this.folder = folder;
    this.random = new Random(seed);
  }

  /**
   * Prints how many were refused and read, and the most memory the process ever took.
   *
   * @param args folder to work in, number of files, seed
   */
  public static void main(String[] args) throws Exception {
    new DamagedLogs(Path.of(args[0]), Long.parseLong(args[2])).run(Integer.parseInt(args[1]));
  }

  private void run(int files) throws Exception {
    good = good();
    Path fresh = folder.resolve("empty.db");
    BenchLog.open(fresh, Fixture.TIME).close();
    empty = Files.readAllBytes(fresh);
    watchForHangs();
    for (int n = 0; n < files; n++) {
      Path file = folder.resolve("damaged" + n + ".db");
      if (n % 2 == 0) {
        Files.write(file, otherBytes());
      } else {
        Files.write(file, good);
        otherValue(file);
      }
      begun.set(System.nanoTime());
      try {
        examine(file);
      } catch (RuntimeException | Error | SQLException defect) {
        StringWriter trace = new StringWriter();
        defect.printStackTrace(new PrintWriter(trace, true));
        defects.merge(trace.toString(), 1, Integer::sum);
      }
      begun.set(0);
      Files.deleteIfExists(file);
    }
    defects.forEach((trace, times) -> System.out.println(times + " times: " + trace));
    System.out.println("refused " + refused + " read " + read + " kib " + mostKib());
  }

  /** Refused with words, or read; what the import takes must pass the deep check. */
  private void examine(Path file) throws Exception {
    try (BenchLog log = BenchLog.openForReading(file, Fixture.TIME)) {
      log.check();
      for (PowerUpEntry entry : log.list()) {
        PowerUpReader reader = log.find(Long.toString(entry.number()));
        reader.replay(new Forgetful());
        reader.overview(0, 40_000, 50);
      }
      read++;
    } catch (LogException e) {
      refused++;
    }
    Path other = Files.write(folder.resolve("other.db"), empty);
    try (BenchLog log = BenchLog.open(other, Fixture.TIME)) {
      log.importFrom(file);
      List<String> findings = log.check();
      if (!findings.isEmpty()) {
        throw new AssertionError("taken by the import: " + findings);
      }
    } catch (LogException e) {
      if (e.getMessage().contains("other.db")) {
        throw e;
      }
    }
    Files.deleteIfExists(other);
  }

  private byte[] otherBytes() {
    byte[] bad = good.clone();
    int reach = random.nextBoolean() ? bad.length : 40_000;
    for (int flips = random.nextInt(8); flips >= 0; flips--) {
      bad[random.nextInt(Math.min(reach, bad.length))] = (byte) random.nextInt();
    }
    return random.nextInt(5) == 0 ? Arrays.copyOf(bad, random.nextInt(bad.length)) : bad;
  }

  private void otherValue(Path file) throws SQLException {
    String[] table = TABLES[random.nextInt(TABLES.length)];
    String column = table[1 + random.nextInt(table.length - 1)];
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      List<Object> keys = new ArrayList<>();
      List<byte[]> blobs = new ArrayList<>();
      boolean data = column.equals("data");
      // Tables without a rowid have few columns that a foreign key or a check does not bind.
      String key =
          List.of("chunk", "tail", "span_level", "power_up", "calibration", "gap")
                  .contains(table[0])
              ? "rowid"
              : column;
      try (ResultSet row =
          statement.executeQuery("SELECT " + key + ", " + column + " FROM " + table[0])) {
        while (row.next()) {
          keys.add(row.getObject(1));
          blobs.add(data ? row.getBytes(2) : null);
        }
      }
      int chosen = random.nextInt(keys.size());
      String set = column + " = ?" + (data ? ", crc32c = ?" : "");
      try (PreparedStatement update =
          connection.prepareStatement(
              "UPDATE OR IGNORE " + table[0] + " SET " + set + " WHERE " + key + " = ?")) {
        if (data) {
          byte[] bad = otherData(blobs.get(chosen));
          update.setBytes(1, bad);
          update.setLong(2, Rows.crc32c(bad));
        } else {
          update.setObject(1, otherScalar());
        }
        update.setObject(data ? 3 : 2, keys.get(chosen));
        update.executeUpdate();
      } catch (SQLException e) {
        // A CHECK or NOT NULL forbids it: the file stays good.
        return;
      }
    }
  }

  private byte[] otherData(byte[] data) {
    byte[] bad = data.clone();
    switch (random.nextInt(4)) {
      case 0 -> bad = Arrays.copyOf(bad, random.nextInt(bad.length + 1));
      case 1 -> bad = Arrays.copyOf(bad, bad.length + 1 + random.nextInt(1000));
      case 2 -> bad[random.nextInt(Math.min(24, bad.length))] = (byte) random.nextInt();
      default -> {
        for (int flips = random.nextInt(6); flips >= 0; flips--) {
          bad[random.nextInt(bad.length)] = (byte) random.nextInt();
        }
      }
    }
    return bad;
  }

  private Object otherScalar() {
    return switch (random.nextInt(9)) {
      case 0 -> null;
      case 1 -> 0;
      case 2 -> -1;
      case 3 -> Integer.MAX_VALUE;
      case 4 -> Long.MAX_VALUE - random.nextInt(3);
      case 5 -> Long.MIN_VALUE;
      case 6 -> random.nextInt(200_000);
      case 7 -> random.nextInt(40);
      default -> "[".repeat(random.nextInt(3000));
    };
  }

  private void watchForHangs() {
    Thread watcher =
        new Thread(
            () -> {
              while (true) {
                long since = begun.get();
                if (since != 0 && System.nanoTime() - since > HANG_NANOS) {
                  System.out.println("hangs: " + folder);
                  Runtime.getRuntime().halt(3);
                }
                try {
                  Thread.sleep(200);
                } catch (InterruptedException e) {
                  return;
                }
              }
            });
    watcher.setDaemon(true);
    watcher.start();
  }

  /** A power-up of every form: repacked, live chunks, a tail without an end, readings. */
  private byte[] good() throws Exception {
    Path bench = folder.resolve("good.db");
    Path export = folder.resolve("good.firstamp");
    try (BenchLog log = BenchLog.open(bench, Fixture.TIME)) {
      write(log, 150_000, 20_000, true);
      log.repack(() -> true);
      write(log, 152_000, 16_000, true);
      write(log, 155_000, 10_000, false);
      try (PowerUpWriter writer =
          log.begin(Fixture.header(PowerUpHeader.Stream.REDUCED), state -> {})) {
        Fixture.readings(0, 1040, random).forEach(writer::append);
        writer.flush();
      }
      log.exportTo(List.of(1L, 2L, 3L, 4L), export);
    }
    return Files.readAllBytes(export);
  }

  private void write(BenchLog log, long first, int conversions, boolean finish)
      throws LogException {
    try (PowerUpWriter writer = log.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {})) {
      writer.append(Fixture.block(first, conversions, random));
      Fixture.everyKind().forEach(writer::append);
      writer.append(new ProbeEvent.Gap(1, first + conversions, 40));
      writer.append(Fixture.block(first + conversions + 40, 500, random));
      writer.alarm(Fixture.alarm());
      if (finish) {
        writer.finish("{}", "normal", "time");
      }
    }
  }

  /** Most memory this process ever took, as the system counts it; 0 = it does not say. */
  private static long mostKib() throws IOException {
    Path status = Path.of("/proc/self/status");
    if (!Files.exists(status)) {
      return 0;
    }
    return Files.readAllLines(status).stream()
        .filter(line -> line.startsWith("VmHWM:"))
        .mapToLong(line -> Long.parseLong(line.replaceAll("[^0-9]", "")))
        .sum();
  }

  /** Keeps nothing. */
  private static final class Forgetful implements StreamSink {
    @Override
    public void conversions(firstamp.model.samples.ConversionBlock block) {}

    @Override
    public void reading(firstamp.model.samples.Reading reading) {}

    @Override
    public void event(ProbeEvent event) {}
  }
}
