package firstamp.log;

import firstamp.log.code.MalformedChunkException;
import firstamp.log.code.SeriesCoder;
import firstamp.log.stream.SpanCodec;
import firstamp.log.stream.Spans;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * The rows of the pyramid of one power-up: one per level and group at first, later joined into long
 * ones, which take less room and are read sooner.
 */
final class LevelRows {
  /** Buckets of a row that is not joined any further. */
  static final int LONG_ROW = 3000;

  private final Statements statements;
  private final long powerUp;

  /** Place of a row. */
  private record Row(long position, long firstBucket, int buckets, int version) {
    long end() {
      return firstBucket + buckets;
    }
  }

  LevelRows(Statements statements, long powerUp) {
    this.statements = statements;
    this.powerUp = powerUp;
  }

  /** Adds a row of each level for a group, from its buckets of the finest level. */
  void add(long position, Spans finest) throws SQLException {
    for (int level = 0; level < Spans.LEVELS.length; level++) {
      Spans spans = level == 0 ? finest : finest.coarser(Spans.LEVELS[level]);
      insert(level, position, spans, SpanCodec.pack(spans, SpanCodec.PLAIN));
    }
  }

  /**
   * Joins rows that follow each other.
   *
   * @param fromPosition of the first row to look at
   * @throws MalformedChunkException a row cannot be read; nothing of its level is changed then
   */
  void join(long fromPosition) throws SQLException, MalformedChunkException {
    for (int level = 0; level < Spans.LEVELS.length; level++) {
      List<Row> run = new ArrayList<>();
      int buckets = 0;
      for (Row row : rows(level, fromPosition)) {
        boolean follows = !run.isEmpty() && run.get(run.size() - 1).end() == row.firstBucket();
        if (!follows || buckets + row.buckets() > LONG_ROW) {
          join(level, run, buckets);
          run.clear();
          buckets = 0;
        }
        run.add(row);
        buckets += row.buckets();
      }
      join(level, run, buckets);
    }
  }

  private void join(int level, List<Row> run, int buckets)
      throws SQLException, MalformedChunkException {
    boolean done = run.size() == 1 && run.get(0).version() == SpanCodec.FROM_MEAN;
    if (run.isEmpty() || done) {
      return;
    }
    Row first = run.get(0);
    Spans joined = new Spans(Spans.LEVELS[level], first.firstBucket(), buckets);
    for (Row row : run) {
      joined.take(spans(level, row));
    }
    SeriesCoder.Coded plain = SpanCodec.pack(joined, SpanCodec.PLAIN);
    SeriesCoder.Coded coded = SpanCodec.pack(joined, SpanCodec.FROM_MEAN);
    for (Row row : run) {
      statements.update(
          "DELETE FROM span_level WHERE power_up = ? AND level = ? AND position = ?",
          powerUp,
          level,
          row.position());
    }
    boolean smaller = coded.data().length < plain.data().length;
    insert(level, first.position(), joined, smaller ? coded : plain);
  }

  private List<Row> rows(int level, long fromPosition) throws SQLException {
    List<Row> rows = new ArrayList<>();
    PreparedStatement query =
        statements.with(
            "SELECT position, first_bucket, buckets, version FROM span_level WHERE power_up = ?"
                + " AND level = ? AND position >= ? ORDER BY position",
            powerUp,
            level,
            fromPosition);
    try (ResultSet row = query.executeQuery()) {
      while (row.next()) {
        rows.add(new Row(row.getLong(1), row.getLong(2), row.getInt(3), row.getInt(4)));
      }
    }
    return rows;
  }

  private Spans spans(int level, Row place) throws SQLException, MalformedChunkException {
    PreparedStatement query =
        statements.with(
            "SELECT crc32c, data FROM span_level WHERE power_up = ? AND level = ?"
                + " AND position = ?",
            powerUp,
            level,
            place.position());
    try (ResultSet row = query.executeQuery()) {
      byte[] data = row.next() ? row.getBytes(2) : null;
      if (data == null || Rows.crc32c(data) != row.getLong(1)) {
        throw new MalformedChunkException("its CRC-32C does not match");
      }
      return SpanCodec.unpack(
          Spans.LEVELS[level], place.firstBucket(), place.buckets(), place.version(), data);
    }
  }

  private void insert(int level, long position, Spans spans, SeriesCoder.Coded coded)
      throws SQLException {
    statements.update(
        "INSERT INTO span_level (power_up, level, position, first_bucket, buckets, version,"
            + " crc32c, data) VALUES (?,?,?,?,?,?,?,?)",
        powerUp,
        level,
        position,
        spans.firstBucket,
        spans.buckets,
        coded.version(),
        Rows.crc32c(coded.data()),
        coded.data());
  }
}
