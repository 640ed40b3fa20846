package firstamp.log;

import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.SamplePlan;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A bench log with power-ups whose conversions are known. */
abstract class LogUpkeepCase {
  @TempDir Path folder;

  final Random random = new Random(3);
  final Fixture.Kept expected = new Fixture.Kept();
  Path file;

  @BeforeEach
  void bench() {
    file = folder.resolve("bench.db");
  }

  void keep(BenchLog log, long first, int conversions) throws LogException {
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

  static LogException.Kind kind(org.assertj.core.api.ThrowableAssert.ThrowingCallable c) {
    return catchThrowableOfType(LogException.class, c).kind();
  }

  static List<Object> replayed(BenchLog log, String id) throws LogException {
    Fixture.Kept kept = new Fixture.Kept();
    log.find(id).replay(kept);
    return kept.items;
  }

  String text(String query) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      return row.getString(1);
    }
  }

  long number(String query) throws Exception {
    return Long.parseLong(text(query));
  }

  static void sql(Path file, String statement) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement s = connection.createStatement()) {
      s.execute(statement);
    }
  }
}
