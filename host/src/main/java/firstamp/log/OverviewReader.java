package firstamp.log;

import firstamp.log.code.Deinterleaver;
import firstamp.log.code.MalformedChunkException;
import firstamp.log.stream.ChannelValues;
import firstamp.log.stream.Overview;
import firstamp.log.stream.SpanCodec;
import firstamp.log.stream.Spans;
import firstamp.log.stream.Stretches;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/** Draws a span of a power-up from the coarsest level that is fine enough, else from its values. */
final class OverviewReader {
  private final Statements statements;
  private final PowerUpEntry entry;
  private final StreamReader reader;

  OverviewReader(Statements statements, PowerUpEntry entry, StreamReader reader) {
    this.statements = statements;
    this.entry = entry;
    this.reader = reader;
  }

  Overview read(long fromIndex, long toIndex, int columns) throws SQLException, LogException {
    int level = Spans.LEVELS.length - 1;
    while (level >= 0 && 4L * Spans.LEVELS[level] * columns > toIndex - fromIndex) {
      level--;
    }
    int span = level < 0 ? 1 : Spans.LEVELS[level];
    long[] edges = new long[columns + 1];
    for (int c = 0; c <= columns; c++) {
      long even = fromIndex + Math.floorDiv((toIndex - fromIndex) * c, (long) columns);
      edges[c] = Math.floorDiv(2 * even + span, 2L * span) * span;
    }
    Overview overview = new Overview(edges);
    long[] positions = positions(edges[0], edges[columns]);
    if (positions == null) {
      return overview;
    }
    long covered = level < 0 ? positions[0] : levelRows(overview, level, positions);
    values(overview, Math.max(covered, positions[0]), positions[1]);
    return overview;
  }

  /** Positions that hold these indices: from the first stretch that does to the last. */
  private long[] positions(long fromIndex, long toIndex) throws SQLException {
    long step = step();
    long low = Long.MAX_VALUE;
    long high = -1;
    String sql = "SELECT position, first_index FROM stretch WHERE power_up = ?1 ORDER BY position";
    try (ResultSet row = statements.with(sql, entry.number()).executeQuery()) {
      long position = -1;
      long index = 0;
      while (true) {
        boolean more = row.next();
        long next = more ? row.getLong(1) : Long.MAX_VALUE;
        if (position >= 0) {
          long a = Math.max(position, position + Math.floorDiv(fromIndex - index, step));
          long b = Math.min(next, position + Math.floorDiv(toIndex - index + step - 1, step));
          if (a < b) {
            low = Math.min(low, a);
            high = Math.max(high, b);
          }
        }
        if (!more) {
          break;
        }
        position = next;
        index = row.getLong(2);
      }
    }
    return high < 0 ? null : new long[] {low, high};
  }

  /** Adds the rows of a level; returns the position up to which chunks (and so rows) reach. */
  private long levelRows(Overview overview, int level, long[] positions)
      throws SQLException, LogException {
    String sql =
        "SELECT first_bucket, buckets, crc32c, data, version FROM span_level WHERE power_up = ?1"
            + " AND level = ?2 AND position < ?4 AND position >= coalesce((SELECT max(position)"
            + " FROM span_level WHERE power_up = ?1 AND level = ?2 AND position <= ?3), 0)";
    PreparedStatement query =
        statements.with(sql, entry.number(), level, positions[0], positions[1]);
    try (ResultSet row = query.executeQuery()) {
      int column = 0;
      while (row.next()) {
        byte[] data = row.getBytes(4);
        if (data == null || Rows.crc32c(data) != row.getLong(3)) {
          throw reader.damaged(
              "a row of level " + level, new MalformedChunkException("its CRC-32C does not match"));
        }
        try {
          Spans spans =
              SpanCodec.unpack(
                  Spans.LEVELS[level], row.getLong(1), row.getInt(2), row.getInt(5), data);
          column = add(overview, spans, column);
        } catch (MalformedChunkException e) {
          throw reader.damaged("a row of level " + level, e);
        }
      }
    }
    String last =
        "SELECT position, sum(count), max(count) FROM chunk WHERE power_up = ?1 AND position ="
            + " (SELECT max(position) FROM chunk WHERE power_up = ?1)";
    try (ResultSet row = statements.with(last, entry.number()).executeQuery()) {
      return row.next() ? row.getLong(1) + row.getLong(step() == 1 ? 2 : 3) : 0;
    }
  }

  private static int add(Overview overview, Spans spans, int hint) {
    int column = hint;
    for (int b = 0; b < spans.buckets; b++) {
      column = column(overview, (spans.firstBucket + b) * spans.span, column);
      if (column < 0) {
        column = 0;
        continue;
      }
      for (int channel = 0; channel < spans.lowest.length; channel++) {
        if (spans.counts[channel][b] > 0) {
          overview.add(
              column,
              channel,
              spans.lowest[channel][b],
              spans.highest[channel][b],
              spans.sums[channel][b] / 16.0,
              1);
        }
      }
    }
    return column;
  }

  /** The column that holds an index, looked for from a hint on; -1 = none. */
  private static int column(Overview overview, long index, int hint) {
    int columns = overview.columns();
    if (index < overview.edge(0) || index >= overview.edge(columns)) {
      return -1;
    }
    int column = index < overview.edge(hint) ? 0 : hint;
    while (index >= overview.edge(column + 1)) {
      column++;
    }
    return column;
  }

  private void values(Overview overview, long from, long to) throws SQLException, LogException {
    long position = from;
    while (position < to) {
      StreamReader.Elements elements = reader.elements(position, to);
      if (elements == null) {
        return;
      }
      Stretches stretches = elements.stretches();
      for (int s = 0; s < stretches.size(); s++) {
        int begin = (int) Math.max(stretches.offset(s), position - elements.position());
        int end = (int) Math.min(stretches.end(s, elements.length()), to - elements.position());
        if (begin < end) {
          values(overview, elements, s, begin, end);
        }
      }
      position = elements.position() + elements.length();
    }
  }

  /** Elements of one stretch, a column at a time. */
  private void values(
      Overview overview, StreamReader.Elements elements, int stretch, int begin, int end) {
    Stretches stretches = elements.stretches();
    int k = begin;
    int hint = 0;
    ChannelValues values = elements.values();
    int[] places = values == null ? null : values.places(begin);
    while (k < end) {
      long index = stretches.firstIndex(stretch) + (k - stretches.offset(stretch)) * step();
      int column = column(overview, index, hint);
      if (column < 0) {
        k++;
        places = values == null ? null : values.places(k);
        continue;
      }
      hint = column;
      long inside = overview.edge(column + 1) - index;
      int stop = (int) Math.min(end, k + (inside + step() - 1) / step());
      if (values != null) {
        for (int channel = 0; channel < places.length; channel++) {
          int count = Deinterleaver.count(channel, index, index + stop - k);
          overview.add(column, channel, values.values()[channel], places[channel], count);
          places[channel] += count;
        }
      } else {
        for (int r = k; r < stop; r++) {
          reading(overview, column, elements.readings().get(r));
        }
      }
      k = stop;
    }
  }

  private static void reading(Overview overview, int column, Reading reading) {
    for (Channel channel : Channel.values()) {
      overview.add(
          column,
          channel.ordinal(),
          reading.lowest(channel),
          reading.highest(channel),
          reading.meanCounts(channel),
          1);
    }
  }

  private long step() {
    return entry.stream() == PowerUpHeader.Stream.RAW ? 1 : SamplePlan.CONVERSIONS_PER_READING;
  }
}
