package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A disk that is full or cannot be written: what was said to be kept is kept. */
final class LogDiskTest {
  @TempDir Path folder;

  private final Random random = new Random(5);
  private final AtomicLong pages = new AtomicLong(1 << 20);
  private final List<LogState> states = new ArrayList<>();

  private StreamStore.Connector limited(Path file) {
    return () -> {
      Connection connection = LogDatabase.openForWriting(file);
      try (Statement statement = connection.createStatement()) {
        statement.execute("PRAGMA max_page_count = " + pages.get());
      }
      return connection;
    };
  }

  @Test
  void aPowerUpThatBeginsOnAFullDiskIsWrittenWhenThereIsRoom() throws Exception {
    Path file = folder.resolve("bench.db");
    Fixture.Kept expected = new Fixture.Kept();
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      // Whole pages of earlier sheets leave no free cell for another row.
      pages.set(1);
      PowerUpHeader header = Fixture.header(PowerUpHeader.Stream.RAW);
      String sheet = "{\"note\":\"" + "x".repeat(5000) + "\"}";
      PowerUpHeader large =
          new PowerUpHeader(
              header.uuid(),
              header.label(),
              header.setName(),
              header.startedEpochMs(),
              header.stream(),
              header.hello(),
              sheet,
              header.effectiveSheetJson(),
              header.limitsJson(),
              header.roomCelsius());
      try (PowerUpWriter writer = log.begin(large, states::add, 1 << 20, limited(file))) {
        assertThat(writer.number()).isZero();
        assertThat(states).extracting(LogState::logging).containsExactly(false);
        assertThat(states.get(0).text().english()).contains("The disk with bench.db is full.");
        ConversionBlock block = Fixture.block(500, 30_000, random);
        writer.append(block);
        writer.append(new ProbeEvent.Marked(7, "kept"));
        expected.conversions(block);
        expected.event(new ProbeEvent.Marked(7, "kept"));
        assertThat(catchThrowableOfType(LogException.class, writer::flush).kind())
            .isEqualTo(LogException.Kind.FULL);
        assertThat(log.list()).isEmpty();
        pages.set(1 << 20);
        writer.finish("{}", "normal", "time");
        assertThat(writer.number()).isEqualTo(1);
      }
      Fixture.Kept kept = new Fixture.Kept();
      log.find("1").replay(kept);
      assertThat(kept.items).isEqualTo(expected.items);
      assertThat(log.find("1").entry().finished()).isTrue();
      assertThat(states).extracting(LogState::logging).containsExactly(false, true);
      assertThat(log.check()).isEmpty();
    }
  }

  @Test
  void whatFindsNoRoomInMemoryIsCountedAndStandsAsAGap() throws Exception {
    Path file = folder.resolve("bench.db");
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      try (PowerUpWriter writer =
          log.begin(
              Fixture.header(PowerUpHeader.Stream.RAW), states::add, 100_000, limited(file))) {
        pages.set(1);
        long index = 0;
        for (; index < 160_000; index += 8_000) {
          writer.append(Fixture.block(index, 8_000, random));
        }
        // Alarms and marks always find room: without them the rest says little.
        writer.append(new ProbeEvent.Marked(9_000_000, "still here"));
        assertThat(catchThrowableOfType(LogException.class, writer::flush).kind())
            .isEqualTo(LogException.Kind.FULL);
        assertThat(writer.dropped()).isBetween(60_000L, 160_000L);
        long dropped = writer.dropped();
        pages.set(1 << 20);
        writer.flush();
        writer.append(Fixture.block(index, 8_000, random));
        writer.finish("{}", "normal", "time");
        assertThat(writer.dropped()).isEqualTo(dropped);
        assertThat(number(file, "SELECT sum(conversions) FROM gap WHERE cause = 'log'"))
            .isEqualTo(dropped);
        assertThat(number(file, "SELECT first_index FROM gap")).isEqualTo(160_000 - dropped);
        assertThat(number(file, "SELECT count(*) FROM mark")).isEqualTo(1);
        assertThat(catchThrowableOfType(LogException.class, writer::close))
            .hasMessageContaining(
                String.format(Locale.ROOT, "%.1f s of the course", dropped / 16_000.0))
            .hasMessageContaining("stand as a gap");
      }
      assertThat(log.check()).isEmpty();
    }
  }

  @Test
  void aSmallDiskThatFillsUpAndTurnsReadOnlyLosesNothing() throws Exception {
    Path output = folder.resolve("output.txt");
    Process writer =
        new ProcessBuilder(
                "unshare",
                "--map-root-user",
                "--mount",
                "sh",
                "-c",
                "mount -t tmpfs -o size=4m none \"$1\" || exit 99; shift; exec \"$@\"",
                "sh",
                Files.createDirectory(folder.resolve("disk")).toString(),
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-ea",
                "-cp",
                System.getProperty("java.class.path"),
                "firstamp.log.DiskTrouble",
                folder.resolve("disk").toString())
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    assertThat(writer.waitFor(120, TimeUnit.SECONDS)).isTrue();
    String said = Files.readString(output, StandardCharsets.UTF_8);
    if (writer.exitValue() == 99 || said.startsWith("unshare:")) {
      // No tool is missing, the system forbids it: a container without rights to mount.
      System.err.println("SKIPPED: the small disk, nothing may be mounted here: " + said);
      Assumptions.abort("nothing may be mounted here: " + said);
    }
    assertThat(said).contains("all kept");
    assertThat(writer.exitValue()).isZero();
  }

  private static long number(Path file, String query) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      assertThat(row.next()).isTrue();
      return row.getLong(1);
    }
  }
}
