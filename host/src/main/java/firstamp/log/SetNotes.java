package firstamp.log;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * What is kept about a set in addition to its power-ups: values measured with the supply off, and
 * wires tried (log-schema.md, tables {@code cold_check} and {@code trial}).
 *
 * @param coldChecks oldest first
 * @param trials oldest first
 */
public record SetNotes(List<ColdCheck> coldChecks, List<Trial> trials) {
  /** Copies the lists. */
  public SetNotes {
    coldChecks = List.copyOf(coldChecks);
    trials = List.copyOf(trials);
  }

  /**
   * A value measured with the supply off.
   *
   * @param epochMs when
   * @param kind of measurement, in words
   * @param from point of one lead
   * @param to point of the other
   * @param value null = none (an open circuit)
   * @param unit SI symbol; may be null
   * @param note of the person; may be null
   */
  public record ColdCheck(
      long epochMs, String kind, String from, String to, Double value, String unit, String note) {}

  /**
   * A wire tried at a place.
   *
   * @param epochMs when
   * @param wire its name
   * @param place where
   * @param powerUp number of the power-up made for it; null = none, or no longer there
   * @param fieldsJson the rest, a JSON object
   */
  public record Trial(long epochMs, String wire, String place, Long powerUp, String fieldsJson) {}

  /**
   * Reads them.
   *
   * @throws LogException the log cannot be read
   */
  public static SetNotes of(BenchLog log, String setName) throws LogException {
    List<ColdCheck> checks = new ArrayList<>();
    List<Trial> trials = new ArrayList<>();
    try (Connection connection = log.reading()) {
      try (PreparedStatement select =
          connection.prepareStatement(
              "SELECT epoch_ms, kind, from_point, to_point, value, unit, note FROM cold_check"
                  + " WHERE set_name = ? ORDER BY epoch_ms, id")) {
        select.setString(1, setName);
        try (ResultSet row = select.executeQuery()) {
          while (row.next()) {
            double value = row.getDouble(5);
            Double measured = row.wasNull() ? null : (Double) value;
            checks.add(
                new ColdCheck(
                    row.getLong(1),
                    row.getString(2),
                    row.getString(3),
                    row.getString(4),
                    measured,
                    row.getString(6),
                    row.getString(7)));
          }
        }
      }
      try (PreparedStatement select =
          connection.prepareStatement(
              "SELECT epoch_ms, wire, place, power_up, fields FROM trial"
                  + " WHERE set_name = ? ORDER BY epoch_ms, id")) {
        select.setString(1, setName);
        try (ResultSet row = select.executeQuery()) {
          while (row.next()) {
            long number = row.getLong(4);
            Long powerUp = row.wasNull() ? null : (Long) number;
            trials.add(
                new Trial(
                    row.getLong(1), row.getString(2), row.getString(3), powerUp, row.getString(5)));
          }
        }
      }
      return new SetNotes(checks, trials);
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot read the notes in", log.file(), e);
    }
  }

  /** Keeps a cold check; several may be added, none is ever changed. */
  public static void add(BenchLog log, String setName, ColdCheck check) throws LogException {
    try (Connection connection = LogDatabase.openForWriting(log.file());
        PreparedStatement insert =
            connection.prepareStatement(
                "INSERT INTO cold_check (uuid, set_name, epoch_ms, kind, from_point, to_point,"
                    + " value, unit, note) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)")) {
      insert.setString(1, UUID.randomUUID().toString());
      insert.setString(2, setName);
      insert.setLong(3, check.epochMs());
      insert.setString(4, check.kind());
      insert.setString(5, check.from());
      insert.setString(6, check.to());
      insert.setObject(7, check.value());
      insert.setString(8, check.unit());
      insert.setString(9, check.note());
      insert.executeUpdate();
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot keep a cold check in", log.file(), e);
    }
  }

  /** Keeps a trial. */
  public static void add(BenchLog log, String setName, Trial trial) throws LogException {
    try (Connection connection = LogDatabase.openForWriting(log.file());
        PreparedStatement insert =
            connection.prepareStatement(
                "INSERT INTO trial (uuid, set_name, epoch_ms, wire, place, power_up, fields)"
                    + " VALUES (?, ?, ?, ?, ?, ?, ?)")) {
      insert.setString(1, UUID.randomUUID().toString());
      insert.setString(2, setName);
      insert.setLong(3, trial.epochMs());
      insert.setString(4, trial.wire());
      insert.setString(5, trial.place());
      insert.setObject(6, trial.powerUp());
      insert.setString(7, trial.fieldsJson());
      insert.executeUpdate();
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot keep a trial in", log.file(), e);
    }
  }
}
