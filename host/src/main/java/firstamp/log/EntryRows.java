package firstamp.log;

import firstamp.model.RulesVersion;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** The rows of power-ups as the list shows them, from a log of any schema. */
final class EntryRows {
  private static final String COLUMNS =
      "SELECT id, uuid, label, set_name, started_epoch_ms, ended_epoch_ms, stream, probe_kind,"
          + " state, outcome, ended, summary, as_found, baseline, ";

  private static final String TRIALS = "trial_wire, trial_place, rules_version FROM power_up ";

  /** Where the label alone says what was tried. */
  private static final String LABELS = "effective_sheet FROM power_up ";

  private EntryRows() {}

  /**
   * Reads them.
   *
   * @param which the end of the statement: WHERE, ORDER BY
   * @param values for its question marks
   */
  static List<PowerUpEntry> of(Connection connection, String which, Object... values)
      throws SQLException {
    boolean older = LogDatabase.number(connection, "PRAGMA user_version") < LogSchema.TRIALS;
    List<PowerUpEntry> entries = new ArrayList<>();
    try (PreparedStatement query =
        connection.prepareStatement(COLUMNS + (older ? LABELS : TRIALS) + which)) {
      for (int k = 0; k < values.length; k++) {
        query.setObject(k + 1, values[k]);
      }
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          entries.add(older ? labelled(row) : trying(row));
        }
      }
    }
    return entries;
  }

  private static PowerUpEntry trying(ResultSet row) throws SQLException {
    return entry(
        row,
        row.getString("trial_wire"),
        row.getString("trial_place"),
        row.getInt("rules_version"));
  }

  private static PowerUpEntry labelled(ResultSet row) throws SQLException {
    LabelledTrial trial =
        LabelledTrial.of(row.getString("label"), row.getString("effective_sheet"));
    return entry(
        row,
        trial == null ? null : trial.wire(),
        trial == null ? null : trial.place(),
        RulesVersion.BEFORE);
  }

  private static PowerUpEntry entry(ResultSet row, String wire, String place, int rulesVersion)
      throws SQLException {
    long ended = row.getLong("ended_epoch_ms");
    Long endedEpochMs = row.wasNull() ? null : ended;
    return new PowerUpEntry(
        row.getLong("id"),
        row.getString("uuid"),
        row.getString("label"),
        row.getString("set_name"),
        row.getLong("started_epoch_ms"),
        endedEpochMs,
        "raw".equals(row.getString("stream"))
            ? PowerUpHeader.Stream.RAW
            : PowerUpHeader.Stream.REDUCED,
        row.getString("probe_kind"),
        !"open".equals(row.getString("state")),
        row.getString("outcome"),
        row.getString("ended"),
        row.getString("summary"),
        row.getBoolean("as_found"),
        row.getBoolean("baseline"),
        wire,
        place,
        rulesVersion);
  }
}
