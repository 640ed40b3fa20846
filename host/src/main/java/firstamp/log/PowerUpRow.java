package firstamp.log;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/** The row of a power-up as it begins, and the calibration it was measured with. */
final class PowerUpRow {
  private static final String SQL =
      "INSERT INTO power_up (uuid, label, set_name, started_epoch_ms, stream, probe_kind, hello,"
          + " calibration, sheet, effective_sheet, limits, room_celsius, trial_wire, trial_place,"
          + " rules_version, state) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,'open')";

  private PowerUpRow() {}

  /** Puts it in and gives its number. */
  static long insert(Connection connection, PowerUpHeader header, EventCodec codec)
      throws SQLException {
    Object[] values = {
      header.uuid(),
      header.label(),
      header.setName(),
      header.startedEpochMs(),
      header.stream().id(),
      header.hello().kind(),
      codec.json(header.hello()),
      calibration(connection, codec.json(header.hello().calibration())),
      header.sheetJson(),
      header.effectiveSheetJson(),
      header.limitsJson(),
      header.roomCelsius(),
      header.trialWire(),
      header.trialPlace(),
      header.rulesVersion()
    };
    try (PreparedStatement insert = connection.prepareStatement(SQL)) {
      for (int k = 0; k < values.length; k++) {
        insert.setObject(k + 1, values[k]);
      }
      insert.executeUpdate();
    }
    return LogDatabase.number(connection, "SELECT last_insert_rowid()");
  }

  /** Number of a calibration; the same one is kept once. */
  static long calibration(Connection connection, String json) throws SQLException {
    try (PreparedStatement insert =
            connection.prepareStatement("INSERT OR IGNORE INTO calibration (fields) VALUES (?)");
        PreparedStatement query =
            connection.prepareStatement("SELECT id FROM calibration WHERE fields = ?")) {
      insert.setString(1, json);
      insert.executeUpdate();
      query.setString(1, json);
      try (ResultSet row = query.executeQuery()) {
        row.next();
        return row.getLong(1);
      }
    }
  }
}
