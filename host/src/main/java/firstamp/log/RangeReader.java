package firstamp.log;

import firstamp.log.StreamReader.Elements;
import firstamp.log.stream.StreamSink;
import firstamp.log.stream.Stretches;
import firstamp.model.ProbeEvent;
import firstamp.model.RulesVersion;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.SamplePlan;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Reads parts of a power-up: its events alone, its extent, the values of a span of time. */
final class RangeReader {
  private final Connection connection;
  private final PowerUpEntry entry;
  private final StreamReader reader;
  private final long step;

  RangeReader(Connection connection, PowerUpEntry entry, StreamReader reader) {
    this.connection = connection;
    this.entry = entry;
    this.reader = reader;
    this.step = entry.stream() == PowerUpHeader.Stream.RAW ? 1 : SamplePlan.CONVERSIONS_PER_READING;
  }

  /** Every event, in its order. */
  List<ProbeEvent> events(EventCodec codec) throws SQLException, LogException {
    List<ProbeEvent> events = new ArrayList<>();
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT kind, micros, fields FROM event WHERE power_up = ? ORDER BY number")) {
      query.setLong(1, entry.number());
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          ProbeEvent event = codec.event(row.getString(1), row.getLong(2), row.getString(3));
          events.add(event);
          if (entry.rulesVersion() < RulesVersion.MARKS_ARE_NOTES
              && event instanceof ProbeEvent.Marked marked) {
            events.add(SpokenMarks.meaning(marked));
          }
        }
      }
    }
    return events;
  }

  /** Index of the first conversion and the one behind the last; both 0 where there is none. */
  long[] extent() throws SQLException {
    long end = elements();
    if (end == 0) {
      return new long[] {0, 0};
    }
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT position, first_index FROM stretch WHERE power_up = ? ORDER BY position")) {
      query.setLong(1, entry.number());
      try (ResultSet row = query.executeQuery()) {
        long first = -1;
        long last = 0;
        while (row.next()) {
          first = first < 0 ? row.getLong(2) : first;
          last = row.getLong(2) + (end - row.getLong(1)) * step;
        }
        return new long[] {Math.max(0, first), last};
      }
    }
  }

  /** Elements kept: those of all chunks and of the tail behind them. */
  private long elements() throws SQLException {
    String summed = step == 1 ? "sum(count)" : "max(count)";
    long chunks =
        LogDatabase.number(
            connection,
            "SELECT position + "
                + summed
                + " FROM chunk WHERE power_up = "
                + entry.number()
                + " GROUP BY position ORDER BY position DESC LIMIT 1");
    long tail =
        LogDatabase.number(
            connection,
            "SELECT position + count FROM tail WHERE power_up = "
                + entry.number()
                + " ORDER BY position DESC LIMIT 1");
    return Math.max(chunks, tail);
  }

  /** Gives the conversions or readings whose index lies in a span, without events. */
  void values(long fromIndex, long toIndex, StreamSink sink) throws SQLException, LogException {
    long position = firstPosition(fromIndex);
    while (position >= 0) {
      Elements elements =
          reader.elements(position, position + (toIndex - fromIndex + step - 1) / step);
      if (elements == null || !give(elements, fromIndex, toIndex, sink)) {
        return;
      }
      position = elements.position() + elements.length();
    }
  }

  /** Position of the first element at or behind an index; -1 = none. */
  private long firstPosition(long fromIndex) throws SQLException {
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT position, first_index FROM stretch WHERE power_up = ?1 AND first_index = "
                + "(SELECT max(first_index) FROM stretch WHERE power_up = ?1"
                + " AND first_index <= ?2)")) {
      query.setLong(1, entry.number());
      query.setLong(2, fromIndex);
      try (ResultSet row = query.executeQuery()) {
        if (row.next()) {
          return row.getLong(1) + (fromIndex - row.getLong(2) + step - 1) / step;
        }
      }
    }
    return 0;
  }

  /** False once the span is left behind. */
  private boolean give(Elements elements, long fromIndex, long toIndex, StreamSink sink) {
    Stretches stretches = elements.stretches();
    for (int s = 0; s < stretches.size(); s++) {
      long index = stretches.firstIndex(s);
      int offset = stretches.offset(s);
      int end = stretches.end(s, elements.length());
      int begin = offset + (int) Math.max(0, Math.min(end, (fromIndex - index + step - 1) / step));
      int stop = (int) Math.min(end, offset + (toIndex - index + step - 1) / step);
      if (stop <= begin) {
        if (index >= toIndex) {
          return false;
        }
        continue;
      }
      if (elements.values() != null) {
        // Only what can lie in the span was decoded.
        int from = Math.max(begin, elements.values().from());
        int to = Math.min(stop, elements.values().to());
        if (from < to) {
          sink.conversions(
              new ConversionBlock(index + from - offset, elements.values().counts(from, to)));
        }
      } else {
        for (int k = begin; k < stop; k++) {
          sink.reading(elements.readings().get(k));
        }
      }
      if (stop < end) {
        return false;
      }
    }
    return true;
  }
}
