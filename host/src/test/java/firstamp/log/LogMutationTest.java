package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files with changed bytes or a lost end are refused or read, never anything else. */
final class LogMutationTest {
  @TempDir Path folder;

  private final Random random = new Random(4);

  @Test
  void refusesOrReadsFiveHundredDamagedFiles() throws Exception {
    damage(500);
  }

  @Test
  @Tag("full")
  void refusesOrReadsTenThousandDamagedFiles() throws Exception {
    damage(10_000);
  }

  private void damage(int files) throws Exception {
    byte[] good = good();
    int refused = 0;
    for (int n = 0; n < files; n++) {
      byte[] bad = good.clone();
      int reach = random.nextBoolean() ? bad.length : 40_000;
      for (int flips = random.nextInt(8); flips >= 0; flips--) {
        bad[random.nextInt(Math.min(reach, bad.length))] = (byte) random.nextInt();
      }
      if (random.nextInt(5) == 0) {
        bad = Arrays.copyOf(bad, random.nextInt(bad.length));
      }
      Path file = Files.write(folder.resolve("damaged" + n + ".db"), bad);
      try (BenchLog log = BenchLog.openForReading(file, Fixture.TIME)) {
        log.check();
        for (PowerUpEntry entry : log.list()) {
          log.find(Long.toString(entry.number())).replay(new Fixture.Kept());
        }
      } catch (LogException e) {
        refused++;
      }
      Files.deleteIfExists(file);
    }
    assertThat(refused).isBetween(files / 2, files - 1);
  }

  private byte[] good() throws Exception {
    Path export = folder.resolve("good.firstamp");
    try (BenchLog log = BenchLog.open(folder.resolve("bench.db"), Fixture.TIME)) {
      try (PowerUpWriter writer =
          log.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {})) {
        writer.append(Fixture.block(0, 100_000, random));
        Fixture.everyKind().forEach(writer::append);
        writer.finish("{}", "normal", "time");
      }
      log.exportTo(List.of(1L), export);
    }
    return Files.readAllBytes(export);
  }
}
