package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A log whose chunks are series of versions 0, 1 and 2, which are no longer written (2) or seldom.
 */
final class OlderSeriesTest {
  @TempDir Path folder;

  /** The check values are those that {@code read_log.py} gave when such logs were new. */
  @Test
  void readsAndRepacksALogOfOlderSeries() throws Exception {
    Path file = folder.resolve("old.db");
    try (InputStream in = getClass().getResourceAsStream("series-1-and-2.firstamp")) {
      Files.copy(in, file);
    }
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      assertThat(log.check()).isEmpty();
      assertThat(runs(log))
          .containsExactly(
              "64 35072 b9d6acff",
              "35136 3328 05cbc920",
              "38464 27264 4699c611",
              "65728 48256 aeb799a4",
              "113984 33593 71e5dffc");
    }
  }

  private static List<String> runs(BenchLog log) throws LogException {
    Fixture.Kept kept = new Fixture.Kept();
    log.find("last").replay(kept);
    List<String> runs = new ArrayList<>();
    for (Object item : kept.items) {
      if (item instanceof Fixture.Run run) {
        ByteBuffer bytes =
            ByteBuffer.allocate(2 * run.counts.size()).order(ByteOrder.LITTLE_ENDIAN);
        run.counts.forEach(bytes::putShort);
        CRC32 crc = new CRC32();
        crc.update(bytes.array());
        runs.add(
            run.firstIndex + " " + run.counts.size() + " " + String.format("%08x", crc.getValue()));
      }
    }
    return runs;
  }
}
