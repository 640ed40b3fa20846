package firstamp.log;

import firstamp.log.LogException.Kind;
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
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Opens connections to a bench log and holds the file against what a bench log must be. */
final class LogDatabase {
  /** "FST1": marks a SQLite file as a bench log. */
  static final int APPLICATION_ID = 0x46535431;

  /** Number of the newest schema that this program writes. */
  static final int SCHEMA = 1;

  /** No value in the file is longer: chunks are cut far below, sheets are small. */
  static final int LONGEST_VALUE_BYTES = 16 << 20;

  private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
  private static final int BUSY_MILLIS = 5000;

  private LogDatabase() {}

  /** A connection that writes. Commits are on the disk when they return (synchronous FULL). */
  static Connection openForWriting(Path file) throws SQLException {
    SQLiteConfig config = common();
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    config.setJournalSizeLimit(64 << 20);
    Connection connection = config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
    return harden(connection);
  }

  /** A connection that only reads. */
  static Connection openForReading(Path file) throws SQLException {
    Path folder = file.toAbsolutePath().getParent();
    if (Files.isWritable(file) && Files.isWritable(folder)) {
      // One that could write also removes the WAL when it is the last to close; a read-only one
      // would leave it beside the log.
      Connection connection = common().createConnection("jdbc:sqlite:" + file.toAbsolutePath());
      try (Statement statement = harden(connection).createStatement()) {
        statement.execute("PRAGMA query_only = ON");
      }
      return connection;
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
    try (Connection connection = config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA page_size = 1024");
      statement.execute("PRAGMA auto_vacuum = INCREMENTAL");
      statement.execute("PRAGMA journal_mode = WAL");
      connection.setAutoCommit(false);
      for (String sql : schemaStatements()) {
        statement.execute(sql);
      }
      statement.execute("PRAGMA application_id = " + APPLICATION_ID);
      statement.execute("PRAGMA user_version = " + SCHEMA);
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
          "cannot read " + file + ": " + e.getMessage() + "; check the permissions of the file",
          e);
    }
    if (head.length < 100 || !ByteBuffer.wrap(head, 0, 16).equals(ByteBuffer.wrap(MAGIC))) {
      throw notALog(file, "it does not begin like a SQLite file", null);
    }
  }

  /**
   * Holds application id, schema number and table list against what is expected.
   *
   * @return the schema number
   */
  static int checkSchema(Connection connection, Path file) throws SQLException, LogException {
    long id = number(connection, "PRAGMA application_id");
    if (id == 0 && number(connection, "PRAGMA page_count") == 0) {
      throw notALog(file, "it is empty", null);
    }
    if (id != APPLICATION_ID) {
      throw notALog(file, "it is a SQLite file of another program", null);
    }
    int schema = (int) number(connection, "PRAGMA user_version");
    if (schema > SCHEMA) {
      throw new LogException(
          Kind.NEWER,
          file
              + " has schema "
              + schema
              + ", this program knows up to "
              + SCHEMA
              + "; open it with a newer version");
    }
    if (schema < 1) {
      throw notALog(file, "its schema number is " + schema, null);
    }
    Map<String, String> found = tables(connection);
    Map<String, String> expected = expectedTables();
    if (!found.equals(expected)) {
      throw new LogException(
          Kind.DAMAGED,
          file
              + " is not laid out as a bench log of schema "
              + schema
              + ": "
              + firstDifference(expected, found)
              + "; take the newest backup, or export what can be read to a new file");
    }
    return schema;
  }

  /** A failure of SQLite in words, with its kind. */
  static LogException failure(String what, Path file, SQLException e) {
    SQLiteErrorCode code =
        e instanceof SQLiteException s ? s.getResultCode() : SQLiteErrorCode.SQLITE_INTERNAL;
    int primary = code.code & 0xff;
    if (primary == SQLiteErrorCode.SQLITE_FULL.code) {
      return new LogException(
          Kind.FULL, what + " " + file + ": no room on the disk; make room there", e);
    }
    if (primary == SQLiteErrorCode.SQLITE_READONLY.code
        || primary == SQLiteErrorCode.SQLITE_PERM.code) {
      return new LogException(
          Kind.READ_ONLY,
          what
              + " "
              + file
              + ": the file or its folder cannot be written; check their permissions"
              + " or name another file with --log",
          e);
    }
    if (primary == SQLiteErrorCode.SQLITE_CANTOPEN.code) {
      return new LogException(
          Kind.READ_ONLY,
          what
              + " "
              + file
              + ": cannot be opened; check that its folder is there and can be"
              + " written, or name another file with --log",
          e);
    }
    if (primary == SQLiteErrorCode.SQLITE_BUSY.code
        || primary == SQLiteErrorCode.SQLITE_LOCKED.code) {
      return new LogException(
          Kind.BUSY, what + " " + file + ": another program holds it; close that and try again", e);
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
          what
              + " "
              + file
              + ": damaged ("
              + e.getMessage()
              + "); take the newest backup, or"
              + " export what can be read to a new file",
          e);
    }
    return new LogException(
        Kind.IO, what + " " + file + ": " + e.getMessage() + "; check the disk", e);
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

  private static LogException notALog(Path file, String why, Throwable cause) {
    return new LogException(
        Kind.NOT_A_LOG,
        file
            + " is not a bench log: "
            + why
            + "; expected a file that Firstamp has made; name"
            + " another one",
        cause);
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

  private static Connection harden(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA trusted_schema = OFF");
      statement.execute("PRAGMA cell_size_check = ON");
    } catch (SQLException e) {
      connection.close();
      throw e;
    }
    return connection;
  }

  private static Map<String, String> tables(Connection connection) throws SQLException {
    Map<String, String> tables = new TreeMap<>();
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery("SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL")) {
      while (row.next()) {
        tables.put(row.getString(1), flat(row.getString(2)));
        if (tables.size() > 100) {
          break;
        }
      }
    }
    tables.keySet().removeIf(name -> name.startsWith("sqlite_"));
    return tables;
  }

  private static Map<String, String> expectedTables() {
    Map<String, String> tables = new TreeMap<>();
    for (String sql : schemaStatements()) {
      String flat = flat(sql);
      tables.put(flat.split(" ")[2], flat);
    }
    return tables;
  }

  private static String firstDifference(Map<String, String> expected, Map<String, String> found) {
    Map<String, String> rest = new LinkedHashMap<>(found);
    for (Map.Entry<String, String> table : expected.entrySet()) {
      String sql = rest.remove(table.getKey());
      if (sql == null) {
        return "\"" + table.getKey() + "\" is missing";
      }
      if (!sql.equals(table.getValue())) {
        return "\"" + table.getKey() + "\" has another definition";
      }
    }
    String more = rest.keySet().iterator().next();
    return "\"" + more.substring(0, Math.min(40, more.length())) + "\" does not belong there";
  }

  /** The statements of the schema file, comments taken off. */
  static String[] schemaStatements() {
    try (InputStream in =
        LogDatabase.class.getResourceAsStream("/schemas/log-v" + SCHEMA + ".sql")) {
      if (in == null) {
        throw new IllegalStateException("schemas/log-v" + SCHEMA + ".sql is not in the program");
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      StringBuilder kept = new StringBuilder();
      text.lines().filter(line -> !line.startsWith("--")).forEach(l -> kept.append(l).append('\n'));
      return kept.toString().strip().split(";\\s*\n|;$");
    } catch (IOException e) {
      throw new IllegalStateException("the schema in the program cannot be read", e);
    }
  }

  private static String flat(String sql) {
    return sql.strip().replaceAll("\\s+", " ");
  }
}
