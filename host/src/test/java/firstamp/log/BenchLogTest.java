package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Priority;
import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class BenchLogTest {
  @TempDir Path folder;

  private final Random random = new Random(11);

  @Test
  void givesARawStreamBackInItsOrderWithEventsAndGapsAtTheirPlaces() throws Exception {
    Path file = folder.resolve("bench.db");
    Fixture.Kept expected = new Fixture.Kept();
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      PowerUpWriter writer = log.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {});
      long index = 37;
      for (int part = 0; part < 40; part++) {
        int count = 1 + random.nextInt(20_000);
        ConversionBlock block = Fixture.block(index, count, random);
        writer.append(block);
        expected.conversions(block);
        index += count;
        if (part % 3 == 0) {
          ProbeEvent event = Fixture.everyKind().get(part / 3 % 12);
          writer.append(event);
          expected.event(event);
        }
        if (part % 7 == 0) {
          index += 1 + random.nextInt(500);
        }
        if (part == 25) {
          index = 5;
        }
        if (part % 5 == 0) {
          writer.flush();
        }
      }
      writer.finish("{\"type\":\"summary\"}", "normal", "time");
      writer.close();
    }
    assertThat(Files.list(folder)).containsExactly(file);

    try (BenchLog log = BenchLog.openForReading(file, Fixture.TIME)) {
      PowerUpReader reader = log.find("last");
      Fixture.Kept kept = new Fixture.Kept();
      reader.replay(kept);
      assertThat(kept.items).isEqualTo(expected.items);
      assertThat(reader.entry().finished()).isTrue();
      assertThat(reader.entry().summaryJson()).isEqualTo("{\"type\":\"summary\"}");
    }
  }

  @Test
  void keepsEveryKindOfEventAndWhatWasKnownAtTheBegin() throws Exception {
    Path file = folder.resolve("bench.db");
    PowerUpHeader header = Fixture.header(PowerUpHeader.Stream.REDUCED);
    List<Object> expected = new ArrayList<>();
    try (BenchLog log = BenchLog.open(file, Fixture.TIME);
        PowerUpWriter writer = log.begin(header, state -> {})) {
      for (ProbeEvent event : Fixture.everyKind()) {
        Reading reading =
            Fixture.readings(160L * 998 + 160L * expected.size() / 2, 1, random).get(0);
        writer.append(reading);
        writer.append(event);
        expected.add(reading);
        expected.add(event);
      }
      writer.flush();
      Fixture.Kept kept = new Fixture.Kept();
      PowerUpReader reader = log.find(header.uuid().substring(0, 8));
      reader.replay(kept);
      assertThat(kept.items).isEqualTo(expected);
      assertThat(reader.header()).isEqualTo(header);
      assertThat(reader.entry().finished()).isFalse();
      assertThat(reader.gaps()).containsExactly(new ProbeEvent.Gap(5_100_000, 81_600, 128));
    }
  }

  @Test
  void aUuidWhoseFirstGroupIsAllDigitsIsFoundAndAShortNumberIsNeverTakenForAUuid()
      throws Exception {
    Path file = folder.resolve("bench.db");
    PowerUpHeader header =
        Fixture.header(PowerUpHeader.Stream.REDUCED, "84808035-1c7e-4d20-9a51-0d6f3b2c8e14");
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      log.begin(header, state -> {}).close();
      assertThat(log.find("84808035").header().uuid()).isEqualTo(header.uuid());
      assertThat(log.find("1").header().uuid()).isEqualTo(header.uuid());
      assertThatThrownBy(() -> log.find("84")).hasMessageContaining("no power-up \"84\"");
    }
  }

  @Test
  void aPowerUpThatWasNeverFinishedReadsToItsLastCommit() throws Exception {
    Path file = folder.resolve("bench.db");
    ConversionBlock first = Fixture.block(0, 170_000, random);
    BenchLog log = BenchLog.open(file, Fixture.TIME);
    PowerUpWriter writer = log.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {});
    writer.append(first);
    writer.flush();
    Path copy = folder.resolve("copy.db");
    Files.copy(file, copy);
    Files.copy(Path.of(file + "-wal"), Path.of(copy + "-wal"));
    writer.close();

    Fixture.Kept kept = new Fixture.Kept();
    BenchLog.open(copy, Fixture.TIME).find("1").replay(kept);
    Fixture.Kept expected = new Fixture.Kept();
    expected.conversions(first);
    assertThat(kept.items).isEqualTo(expected.items);
  }

  @Test
  void aCopyWithoutAlarmAndSummaryRowsStillReplays() throws Exception {
    Path file = folder.resolve("bench.db");
    Alarm alarm =
        new Alarm(
            1,
            "hum",
            2,
            "B1",
            1.5,
            1.25,
            1.5,
            Priority.LOW,
            AlarmState.UNACKNOWLEDGED,
            -70.25,
            true,
            null,
            "dBV",
            "hum",
            0);
    ConversionBlock block = Fixture.block(0, 1000, random);
    try (BenchLog log = BenchLog.open(file, Fixture.TIME);
        PowerUpWriter writer = log.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {})) {
      writer.append(block);
      writer.alarm(alarm);
      writer.alarm(alarm.inState(AlarmState.CLEARED_UNACKNOWLEDGED, 9));
      writer.finish("{}", "alarm", "time");
      assertThat(log.find("1").alarmTransitions())
          .containsExactly(alarm, alarm.inState(AlarmState.CLEARED_UNACKNOWLEDGED, 9));
    }
    sql(file, "DELETE FROM alarm", "UPDATE power_up SET summary = NULL");

    try (BenchLog log = BenchLog.openForReading(file, Fixture.TIME)) {
      Fixture.Kept kept = new Fixture.Kept();
      log.find("1").replay(kept);
      Fixture.Kept expected = new Fixture.Kept();
      expected.conversions(block);
      assertThat(kept.items).isEqualTo(expected.items);
      assertThat(log.find("1").entry().summaryJson()).isNull();
      assertThat(log.find("1").alarmTransitions()).isEmpty();
    }
  }

  @Test
  void saysWhatIsWrongWithAFileThatIsNoBenchLog() throws Exception {
    Path text = Files.writeString(folder.resolve("notes.txt"), "x".repeat(5000));
    Path other = folder.resolve("other.db");
    sql(other, "CREATE TABLE t (a)");
    Path log = folder.resolve("bench.db");
    BenchLog.open(log, Fixture.TIME).close();
    Path newer = Files.copy(log, folder.resolve("newer.db"));
    sql(newer, "PRAGMA user_version = 4");
    Path trigger = Files.copy(log, folder.resolve("trigger.db"));
    sql(trigger, "CREATE TRIGGER t AFTER INSERT ON mark BEGIN DELETE FROM mark; END");
    Path dropped = Files.copy(log, folder.resolve("dropped.db"));
    sql(dropped, "DROP TABLE gap");
    Path dangling = Files.createSymbolicLink(folder.resolve("link.db"), folder.resolve("none"));

    assertThat(kind(text)).isEqualTo(LogException.Kind.NOT_A_LOG);
    assertThat(kind(other)).isEqualTo(LogException.Kind.NOT_A_LOG);
    assertThat(kind(newer)).isEqualTo(LogException.Kind.NEWER);
    assertThat(kind(trigger)).isEqualTo(LogException.Kind.DAMAGED);
    assertThat(kind(dropped)).isEqualTo(LogException.Kind.DAMAGED);
    assertThat(kind(dangling)).isEqualTo(LogException.Kind.MISSING);
    assertThat(kind(folder)).isEqualTo(LogException.Kind.NOT_A_LOG);
    assertThat(Files.exists(folder.resolve("none"))).isFalse();
  }

  @Test
  void aFullDiskKeepsWhatWaitsInMemoryAndWritesItLater() throws Exception {
    Path file = folder.resolve("bench.db");
    List<LogState> states = new ArrayList<>();
    Fixture.Kept expected = new Fixture.Kept();
    AtomicInteger pages = new AtomicInteger(1 << 20);
    StreamStore.Connector limited =
        () -> {
          Connection connection = LogDatabase.openForWriting(file);
          try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA max_page_count = " + pages.get());
          }
          return connection;
        };
    try (BenchLog log = BenchLog.open(file, Fixture.TIME);
        PowerUpWriter writer =
            log.begin(Fixture.header(PowerUpHeader.Stream.RAW), states::add, 64 << 20, limited)) {
      pages.set(190);
      ConversionBlock first = Fixture.block(0, 200_000, random);
      writer.append(first);
      expected.conversions(first);
      writer.flush();
      ConversionBlock second = Fixture.block(200_000, 600_000, random);
      writer.append(second);
      writer.append(new ProbeEvent.Marked(7, "kept"));
      expected.conversions(second);
      expected.event(new ProbeEvent.Marked(7, "kept"));
      LogException full = catchThrowableOfType(LogException.class, writer::flush);
      assertThat(full.kind()).isEqualTo(LogException.Kind.FULL);
      pages.set(1 << 20);
      writer.flush();
      Fixture.Kept kept = new Fixture.Kept();
      log.find("1").replay(kept);
      assertThat(kept.items).isEqualTo(expected.items);
      assertThat(states).extracting(LogState::logging).containsExactly(false, true);
    }
  }

  private static LogException.Kind kind(Path file) {
    return catchThrowableOfType(LogException.class, () -> BenchLog.open(file, Fixture.TIME).close())
        .kind();
  }

  private static void sql(Path file, String... statements) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }
}
