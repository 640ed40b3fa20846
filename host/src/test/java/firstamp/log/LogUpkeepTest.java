package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.samples.Reading;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Repacking, exporting, importing and backing up a bench log lose nothing. */
final class LogUpkeepTest extends LogUpkeepCase {
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
}
