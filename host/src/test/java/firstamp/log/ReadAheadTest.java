package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.log.stream.StreamSink;
import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A replay decodes the next group while one is given out. */
final class ReadAheadTest {
  private static final int SECOND_GROUP = 4 * StreamStore.GROUP_CONVERSIONS;
  private static final int CONVERSIONS = SECOND_GROUP + StreamStore.GROUP_CONVERSIONS;

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void twoGroupsOfARepackedLog() throws Exception {
    file = folder.resolve("bench.db");
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      PowerUpWriter writer = log.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {});
      writer.append(Fixture.block(0, CONVERSIONS, new Random(3)));
      writer.finish("{}", "normal", "time");
      writer.close();
    }
    try (BenchLog log = BenchLog.openForReading(file, Fixture.TIME)) {
      assertThat(given(log, 0)).isEqualTo(CONVERSIONS);
    }
    damage();
  }

  /** The meter of the second group no longer fits its sum. */
  private void damage() throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(
          "UPDATE chunk SET crc32c = crc32c + 1 WHERE channel = 7 AND position = " + SECOND_GROUP);
    }
  }

  private static long given(BenchLog log, long stopAt) throws LogException {
    long[] sum = {0};
    log.find("1").replay(new Counting(sum, stopAt));
    return sum[0];
  }

  @Test
  void whatComesBeforeADamagedGroupIsGivenAndThenTheDamageIsSaid() throws Exception {
    try (BenchLog log = BenchLog.openForReading(file, Fixture.TIME)) {
      long[] sum = {0};
      LogException failure =
          catchThrowableOfType(
              LogException.class, () -> log.find("1").replay(new Counting(sum, 0)));
      assertThat(failure.kind()).isEqualTo(LogException.Kind.DAMAGED);
      assertThat(failure).hasMessageContaining("chunk at " + SECOND_GROUP + " of channel 7");
      assertThat(sum[0]).isEqualTo(SECOND_GROUP);
    }
  }

  @Test
  void whoeverStopsAReplayGetsTheirOwnFailureAndCanReadAgain() throws Exception {
    try (BenchLog log = BenchLog.openForReading(file, Fixture.TIME)) {
      for (int round = 0; round < 3; round++) {
        assertThatThrownBy(() -> given(log, 1)).isInstanceOf(Stopped.class);
      }
      assertThat(log.find("1").overview(0, SECOND_GROUP, 10).columns()).isEqualTo(10);
    }
  }

  private static final class Stopped extends RuntimeException {
    private static final long serialVersionUID = 1;
  }

  /** Counts conversions, and stops at a number of them (0 = never). */
  private record Counting(long[] sum, long stopAt) implements StreamSink {
    @Override
    public void conversions(ConversionBlock block) {
      assertThat(block.firstIndex()).isEqualTo(sum[0]);
      sum[0] += block.counts().length;
      if (stopAt > 0 && sum[0] >= stopAt) {
        throw new Stopped();
      }
    }

    @Override
    public void reading(Reading reading) {
      throw new AssertionError("readings in a raw stream");
    }

    @Override
    public void event(ProbeEvent event) {
      // None was written.
    }
  }
}
