package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.log.stream.StreamSink;
import firstamp.model.TimeSource;
import firstamp.model.samples.ConversionBlock;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** More comes than is written: only whole chunks go into the file, the rest a little later. */
@Timeout(60)
final class BacklogTest {
  private static final int BLOCK = 3200;
  private static final int CHUNK = StreamStore.GROUP_CONVERSIONS;

  @TempDir Path folder;

  /** A clock that stands: nothing is written because time has come. */
  private static final TimeSource STANDS =
      new TimeSource() {
        @Override
        public long epochMillis() {
          return 1_700_000_000_000L;
        }

        @Override
        public long monotonicNanos() {
          return 1;
        }
      };

  @Test
  void isWrittenUpToTheEndOfAChunkAndWholeWhenAskedFor() throws Exception {
    Path file = folder.resolve("bench.db");
    // A little more than 8 MB, and in the middle of a chunk.
    int blocks = 26 * CHUNK / BLOCK + 20;
    Random random = new Random(2);
    try (BenchLog log = BenchLog.open(file, STANDS)) {
      PowerUpWriter writer = log.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {});
      for (int k = 0; k < blocks; k++) {
        writer.append(Fixture.block((long) k * BLOCK, BLOCK, random));
      }
      long kept = 0;
      while (kept == 0) {
        Thread.sleep(20);
        kept = number(file, "SELECT coalesce(sum(count), 0) FROM chunk");
      }
      assertThat(kept % CHUNK).isZero();
      assertThat(number(file, "SELECT count(*) FROM tail")).isZero();
      writer.flush();
      assertThat(number(file, "SELECT sum(count) FROM chunk")).isEqualTo(26 * CHUNK);
      assertThat(number(file, "SELECT sum(count) FROM tail")).isEqualTo(20 * BLOCK);
      writer.close();
      long[] given = {0};
      log.find("1")
          .replay(
              new StreamSink() {
                @Override
                public void conversions(ConversionBlock block) {
                  given[0] += block.counts().length;
                }

                @Override
                public void reading(firstamp.model.samples.Reading reading) {
                  throw new AssertionError("readings in a raw stream");
                }

                @Override
                public void event(firstamp.model.ProbeEvent event) {
                  throw new AssertionError("no event was written");
                }
              });
      assertThat(given[0]).isEqualTo((long) blocks * BLOCK);
    }
  }

  private static long number(Path file, String sql) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      return row.next() ? row.getLong(1) : 0;
    }
  }
}
