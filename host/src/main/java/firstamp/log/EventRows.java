package firstamp.log;

import firstamp.model.Alarm;
import firstamp.model.ProbeEvent;
import firstamp.model.Trip;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Channel;
import java.sql.SQLException;

/** Puts events, alarms, gaps and clock fits of one power-up into their tables. */
final class EventRows {
  private final Statements statements;
  private final long powerUp;
  private final EventCodec codec;

  EventRows(Statements statements, long powerUp, EventCodec codec) {
    this.statements = statements;
    this.powerUp = powerUp;
    this.codec = codec;
  }

  /** An event, at its place of the stream; also in the plain table of its kind, if it has one. */
  void event(long number, long place, ProbeEvent event) throws SQLException {
    update(
        "INSERT INTO event (power_up, number, kind, place, micros, fields) VALUES (?,?,?,?,?,?)",
        powerUp,
        number,
        EventCodec.kind(event),
        place,
        event.micros(),
        codec.fields(event));
    if (event instanceof ProbeEvent.Tripped tripped) {
      trip(number, tripped.trip());
    } else if (event instanceof ProbeEvent.Captured captured) {
      StringBuilder counts = new StringBuilder();
      for (int k = 0; k < Capture.LENGTH; k++) {
        counts.append(k == 0 ? "" : " ").append(captured.capture().counts(k));
      }
      update(
          "INSERT INTO capture (power_up, event, trip_number, decided_us, missing, counts)"
              + " VALUES (?,?,?,?,?,?)",
          powerUp,
          number,
          captured.capture().tripNumber(),
          captured.capture().decidedMicros(),
          captured.capture().missing(),
          counts.toString());
    } else if (event instanceof ProbeEvent.Marked marked) {
      update(
          "INSERT INTO mark (power_up, event, micros, text) VALUES (?,?,?,?)",
          powerUp,
          number,
          marked.micros(),
          marked.text());
    } else if (event instanceof ProbeEvent.Gap gap) {
      gap(place, gap.firstIndex(), gap.conversions(), "link");
    }
  }

  /** Conversions that are missing. */
  void gap(long place, long firstIndex, long conversions, String cause) throws SQLException {
    update(
        "INSERT INTO gap (power_up, place, first_index, conversions, cause) VALUES (?,?,?,?,?)",
        powerUp,
        place,
        firstIndex,
        conversions,
        cause);
  }

  /** A transition of an alarm. */
  void alarm(long transition, Alarm alarm) throws SQLException {
    update(
        "INSERT INTO alarm (power_up, transition, number, rule, rail, rail_name, at_ms, since_ms,"
            + " changed_ms, priority, state, value, at_most, limit_value, unit, text, folded_under)"
            + " VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)",
        powerUp,
        transition,
        alarm.number(),
        alarm.rule(),
        alarm.rail(),
        alarm.railName(),
        alarm.atMs(),
        alarm.sinceMs(),
        alarm.changedMs(),
        alarm.priority().id(),
        alarm.state().id(),
        alarm.value(),
        alarm.atMost() ? 1 : 0,
        alarm.limit(),
        alarm.unit(),
        alarm.text(),
        alarm.foldedUnder());
  }

  /** Offset and drift of the probe's clock relative to the computer's. */
  void clockFit(long micros, long hostEpochMs, long offsetMicros, double driftPpm)
      throws SQLException {
    update(
        "INSERT INTO clock_fit (power_up, micros, host_epoch_ms, offset_us, drift_ppm)"
            + " VALUES (?,?,?,?,?)",
        powerUp,
        micros,
        hostEpochMs,
        offsetMicros,
        driftPpm);
  }

  private void trip(long number, Trip trip) throws SQLException {
    update(
        "INSERT INTO trip (power_up, event, number, cause, channel, crossed_us, decided_us,"
            + " opened_us, value_counts, limit_counts) VALUES (?,?,?,?,?,?,?,?,?,?)",
        powerUp,
        number,
        trip.number(),
        trip.cause().id(),
        trip.channelNumber() < 0 ? null : Channel.of(trip.channelNumber()).name(),
        trip.crossedMicros(),
        trip.decidedMicros(),
        trip.openedMicros(),
        trip.value(),
        trip.limit());
  }

  private void update(String sql, Object... values) throws SQLException {
    statements.update(sql, values);
  }
}
