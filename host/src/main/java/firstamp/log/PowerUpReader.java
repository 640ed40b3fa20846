package firstamp.log;

import firstamp.log.LogException.Kind;
import firstamp.log.stream.Overview;
import firstamp.log.stream.StreamSink;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Priority;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.samples.Calibration;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Reads one power-up of a bench log; memory does not grow with the length of the power-up. */
public final class PowerUpReader {
  private final BenchLog log;
  private final PowerUpEntry entry;
  private final EventCodec codec;

  PowerUpReader(BenchLog log, PowerUpEntry entry, EventCodec codec) {
    this.log = log;
    this.entry = entry;
    this.codec = codec;
  }

  /** What the list shows, the stored summary among it. */
  public PowerUpEntry entry() {
    return entry;
  }

  /**
   * What was known at the start, with the calibration.
   *
   * @throws LogException it cannot be read
   */
  public PowerUpHeader header() throws LogException {
    try (Connection connection = log.reading();
        PreparedStatement query =
            connection.prepareStatement(
                "SELECT hello, sheet, effective_sheet, limits, room_celsius, c.fields"
                    + " FROM power_up p JOIN calibration c ON c.id = p.calibration"
                    + " WHERE p.id = ?")) {
      query.setLong(1, entry.number());
      try (ResultSet row = query.executeQuery()) {
        if (!row.next()) {
          throw new LogException(
              Kind.MISSING,
              LogException.say(
                  "power-up-reader.power-up-is-no-longer", entry.number(), log.file()));
        }
        double celsius = row.getDouble(5);
        Double roomCelsius = row.wasNull() ? null : celsius;
        ProbeHello hello = codec.value(row.getString(1), ProbeHello.class);
        return new PowerUpHeader(
            entry.uuid(),
            entry.label(),
            entry.setName(),
            entry.startedEpochMs(),
            entry.stream(),
            hello,
            row.getString(2),
            row.getString(3),
            row.getString(4),
            roomCelsius,
            entry.trialWire(),
            entry.trialPlace(),
            entry.rulesVersion());
      }
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot read", log.file(), e);
    }
  }

  /** The calibration the probe had. */
  public Calibration calibration() throws LogException {
    return header().hello().calibration();
  }

  /**
   * Gives the stream back in its original order: conversions or readings, and each event at its
   * place.
   *
   * @throws LogException part of it cannot be read; what came before has been given
   */
  public void replay(StreamSink sink) throws LogException {
    try (Connection connection = log.reading()) {
      new StreamReader(new Statements(connection), log.file(), entry, codec).replay(sink);
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot read", log.file(), e);
    }
  }

  /** Every event in its order, without the stream between: quick also for a long power-up. */
  public List<ProbeEvent> events() throws LogException {
    try (Connection connection = log.reading()) {
      return range(connection).events(codec);
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot read", log.file(), e);
    }
  }

  /** Index of the first conversion kept and the one behind the last; equal = there is none. */
  public long[] extent() throws LogException {
    try (Connection connection = log.reading()) {
      return range(connection).extent();
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot read", log.file(), e);
    }
  }

  /**
   * Gives the conversions or readings of a span, without events.
   *
   * @param fromIndex conversion index of the start @param toIndex conversion index of the end, not
   *     given
   */
  public void values(long fromIndex, long toIndex, StreamSink sink) throws LogException {
    try (Connection connection = log.reading()) {
      range(connection).values(fromIndex, toIndex, sink);
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot read", log.file(), e);
    }
  }

  private RangeReader range(Connection connection) {
    Statements statements = new Statements(connection);
    return new RangeReader(
        connection, entry, new StreamReader(statements, log.file(), entry, codec));
  }

  /**
   * A span in columns, for drawing; takes about as long for a day as for a minute.
   *
   * @param fromIndex conversion index of the left edge
   * @param toIndex conversion index of the right edge
   * @param columns 1 or more
   */
  public Overview overview(long fromIndex, long toIndex, int columns) throws LogException {
    if (columns < 1 || columns > 100_000 || toIndex <= fromIndex) {
      throw new IllegalArgumentException(
          "overview of "
              + columns
              + " columns from "
              + fromIndex
              + " to "
              + toIndex
              + ", expected at least one column and a span that is not empty");
    }
    try {
      return log.read(
          statements -> {
            StreamReader reader = new StreamReader(statements, log.file(), entry, codec);
            return new OverviewReader(statements, entry, reader).read(fromIndex, toIndex, columns);
          });
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot read", log.file(), e);
    }
  }

  /** Every transition of every alarm, in their order. */
  public List<Alarm> alarmTransitions() throws LogException {
    List<Alarm> alarms = new ArrayList<>();
    try (Connection connection = log.reading();
        PreparedStatement query =
            connection.prepareStatement(
                "SELECT * FROM alarm WHERE power_up = ? ORDER BY transition")) {
      query.setLong(1, entry.number());
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          alarms.add(alarm(row));
        }
      }
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot read", log.file(), e);
    }
    return alarms;
  }

  /** Conversions that never came, and those that found no room while the disk was full. */
  public List<ProbeEvent.Gap> gaps() throws LogException {
    List<ProbeEvent.Gap> gaps = new ArrayList<>();
    try (Connection connection = log.reading();
        PreparedStatement query =
            connection.prepareStatement(
                "SELECT first_index, conversions FROM gap WHERE power_up = ? ORDER BY rowid")) {
      query.setLong(1, entry.number());
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          long first = row.getLong(1);
          gaps.add(
              new ProbeEvent.Gap(
                  firstamp.model.samples.SamplePlan.microsOf(first), first, row.getLong(2)));
        }
      }
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot read", log.file(), e);
    }
    return gaps;
  }

  /** Bytes of this power-up in the file: its values and about what their rows need. */
  public long bytes() throws LogException {
    String sql =
        "SELECT (SELECT coalesce(sum(length(data) + 40), 0) FROM chunk WHERE power_up = ?1)"
            + " + (SELECT coalesce(sum(length(data) + 20), 0) FROM tail WHERE power_up = ?1)"
            + " + (SELECT coalesce(sum(length(data) + 20), 0) FROM span_level WHERE power_up = ?1)"
            + " + (SELECT 120 * count(*) FROM second WHERE power_up = ?1)"
            + " + (SELECT coalesce(sum(length(fields) + 20), 0) FROM event WHERE power_up = ?1)"
            + " + (SELECT coalesce(sum(length(text) + 120), 0) FROM alarm WHERE power_up = ?1)"
            + " + (SELECT length(sheet) + length(effective_sheet) + length(limits) + length(hello)"
            + " + coalesce(length(summary), 0) FROM power_up WHERE id = ?1)";
    try (Connection connection = log.reading();
        PreparedStatement query = connection.prepareStatement(sql)) {
      query.setLong(1, entry.number());
      try (ResultSet row = query.executeQuery()) {
        return row.next() ? row.getLong(1) : 0;
      }
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot read", log.file(), e);
    }
  }

  private Alarm alarm(ResultSet row) throws SQLException, LogException {
    double value = row.getDouble("value");
    Double valueOrNull = row.wasNull() ? null : value;
    double limit = row.getDouble("limit_value");
    Double limitOrNull = row.wasNull() ? null : limit;
    return new Alarm(
        row.getInt("number"),
        row.getString("rule"),
        row.getInt("rail"),
        row.getString("rail_name"),
        row.getDouble("at_ms"),
        row.getDouble("since_ms"),
        row.getDouble("changed_ms"),
        priority(row.getString("priority")),
        state(row.getString("state")),
        valueOrNull,
        row.getBoolean("at_most"),
        limitOrNull,
        row.getString("unit"),
        row.getString("text"),
        row.getInt("folded_under"));
  }

  private Priority priority(String id) throws LogException {
    for (Priority priority : Priority.values()) {
      if (priority.id().equals(id)) {
        return priority;
      }
    }
    throw damaged("alarm with priority \"" + id + "\"");
  }

  private AlarmState state(String id) throws LogException {
    for (AlarmState state : AlarmState.values()) {
      if (state.id().equals(id)) {
        return state;
      }
    }
    throw damaged("alarm in state \"" + id + "\"");
  }

  private LogException damaged(String what) {
    return new LogException(
        Kind.DAMAGED,
        LogException.say("power-up-reader.power-up-of-take-the", entry.number(), log.file(), what));
  }
}
