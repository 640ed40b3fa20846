package firstamp.log;

import firstamp.model.ProbeEvent;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;

/** Adds events to a power-up that is over: its stream and its summary stay untouched. */
final class LaterEvents {
  private static final String LAST = "SELECT coalesce(max(%s), 0) FROM event WHERE power_up = ";

  private LaterEvents() {}

  static void add(Path file, long powerUp, ProbeEvent event, EventCodec codec) throws LogException {
    if (!(event instanceof ProbeEvent.Marked
        || event instanceof ProbeEvent.Noted
        || event instanceof ProbeEvent.Acknowledged
        || event instanceof ProbeEvent.OffExplained)) {
      throw new IllegalArgumentException(
          event
              + " cannot be added later, expected a mark, words for one, seen, or a reason for an off");
    }
    try (Connection connection = LogDatabase.openForWriting(file)) {
      connection.setAutoCommit(false);
      long number = LogDatabase.number(connection, String.format(LAST, "number") + powerUp) + 1;
      long place = LogDatabase.number(connection, String.format(LAST, "place") + powerUp);
      Rows.update(
          connection,
          "INSERT INTO event (power_up, number, kind, place, micros, fields) VALUES (?,?,?,?,?,?)",
          powerUp,
          number,
          EventCodec.kind(event),
          place,
          event.micros(),
          codec.fields(event));
      if (event instanceof ProbeEvent.Marked marked) {
        Rows.update(
            connection,
            "INSERT INTO mark (power_up, event, micros, text) VALUES (?,?,?,?)",
            powerUp,
            number,
            marked.micros(),
            marked.text());
      }
      connection.commit();
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot write", file, e);
    }
  }
}
