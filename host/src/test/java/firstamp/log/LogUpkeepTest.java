package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.log.stream.Overview;
import firstamp.model.ProbeEvent;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.List;
import java.util.Random;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class LogUpkeepTest {
  @TempDir Path folder;

  private final Random random = new Random(3);
  private final Fixture.Kept expected = new Fixture.Kept();
  private Path file;

  @BeforeEach
  void bench() {
    file = folder.resolve("bench.db");
  }

  private void keep(BenchLog log, long first, int conversions) throws LogException {
    try (PowerUpWriter writer = log.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {})) {
      long index = first;
      while (index < first + conversions) {
        int count = (int) Math.min(7000, first + conversions - index);
        ConversionBlock block = Fixture.block(index, count, random);
        writer.append(block);
        expected.conversions(block);
        index += count;
        if (random.nextInt(30) == 0) {
          ProbeEvent mark = new ProbeEvent.Marked(SamplePlan.microsOf(index), "here");
          writer.append(mark);
          expected.event(mark);
        }
        writer.awaitRoom();
      }
      writer.finish("{}", "normal", "time");
    }
  }

  @Test
  void repackKeepsEveryConversionAndTakesLessRoom() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      keep(log, 4321, 1_100_000);
      long before = log.find("1").bytes();
      int[] asked = {0};
      log.repack(() -> ++asked[0] < 2);
      assertThat(replayed(log, "1")).isEqualTo(expected.items);
      assertThat(text("SELECT state FROM power_up")).isEqualTo("finished");
      log.repack(() -> true);
      assertThat(replayed(log, "1")).isEqualTo(expected.items);
      assertThat(text("SELECT state FROM power_up")).isEqualTo("repacked");
      assertThat(log.find("1").bytes()).isLessThan(before);
      assertThat(log.check()).isEmpty();
    }
    assertThat(Files.list(folder)).containsExactly(file);
  }

  @Test
  void repackKeepsEveryReadingAndTakesLessRoom() throws Exception {
    List<Reading> readings = Fixture.readings(160 * 77, 7000, random);
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      try (PowerUpWriter writer =
          log.begin(Fixture.header(PowerUpHeader.Stream.REDUCED), state -> {})) {
        readings.forEach(writer::append);
        writer.finish("{}", "normal", "time");
      }
      long before = log.find("1").bytes();
      assertThat(number("SELECT count(*) FROM chunk WHERE channel = 0")).isEqualTo(8);
      log.repack(() -> true);
      assertThat(number("SELECT count(*) FROM chunk WHERE channel = 0")).isEqualTo(1);
      assertThat(replayed(log, "1")).isEqualTo(readings);
      assertThat(text("SELECT state FROM power_up")).isEqualTo("repacked");
      assertThat(log.find("1").bytes()).isLessThan(before);
      assertThat(log.check()).isEmpty();
    }
  }

  @Test
  void aRepackedChunkThatReadsDifferentlyIsNotKept() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      keep(log, 0, 400_000);
      // What the repack inserts is spoilt on its way into the file.
      sql(
          file,
          "CREATE TRIGGER spoil AFTER INSERT ON chunk WHEN new.channel = 6 BEGIN"
              + " UPDATE chunk SET count = count - 1 WHERE id = new.id; END");
      assertThat(kind(() -> log.repack(() -> true))).isEqualTo(LogException.Kind.DAMAGED);
      sql(file, "DROP TRIGGER spoil");
      assertThat(replayed(log, "1")).isEqualTo(expected.items);
      assertThat(number("SELECT count(*) FROM chunk WHERE channel = 6")).isEqualTo(3);
    }
  }

  @Test
  void whatWasNotRepackedInTimeIsLeftToTheNextClose() throws Exception {
    BenchLog log = BenchLog.open(file, Fixture.TIME);
    keep(log, 0, 400_000);
    log.closeWithin(0);
    assertThat(Files.list(folder)).containsExactly(file);
    assertThat(text("SELECT state FROM power_up")).isEqualTo("finished");
    try (BenchLog flagging = BenchLog.open(file, Fixture.TIME)) {
      flagging.flag(1, true, false);
    }
    assertThat(text("SELECT state FROM power_up")).isEqualTo("finished");
    assertThat(Files.list(folder)).containsExactly(file);
    try (BenchLog again = BenchLog.open(file, Fixture.TIME)) {
      assertThat(replayed(again, "1")).isEqualTo(expected.items);
      again.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {}).close();
    }
    assertThat(text("SELECT state FROM power_up WHERE id = 1")).isEqualTo("repacked");
    assertThat(Files.list(folder)).containsExactly(file);
    try (BenchLog again = BenchLog.openForReading(file, Fixture.TIME)) {
      assertThat(replayed(again, "1")).isEqualTo(expected.items);
    }
  }

  @Test
  void aPowerUpWhoseStretchesLieFarApartIsRepackedAsItIs() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      try (PowerUpWriter writer =
          log.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {})) {
        for (long first : new long[] {0, 3200, 6400}) {
          writer.append(Fixture.block(first + 8, 1600, random));
        }
        writer.finish("{}", "normal", "time");
      }
      // As a damaged file may have it: the second stretch years later, the third before all others.
      sql(file, "UPDATE stretch SET first_index = 5000000000000 WHERE first_index = 3208");
      sql(file, "UPDATE stretch SET first_index = 0 WHERE first_index = 6408");
      List<Object> before = replayed(log, "1");
      log.repack(() -> true);
      assertThat(text("SELECT state FROM power_up")).isEqualTo("repacked");
      assertThat(replayed(log, "1")).isEqualTo(before);
    }
  }

  @Test
  void longPowerUpsAreDrawnFromFewRows() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME);
        PowerUpWriter writer =
            log.begin(Fixture.header(PowerUpHeader.Stream.REDUCED), state -> {})) {
      List<Reading> readings = Fixture.readings(0, 62_000, random);
      for (Reading reading : readings) {
        writer.append(reading);
        writer.awaitRoom();
      }
      writer.flush();
      // 620 s: 62 groups, of which 60 were joined 30 at a time.
      assertThat(number("SELECT count(*) FROM span_level WHERE level = 2")).isEqualTo(4);
      assertThat(number("SELECT sum(buckets) FROM span_level WHERE level = 0")).isEqualTo(6200);
      Overview overview = log.find("1").overview(0, 62_000 * 160, 1000);
      for (int column : new int[] {0, 1, 499, 500, 967, 999}) {
        DescriptiveStatistics library = new DescriptiveStatistics();
        for (Reading reading : readings) {
          if (reading.firstIndex() >= overview.edge(column)
              && reading.firstIndex() < overview.edge(column + 1)) {
            library.addValue(reading.lowest(Channel.M));
          }
        }
        assertThat((double) overview.lowest(Channel.M, column)).isEqualTo(library.getMin());
      }
    }
  }

  /** Spans shorter than a column's bucket are drawn from the values, and only from those needed. */
  @Test
  void zoomAgreesWithALibraryAtAnyPlace() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      keep(log, 777, 900_000);
      short[] all = new short[900_777];
      for (Object item : expected.items) {
        if (item instanceof Fixture.Run run) {
          for (int k = 0; k < run.counts.size(); k++) {
            all[(int) run.firstIndex + k] = run.counts.get(k);
          }
        }
      }
      for (int repacked = 0; repacked < 2; repacked++) {
        for (long from : new long[] {777, 160_000 - 5, 333_333, 480_000, 868_777}) {
          Overview overview = log.find("1").overview(from, from + 32_000, 50);
          for (int column = 0; column < 50; column += 7) {
            for (Channel channel : Channel.values()) {
              DescriptiveStatistics library = new DescriptiveStatistics();
              for (long i = overview.edge(column); i < overview.edge(column + 1); i++) {
                if (SamplePlan.channelAt(i) == channel) {
                  library.addValue(all[(int) i]);
                }
              }
              assertThat((double) overview.lowest(channel, column)).isEqualTo(library.getMin());
              assertThat((double) overview.highest(channel, column)).isEqualTo(library.getMax());
              assertThat(overview.mean(channel, column))
                  .isCloseTo(library.getMean(), org.assertj.core.data.Offset.offset(1e-9));
            }
          }
        }
        log.repack(() -> true);
      }
    }
  }

  @Test
  void overviewAgreesWithALibraryOnEveryColumn() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME);
        PowerUpWriter writer = log.begin(Fixture.header(PowerUpHeader.Stream.RAW), s -> {})) {
      ConversionBlock whole = Fixture.block(1000, 700_000, random);
      writer.append(whole);
      writer.flush();
      for (int columns : new int[] {3, 100, 1000}) {
        Overview overview = log.find("1").overview(5000, 690_000, columns);
        for (int column = 0; column < columns; column += 1 + columns / 7) {
          double width = 685_000.0 / columns;
          assertThat((double) overview.edge(column))
              .isBetween(5000 + width * (column - 0.25) - 1, 5000 + width * (column + 0.25) + 1);
          for (Channel channel : Channel.values()) {
            DescriptiveStatistics library = new DescriptiveStatistics();
            for (long i = overview.edge(column); i < overview.edge(column + 1); i++) {
              if (i >= 1000 && SamplePlan.channelAt(i) == channel) {
                library.addValue(whole.counts()[(int) (i - 1000)]);
              }
            }
            assertThat(overview.empty(channel, column)).isEqualTo(library.getN() == 0);
            if (library.getN() > 0) {
              assertThat((double) overview.lowest(channel, column)).isEqualTo(library.getMin());
              assertThat((double) overview.highest(channel, column)).isEqualTo(library.getMax());
              assertThat(Math.abs(overview.mean(channel, column) - library.getMean()))
                  .isLessThan(0.05);
            }
          }
        }
      }
    }
  }

  @Test
  void readingsGiveTheSamePictureAsTheirConversions() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME);
        PowerUpWriter writer =
            log.begin(Fixture.header(PowerUpHeader.Stream.REDUCED), state -> {})) {
      List<Reading> readings = Fixture.readings(0, 2100, random);
      readings.forEach(writer::append);
      writer.finish("{}", "normal", "time");
      Overview overview = log.find("1").overview(0, 2100 * 160, 5);
      int lowest =
          readings.stream()
              .filter(r -> r.firstIndex() >= overview.edge(1) && r.firstIndex() < overview.edge(2))
              .mapToInt(r -> r.lowest(Channel.H))
              .min()
              .orElseThrow();
      assertThat(overview.lowest(Channel.H, 1)).isEqualTo(lowest);
      assertThat(replayed(log, "1")).isEqualTo(readings);
    }
  }

  @Test
  void secondsReadInPhysicalUnits() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      keep(log, 0, 40_000);
    }
    // V stands at 280 counts of 60 V / 1024: 16.406 V; the nominal ranges of wire-format.md.
    assertThat(Double.parseDouble(text("SELECT avg(supply_v) FROM second_readable")))
        .isBetween(16.38, 16.43);
    assertThat(text("SELECT group_concat(conversions) FROM second_readable"))
        .isEqualTo("16000,16000,8000");
  }

  @Test
  void exportsImportsBacksUpAndDeletes() throws Exception {
    Path export = folder.resolve("one.firstamp");
    Path backup = folder.resolve("backup.db");
    Path other = folder.resolve("other.db");
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      keep(log, 0, 400_000);
      log.exportTo(List.of(1L), export);
      log.backupTo(backup);
      assertThat(kind(() -> log.exportTo(List.of(1L), export))).isEqualTo(LogException.Kind.EXISTS);
      assertThat(kind(() -> log.exportTo(List.of(9L), folder.resolve("nine.firstamp"))))
          .isEqualTo(LogException.Kind.MISSING);
    }
    long size = Files.size(file);
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      log.delete(1);
      assertThat(log.list()).isEmpty();
    }
    assertThat(Files.size(file)).isLessThan(size / 2);
    try (BenchLog log = BenchLog.open(other, Fixture.TIME)) {
      BenchLog.Imported first = log.importFrom(export);
      assertThat(first.numbers()).containsExactly(1L);
      assertThat(log.importFrom(backup).numbers()).isEmpty();
      assertThat(log.importFrom(backup).skipped()).hasSize(1);
      assertThat(replayed(log, "1")).isEqualTo(expected.items);
    }
    assertThat(Files.list(folder)).containsExactlyInAnyOrder(file, export, backup, other);
  }

  @Test
  void anImportTakesNothingFromADamagedFile() throws Exception {
    Path export = folder.resolve("one.firstamp");
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      keep(log, 0, 200_000);
      log.exportTo(List.of(1L), export);
    }
    sql(export, "UPDATE chunk SET data = zeroblob(length(data)) WHERE channel = 3");
    try (BenchLog log = BenchLog.open(folder.resolve("other.db"), Fixture.TIME)) {
      assertThat(kind(() -> log.importFrom(export))).isEqualTo(LogException.Kind.DAMAGED);
      assertThat(log.list()).isEmpty();
    }
    sql(file, "UPDATE chunk SET crc32c = 1 WHERE channel = 2");
    try (BenchLog log = BenchLog.openForReading(file, Fixture.TIME)) {
      assertThat(log.check()).singleElement().asString().contains("channel 2").contains("CRC-32C");
    }
  }

  private static LogException.Kind kind(org.assertj.core.api.ThrowableAssert.ThrowingCallable c) {
    return catchThrowableOfType(LogException.class, c).kind();
  }

  private static List<Object> replayed(BenchLog log, String id) throws LogException {
    Fixture.Kept kept = new Fixture.Kept();
    log.find(id).replay(kept);
    return kept.items;
  }

  private String text(String query) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      return row.getString(1);
    }
  }

  private long number(String query) throws Exception {
    return Long.parseLong(text(query));
  }

  private static void sql(Path file, String statement) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement s = connection.createStatement()) {
      s.execute(statement);
    }
  }
}
