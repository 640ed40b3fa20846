package firstamp.log;

import firstamp.log.stream.StreamSink;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/** The events of a power-up, read in pages as they are needed. */
final class EventPages implements AutoCloseable {
  private static final int PAGE = 256;

  private final PreparedStatement query;
  private final EventCodec codec;
  private final Object[][] page = new Object[PAGE][];
  private int size;
  private int taken;
  private long lastNumber;
  private boolean over;

  EventPages(Connection connection, long powerUp, EventCodec codec) throws SQLException {
    this.codec = codec;
    query =
        connection.prepareStatement(
            "SELECT number, place, kind, micros, fields FROM event WHERE power_up = ?"
                + " AND number > ? ORDER BY number LIMIT "
                + PAGE);
    query.setLong(1, powerUp);
  }

  /** Gives every event whose place is at or before this; returns the place of the next one. */
  long upTo(long position, StreamSink sink) throws SQLException, LogException {
    while (true) {
      if (taken == size && !fill()) {
        return Long.MAX_VALUE;
      }
      Object[] row = page[taken];
      long place = (Long) row[0];
      if (place > position) {
        return place;
      }
      taken++;
      sink.event(codec.event((String) row[1], (Long) row[2], (String) row[3]));
    }
  }

  private boolean fill() throws SQLException {
    if (over) {
      return false;
    }
    size = 0;
    taken = 0;
    query.setLong(2, lastNumber);
    try (ResultSet row = query.executeQuery()) {
      while (row.next()) {
        lastNumber = row.getLong(1);
        page[size++] =
            new Object[] {row.getLong(2), row.getString(3), row.getLong(4), row.getString(5)};
      }
    }
    over = size < PAGE;
    return size > 0;
  }

  @Override
  public void close() throws SQLException {
    query.close();
  }
}
