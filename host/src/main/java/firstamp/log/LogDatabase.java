package firstamp.log;

import firstamp.log.LogException.Kind;
import firstamp.model.text.FailureWords;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import org.sqlite.SQLiteOpenMode;

/** Opens connections to a bench log and checks that the file is one. */
final class LogDatabase {
  /** No value in the file is longer: chunks are cut far below, sheets are small. */
  static final int LONGEST_VALUE_BYTES = 16 << 20;

  private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
  private static final int BUSY_MILLIS = 5000;

  /** Pages after which the WAL is written back: as many bytes as with SQLite's usual pages. */
  private static final int WRITE_BACK_PAGES = 4000;

  private LogDatabase() {}

  /** Reads in the driver with its native part, which the first connection has to wait for. */
  static void prepare() throws SQLException {
    try (Connection connection = harden(common().createConnection("jdbc:sqlite::memory:"));
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA user_version");
    }
  }

  /** A connection that writes. Commits are on the disk when they return (synchronous FULL). */
  static Connection openForWriting(Path file) throws SQLException {
    SQLiteConfig config = common();
    // A file that has gone is not created again: an empty one would take its place.
    config.resetOpenMode(SQLiteOpenMode.CREATE);
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    config.setJournalSizeLimit(64 << 20);
    return harden(
        config.createConnection("jdbc:sqlite:" + file.toAbsolutePath()),
        "PRAGMA wal_autocheckpoint = " + WRITE_BACK_PAGES);
  }

  /** A connection that only reads. */
  static Connection openForReading(Path file) throws SQLException {
    Path folder = file.toAbsolutePath().getParent();
    if (Files.isWritable(file) && Files.isWritable(folder)) {
      // One that could write also removes the WAL when it is the last to close; a read-only one
      // would leave it beside the log.
      return harden(
          common().createConnection("jdbc:sqlite:" + file.toAbsolutePath()),
          "PRAGMA query_only = ON");
    }
    return readOnly(file, !Files.isWritable(folder) && !hasWal(file));
  }

  /** A connection to a file from elsewhere, which nobody writes. */
  static Connection openUntrusted(Path file) throws SQLException {
    return readOnly(file, !hasWal(file));
  }

  private static Connection readOnly(Path file, boolean immutable) throws SQLException {
    SQLiteConfig config = common();
    config.setReadOnly(true);
    String uri = file.toAbsolutePath().toUri().getRawPath();
    return harden(
        config.createConnection(
            "jdbc:sqlite:file:" + uri + "?mode=ro" + (immutable ? "&immutable=1" : "")));
  }

  private static boolean hasWal(Path file) {
    return Files.exists(Path.of(file.toAbsolutePath() + "-wal"), LinkOption.NOFOLLOW_LINKS);
  }

  /** Makes the tables in a file that has none. */
  static void create(Path file) throws SQLException, IOException {
    SQLiteConfig config = common();
    config.setPageSize(1024);
    try (Connection connection = config.createConnection("jdbc:sqlite:" + file.toAbsolutePath())) {
      // Closed before the commit: the answer of a PRAGMA that is still open would forbid it.
      try (Statement statement = connection.createStatement()) {
        statement.execute("PRAGMA page_size = 1024");
        statement.execute("PRAGMA auto_vacuum = INCREMENTAL");
        statement.execute("PRAGMA journal_mode = WAL");
      }
      connection.setAutoCommit(false);
      LogSchema.make(connection);
      connection.commit();
    }
  }

  /** Looks at the first bytes only, before SQLite sees the file. */
  static void checkHeader(Path file) throws LogException {
    byte[] head;
    try (InputStream in = Files.newInputStream(file)) {
      head = in.readNBytes(100);
    } catch (IOException e) {
      throw new LogException(
          Kind.UNREADABLE,
          LogException.say(
              "log-database.cannot-read-check-the-permissions", file, FailureWords.worded(e)),
          e);
    }
    if (head.length < 100 || !ByteBuffer.wrap(head, 0, 16).equals(ByteBuffer.wrap(MAGIC))) {
      throw notALog(file, "it does not begin like a SQLite file", null);
    }
  }

  /** A failure of SQLite in words, with its kind. */
  static LogException failure(String what, Path file, SQLException e) {
    SQLiteErrorCode code =
        e instanceof SQLiteException s ? s.getResultCode() : SQLiteErrorCode.SQLITE_INTERNAL;
    int primary = code.code & 0xff;
    if (primary == SQLiteErrorCode.SQLITE_FULL.code) {
      return new LogException(
          Kind.FULL, LogException.say("log-database.no-room-on-the-disk", what, file), e);
    }
    if (primary == SQLiteErrorCode.SQLITE_READONLY.code
        || primary == SQLiteErrorCode.SQLITE_PERM.code) {
      return new LogException(
          Kind.READ_ONLY, LogException.say("log-database.the-file-or-its-folder", what, file), e);
    }
    if (primary == SQLiteErrorCode.SQLITE_CANTOPEN.code && !Files.exists(file)) {
      return gone(what, file, e);
    }
    if (primary == SQLiteErrorCode.SQLITE_CANTOPEN.code) {
      return new LogException(
          Kind.READ_ONLY,
          LogException.say("log-database.cannot-be-opened-check-that", what, file),
          e);
    }
    if (primary == SQLiteErrorCode.SQLITE_BUSY.code
        || primary == SQLiteErrorCode.SQLITE_LOCKED.code) {
      return new LogException(
          Kind.BUSY,
          LogException.say("log-database.another-program-holds-it-close", what, file),
          e);
    }
    if (primary == SQLiteErrorCode.SQLITE_NOTADB.code) {
      return notALog(file, "SQLite does not know it as its own", e);
    }
    if (primary == SQLiteErrorCode.SQLITE_CORRUPT.code
        || primary == SQLiteErrorCode.SQLITE_TOOBIG.code
        || primary == SQLiteErrorCode.SQLITE_MISMATCH.code
        || primary == SQLiteErrorCode.SQLITE_ERROR.code) {
      return new LogException(
          Kind.DAMAGED,
          LogException.say(
              "log-database.damaged-take-the-newest-backup", what, file, damage(primary)),
          e);
    }
    return new LogException(
        Kind.IO,
        LogException.say("log-database.the-disk-or-the-database", what, file, code.code),
        e);
  }

  static LogException gone(String what, Path file, SQLException e) {
    return new LogException(
        Kind.GONE, LogException.say("log-database.the-file-is-gone-put", what, file), e);
  }

  /** In words, as nobody at a bench knows the database's own. */
  private static String damage(int primary) {
    if (primary == SQLiteErrorCode.SQLITE_CORRUPT.code) {
      return "its pages contradict each other";
    }
    return primary == SQLiteErrorCode.SQLITE_ERROR.code
        ? "its tables are not those of a bench log"
        : "a value in it is none that Firstamp writes";
  }

  /** Gives free pages back to the disk. */
  static void returnFreePages(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      // The driver steps to the end only here; execute() steps once, which returns one page.
      statement.executeUpdate("PRAGMA incremental_vacuum");
    }
  }

  static long number(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      return row.next() ? row.getLong(1) : 0;
    }
  }

  static LogException notALog(Path file, String why, Throwable cause) {
    return new LogException(
        Kind.NOT_A_LOG, LogException.say("log-database.is-not-a-bench-log", file, why), cause);
  }

  private static SQLiteConfig common() {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(BUSY_MILLIS);
    config.enforceForeignKeys(true);
    config.enableLoadExtension(false);
    config.setPragma(SQLiteConfig.Pragma.LIMIT_LENGTH, Integer.toString(LONGEST_VALUE_BYTES));
    config.setPragma(SQLiteConfig.Pragma.MMAP_SIZE, "0");
    return config;
  }

  private static Connection harden(Connection connection, String... more) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA trusted_schema = OFF");
      statement.execute("PRAGMA cell_size_check = ON");
      for (String pragma : more) {
        statement.execute(pragma);
      }
    } catch (SQLException e) {
      connection.close();
      throw e;
    }
    return connection;
  }
}
