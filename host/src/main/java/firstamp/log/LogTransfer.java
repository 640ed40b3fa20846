package firstamp.log;

import firstamp.log.LogException.Kind;
import firstamp.model.TimeSource;
import firstamp.model.text.FailureWords;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.ProgressHandler;

/** Power-ups to files of their own and back; files that come from elsewhere are not trusted. */
final class LogTransfer {
  private static final long CHECK_NANOS = 120_000_000_000L;

  private LogTransfer() {}

  /** What fills a new file. */
  @FunctionalInterface
  interface Filler {
    void fill(Path file) throws SQLException, LogException, IOException;
  }

  /** Makes a file aside and moves it into place; one that is there already stays. */
  static void make(Path target, Filler filler) throws LogException {
    Path absolute = target.toAbsolutePath();
    if (Files.exists(absolute, LinkOption.NOFOLLOW_LINKS)) {
      throw exists(absolute);
    }
    Path aside = null;
    try {
      aside = Files.createTempFile(absolute.getParent(), ".firstamp-new", ".db");
      filler.fill(aside);
      // A hard link fails where the target has come meanwhile; a move would overwrite it.
      try {
        Files.createLink(absolute, aside);
      } catch (UnsupportedOperationException e) {
        Files.move(aside, absolute);
      }
    } catch (FileAlreadyExistsException e) {
      throw exists(absolute);
    } catch (IOException e) {
      throw new LogException(
          Kind.READ_ONLY,
          LogException.say(
              "log-transfer.cannot-write-check-that-its", absolute, FailureWords.worded(e)),
          e);
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot write", absolute, e);
    } finally {
      remove(aside);
    }
  }

  static void export(BenchLog log, List<Long> numbers, Path target) throws LogException {
    make(
        target,
        file -> {
          LogDatabase.create(file);
          try (Connection from = log.reading();
              Connection to = LogDatabase.openForWriting(file)) {
            to.setAutoCommit(false);
            for (long number : numbers) {
              RowCopy.copy(from, number, to);
              to.commit();
            }
            to.setAutoCommit(true);
            try (Statement statement = to.createStatement()) {
              // Alone in any folder, writable or not: no WAL is ever needed beside it.
              statement.execute("PRAGMA journal_mode = DELETE");
            }
          }
        });
  }

  /** Copies the whole log, also while it is written. */
  static void backup(BenchLog log, Path target) throws LogException {
    make(
        target,
        file -> {
          Files.delete(file);
          try (Connection from = log.reading()) {
            copy(from, file);
          }
        });
  }

  /**
   * Copies a log as it is into a new file beside it, before it is brought forward.
   *
   * @return the new file: {@code bench.db} of schema 2 becomes {@code bench-schema-2.db}
   */
  static Path backupBeside(Path file, int schema) throws LogException {
    String name = file.getFileName().toString();
    int dot = name.lastIndexOf('.') > 0 ? name.lastIndexOf('.') : name.length();
    for (int number = 1; ; number++) {
      String again = number == 1 ? "" : "-" + number;
      Path target =
          file.resolveSibling(
              name.substring(0, dot) + "-schema-" + schema + again + name.substring(dot));
      if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
        continue;
      }
      make(
          target,
          aside -> {
            Files.delete(aside);
            try (Connection from = LogDatabase.openForReading(file)) {
              copy(from, aside);
            }
          });
      return target;
    }
  }

  private static void copy(Connection from, Path target) throws SQLException {
    try (Statement open = from.createStatement();
        PreparedStatement statement = from.prepareStatement("VACUUM INTO ?")) {
      // It writes the new file only, but SQLite counts it as writing.
      open.execute("PRAGMA query_only = OFF");
      statement.setString(1, target.toString());
      statement.execute();
    }
  }

  /** Every check on a file from elsewhere, then its power-ups into the log. */
  static BenchLog.Imported importInto(Path source, Path target, EventCodec codec, TimeSource time)
      throws LogException {
    LogFile.checkKind(source);
    LogDatabase.checkHeader(source);
    List<Long> numbers = new ArrayList<>();
    List<String> skipped = new ArrayList<>();
    try (Connection from = LogDatabase.openUntrusted(source)) {
      limitTime(from, time);
      LogSchema.check(from, source);
      List<PowerUpEntry> entries = EntryRows.of(from, "ORDER BY id");
      List<String> findings = new LogCheck(from, source, codec).run(entries);
      if (!findings.isEmpty()) {
        throw new LogException(
            Kind.DAMAGED,
            LogException.say(
                "log-transfer.is-damaged-nothing-was-taken",
                source,
                findings.get(0),
                (findings.size() > 1 ? " (and " + (findings.size() - 1) + " more)" : "")));
      }
      try (Connection to = LogDatabase.openForWriting(target)) {
        to.setAutoCommit(false);
        for (PowerUpEntry entry : entries) {
          if (known(to, entry.uuid())) {
            skipped.add(entry.uuid());
          } else {
            numbers.add(RowCopy.copy(from, entry.number(), to));
          }
        }
        to.commit();
      }
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot take power-ups from", source, e);
    }
    return new BenchLog.Imported(List.copyOf(numbers), List.copyOf(skipped));
  }

  private static void limitTime(Connection connection, TimeSource time) throws SQLException {
    long until = time.monotonicNanos() + CHECK_NANOS;
    ProgressHandler.setHandler(
        connection,
        100_000,
        new ProgressHandler() {
          @Override
          protected int progress() {
            return time.monotonicNanos() > until ? 1 : 0;
          }
        });
  }

  private static boolean known(Connection connection, String uuid) throws SQLException {
    try (PreparedStatement query =
        connection.prepareStatement("SELECT 1 FROM power_up WHERE uuid = ?")) {
      query.setString(1, uuid);
      try (ResultSet row = query.executeQuery()) {
        return row.next();
      }
    }
  }

  private static LogException exists(Path target) {
    return new LogException(
        Kind.EXISTS, LogException.say("log-transfer.is-there-already-and-was", target));
  }

  private static void remove(Path aside) {
    if (aside == null) {
      return;
    }
    for (String end : new String[] {"", "-wal", "-shm", "-journal"}) {
      try {
        Files.deleteIfExists(Path.of(aside + end));
      } catch (IOException e) {
        aside.toFile().deleteOnExit();
      }
    }
  }
}
