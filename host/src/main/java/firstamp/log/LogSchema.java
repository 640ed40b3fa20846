package firstamp.log;

import firstamp.log.LogException.Kind;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;

/**
 * The layout of a bench log by its schema number: creates it, checks a file against it, and
 * migrates an older file.
 *
 * <p>The statements are in {@code schemas/log-vN.sql}, the step from the one before in {@code
 * schemas/log-vM-to-vN.sql}. A migrated file is laid out exactly like a new one.
 */
final class LogSchema {
  /** Number of the schema that this program writes; it reads every one before. */
  static final int NEWEST = 3;

  /** From this schema on a power-up names its trial itself. */
  static final int TRIALS = 3;

  /** "FST1": marks a SQLite file as a bench log. */
  private static final int APPLICATION_ID = 0x46535431;

  private static final int MOST_NAMES = 100;

  private LogSchema() {}

  /** Makes the tables in an empty file, within the caller's transaction. */
  static void make(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      for (String sql : statements("log-v" + NEWEST + ".sql")) {
        statement.execute(sql);
      }
      statement.execute("PRAGMA application_id = " + APPLICATION_ID);
      statement.execute("PRAGMA user_version = " + NEWEST);
    }
  }

  /**
   * Compares application id, schema number and table list with what is expected.
   *
   * @return the schema number
   */
  static int check(Connection connection, Path file) throws SQLException, LogException {
    long id = LogDatabase.number(connection, "PRAGMA application_id");
    if (id == 0 && LogDatabase.number(connection, "PRAGMA page_count") == 0) {
      throw LogDatabase.notALog(file, "it is empty", null);
    }
    if (id != APPLICATION_ID) {
      throw LogDatabase.notALog(file, "it is a SQLite file of another program", null);
    }
    int schema = (int) LogDatabase.number(connection, "PRAGMA user_version");
    if (schema > NEWEST) {
      throw new LogException(
          Kind.NEWER,
          LogException.say("log-schema.has-schema-this-program-knows", file, schema, NEWEST));
    }
    if (schema < 1) {
      throw LogDatabase.notALog(file, "its schema number is " + schema, null);
    }
    Map<String, String> found = found(connection);
    Map<String, String> expected = expected(schema);
    if (!found.equals(expected)) {
      throw new LogException(
          Kind.DAMAGED,
          LogException.say(
              "log-schema.is-not-laid-out-as", file, schema, firstDifference(expected, found)));
    }
    return schema;
  }

  /**
   * Migrates a file to the newest schema: completely, or not at all if it is interrupted.
   *
   * @param schema that it was checked to have
   */
  static void bringForward(Connection connection, int schema) throws SQLException {
    if (schema == NEWEST) {
      return;
    }
    connection.setAutoCommit(false);
    try (Statement statement = connection.createStatement()) {
      // Another program may have migrated it since the check.
      int from = (int) LogDatabase.number(connection, "PRAGMA user_version");
      for (int to = from + 1; to <= NEWEST; to++) {
        for (String sql : statements("log-v" + (to - 1) + "-to-v" + to + ".sql")) {
          statement.execute(sql);
        }
      }
      if (from < TRIALS) {
        LabelledTrial.fillAll(connection);
      }
      statement.execute("PRAGMA user_version = " + NEWEST);
    }
    connection.commit();
    connection.setAutoCommit(true);
  }

  private static Map<String, String> found(Connection connection) throws SQLException {
    Map<String, String> names = new TreeMap<>();
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery("SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL")) {
      while (row.next() && names.size() <= MOST_NAMES) {
        names.put(row.getString(1), flat(row.getString(2)));
      }
    }
    names.keySet().removeIf(name -> name.startsWith("sqlite_"));
    return names;
  }

  private static Map<String, String> expected(int schema) {
    Map<String, String> names = new TreeMap<>();
    for (String sql : statements("log-v" + schema + ".sql")) {
      String flat = flat(sql);
      names.put(flat.split(" ")[2], flat);
    }
    return names;
  }

  private static String firstDifference(Map<String, String> expected, Map<String, String> found) {
    Map<String, String> rest = new LinkedHashMap<>(found);
    for (Map.Entry<String, String> entry : expected.entrySet()) {
      String sql = rest.remove(entry.getKey());
      if (sql == null) {
        return "\"" + entry.getKey() + "\" is missing";
      }
      if (!sql.equals(entry.getValue())) {
        return "\"" + entry.getKey() + "\" has another definition";
      }
    }
    String more = rest.keySet().iterator().next();
    return "\"" + more.substring(0, Math.min(40, more.length())) + "\" does not belong there";
  }

  /** The statements of a file among the schemas, comments taken off. */
  private static String[] statements(String name) {
    try (InputStream in = LogSchema.class.getResourceAsStream("/schemas/" + name)) {
      if (in == null) {
        throw new IllegalStateException("schemas/" + name + " is not in the program");
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      StringBuilder kept = new StringBuilder();
      text.lines().filter(line -> !line.startsWith("--")).forEach(l -> kept.append(l).append('\n'));
      return kept.toString().strip().split(";\\s*\n|;$");
    } catch (IOException e) {
      throw new IllegalStateException("the schemas in the program cannot be read", e);
    }
  }

  private static String flat(String sql) {
    // A column that was added stands behind a line break, one of a new table before it.
    return sql.strip().replaceAll("\\s+", " ").replace(" ,", ",").replace(" )", ")");
  }
}
