package firstamp.log;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/** Copies the rows of one power-up from one log to another. */
final class RowCopy {
  private static final String[] TABLES = {
    "stretch",
    "chunk",
    "tail",
    "event",
    "alarm",
    "trip",
    "capture",
    "mark",
    "gap",
    "clock_fit",
    "second",
    "span_level",
    "finding"
  };

  private RowCopy() {}

  /** Copies a power-up with everything that belongs to it; returns its number in the target. */
  static long copy(Connection from, long number, Connection to) throws SQLException {
    long calibration = calibration(from, number, to);
    long[] target = {0};
    try (PreparedStatement query = from.prepareStatement("SELECT * FROM power_up WHERE id = ?")) {
      query.setLong(1, number);
      try (ResultSet row = query.executeQuery()) {
        if (row.next()) {
          insert(row, to, "power_up", "calibration", calibration);
          target[0] = LogDatabase.number(to, "SELECT last_insert_rowid()");
        }
      }
    }
    boolean older = LogDatabase.number(from, "PRAGMA user_version") < LogSchema.TRIALS;
    if (older && target[0] > 0) {
      LabelledTrial.fill(to, target[0]);
    }
    for (String table : TABLES) {
      if (older && table.equals("finding")) {
        continue;
      }
      try (PreparedStatement query =
          from.prepareStatement("SELECT * FROM " + table + " WHERE power_up = ?")) {
        query.setLong(1, number);
        try (ResultSet row = query.executeQuery()) {
          while (row.next()) {
            insert(row, to, table, "power_up", target[0]);
          }
        }
      }
    }
    return target[0];
  }

  private static long calibration(Connection from, long number, Connection to) throws SQLException {
    try (PreparedStatement query =
        from.prepareStatement(
            "SELECT c.fields FROM power_up p JOIN calibration c ON c.id = p.calibration WHERE p.id"
                + " = ?")) {
      query.setLong(1, number);
      try (ResultSet row = query.executeQuery()) {
        return PowerUpRow.calibration(to, row.next() ? row.getString(1) : null);
      }
    }
  }

  /** Every column but the row's own number, with one value changed. */
  private static void insert(ResultSet row, Connection to, String table, String changed, long value)
      throws SQLException {
    StringBuilder names = new StringBuilder();
    StringBuilder marks = new StringBuilder();
    int columns = row.getMetaData().getColumnCount();
    Object[] values = new Object[columns];
    int used = 0;
    for (int c = 1; c <= columns; c++) {
      String name = row.getMetaData().getColumnName(c);
      if (!name.equals("id")) {
        names.append(used == 0 ? "" : ", ").append(name);
        marks.append(used == 0 ? "?" : ",?");
        values[used++] = name.equals(changed) ? value : row.getObject(c);
      }
    }
    String sql = "INSERT INTO " + table + " (" + names + ") VALUES (" + marks + ")";
    Rows.update(to, sql, java.util.Arrays.copyOf(values, used));
  }
}
