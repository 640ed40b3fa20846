package firstamp.log;

import firstamp.model.Alarm;
import firstamp.model.Calibration;
import firstamp.model.Channel;
import firstamp.model.ConversionBlock;
import firstamp.model.ProbeEvent;
import firstamp.model.Reading;
import firstamp.model.SamplePlan;
import firstamp.model.Trip;
import firstamp.model.Zero;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.zip.CRC32C;

/**
 * Puts the items of one power-up into the file, a transaction per call of {@link #write}.
 *
 * <p>Everything it knows about the stream so far is in its cursor and its group, and both go back
 * to where they were when a transaction fails: the same items can be written again, on a new
 * connection. Used by the writer's thread alone.
 */
final class StreamStore {
  /** Chunks end where the conversion index is a multiple of this: 10 s. */
  static final int GROUP_CONVERSIONS = 10 * SamplePlan.CONVERSIONS_PER_SECOND;

  private final Connector connector;
  private final PowerUpHeader header;
  private final boolean raw;
  private final Calibration calibration;
  private final EventCodec codec;
  private Connection connection;
  private long powerUp;
  private StreamGroup group;
  private Cursor cursor = new Cursor();

  /** Opens a connection that writes. */
  @FunctionalInterface
  interface Connector {
    Connection open() throws SQLException;
  }

  /** Place in the stream. */
  private static final class Cursor implements Cloneable {
    long groupPosition;
    int tailFrom;
    long nextIndex = Long.MIN_VALUE;
    long event;
    long transition;
    boolean tailRows;
    Zero zero = Zero.NONE;

    Cursor copy() {
      try {
        return (Cursor) clone();
      } catch (CloneNotSupportedException e) {
        throw new AssertionError(e);
      }
    }
  }

  /**
   * A store of one power-up.
   *
   * @param powerUp its number, 0 = its row is still to be made, with the first items
   */
  StreamStore(Connector connector, long powerUp, PowerUpHeader header, EventCodec codec) {
    this.connector = connector;
    this.powerUp = powerUp;
    this.header = header;
    this.raw = header.stream() == PowerUpHeader.Stream.RAW;
    this.calibration = header.hello().calibration();
    this.codec = codec;
    this.group = newGroup();
  }

  /** Number of the power-up, 0 = it has no row yet. */
  long powerUp() {
    return powerUp;
  }

  /** Writes items in one transaction; after an exception nothing of them is in the file. */
  void write(List<PowerUpWriter.Item> items) throws SQLException {
    Cursor before = cursor.copy();
    long powerUpBefore = powerUp;
    StreamGroup groupBefore = group;
    int lengthBefore = group.length();
    boolean done = false;
    try {
      if (connection == null) {
        connection = connector.open();
        connection.setAutoCommit(false);
      }
      if (powerUp == 0) {
        powerUp = PowerUpRow.insert(connection, header, codec);
      }
      for (PowerUpWriter.Item item : items) {
        item.writeTo(this);
      }
      writeTail();
      connection.commit();
      done = true;
    } finally {
      if (!done) {
        // SQLite has rolled back already, but the driver believes in an open transaction: only a
        // new connection is of use.
        close();
        group = groupBefore;
        group.truncate(lengthBefore);
        cursor = before;
        powerUp = powerUpBefore;
      }
    }
  }

  void conversions(ConversionBlock block) throws SQLException {
    short[] counts = block.counts();
    int offset = 0;
    while (offset < counts.length) {
      long index = block.firstIndex() + offset;
      beginStretch(index);
      int room = (int) (GROUP_CONVERSIONS - Math.floorMod(index, (long) GROUP_CONVERSIONS));
      int take = Math.min(room, counts.length - offset);
      ((ConversionGroup) group).add(counts, offset, take);
      offset += take;
      cursor.nextIndex = index + take;
      flushGroupAtEdge();
    }
  }

  void reading(Reading reading) throws SQLException {
    beginStretch(reading.firstIndex());
    ((ReadingGroup) group).add(reading);
    cursor.nextIndex = reading.firstIndex() + SamplePlan.CONVERSIONS_PER_READING;
    flushGroupAtEdge();
  }

  void event(ProbeEvent event) throws SQLException {
    long number = ++cursor.event;
    long place = cursor.groupPosition + group.length();
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
    } else if (event instanceof ProbeEvent.Looked looked) {
      cursor.zero = looked.look().zero();
    } else if (event instanceof ProbeEvent.Captured captured) {
      StringBuilder counts = new StringBuilder();
      for (int k = 0; k < firstamp.model.Capture.LENGTH; k++) {
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
      gap(gap.firstIndex(), gap.conversions(), "link");
    }
  }

  void gap(long firstIndex, long conversions, String cause) throws SQLException {
    update(
        "INSERT INTO gap (power_up, place, first_index, conversions, cause) VALUES (?,?,?,?,?)",
        powerUp,
        cursor.groupPosition + group.length(),
        firstIndex,
        conversions,
        cause);
  }

  void alarm(Alarm alarm) throws SQLException {
    update(
        "INSERT INTO alarm (power_up, transition, number, rule, rail, rail_name, at_ms, since_ms,"
            + " changed_ms, priority, state, value, at_most, limit_value, unit, text, folded_under)"
            + " VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)",
        powerUp,
        ++cursor.transition,
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

  void finish(String summaryJson, String outcome, String ended, long epochMs) throws SQLException {
    flushGroup();
    update(
        "UPDATE power_up SET state = 'finished', summary = ?, outcome = ?, ended = ?,"
            + " ended_epoch_ms = ? WHERE id = ? AND state = 'open'",
        summaryJson,
        outcome,
        ended,
        epochMs,
        powerUp);
  }

  void close() {
    if (connection != null) {
      try {
        connection.close();
      } catch (SQLException e) {
        // What was committed is on the disk; a connection that fails to close is given up.
      }
      connection = null;
    }
  }

  private void beginStretch(long index) throws SQLException {
    boolean jump = index != cursor.nextIndex;
    if (jump && group.length() > 0 && (index < cursor.nextIndex || cell(index) != cell())) {
      flushGroup();
    }
    if (jump || group.length() == 0) {
      group.stretches().add(group.length(), index);
    }
    if (jump) {
      update(
          "INSERT INTO stretch (power_up, position, first_index) VALUES (?,?,?)",
          powerUp,
          cursor.groupPosition + group.length(),
          index);
    }
  }

  /** The 10 s of probe time that the group lies in. */
  private long cell() {
    return cell(group.stretches().firstIndex(0));
  }

  private static long cell(long index) {
    return Math.floorDiv(index, (long) GROUP_CONVERSIONS);
  }

  private void flushGroupAtEdge() throws SQLException {
    if (Math.floorMod(cursor.nextIndex, (long) GROUP_CONVERSIONS) == 0) {
      flushGroup();
    }
  }

  private void flushGroup() throws SQLException {
    if (group.length() == 0) {
      return;
    }
    insertGroup(connection, powerUp, cursor.groupPosition, group, group.chunks());
    Spans seconds = Spans.of(group, SamplePlan.CONVERSIONS_PER_SECOND);
    int rows = 0;
    for (int bucket = 0; bucket < seconds.buckets; bucket++) {
      Object[] row = SecondTable.row(seconds, bucket, calibration, cursor.zero);
      if (!row[1].equals(0L)) {
        Object[] values = new Object[row.length + 2];
        values[0] = powerUp;
        // Places only have to rise and differ: a group has no more seconds than elements.
        values[1] = cursor.groupPosition + rows++;
        System.arraycopy(row, 0, values, 2, row.length);
        update(SecondTable.INSERT, values);
      }
    }
    if (cursor.tailRows) {
      update("DELETE FROM tail WHERE power_up = ?", powerUp);
      cursor.tailRows = false;
    }
    cursor.groupPosition += group.length();
    cursor.tailFrom = 0;
    group = newGroup();
  }

  private void writeTail() throws SQLException {
    if (group.length() > cursor.tailFrom) {
      byte[] data = group.packed(cursor.tailFrom);
      update(
          "INSERT INTO tail (power_up, position, version, count, crc32c, data) VALUES (?,?,?,?,?,?)",
          powerUp,
          cursor.groupPosition + cursor.tailFrom,
          raw ? SeriesCoder.PLAIN : ReadingGroup.CHUNK_VERSION,
          group.length() - cursor.tailFrom,
          crc32c(data),
          data);
      cursor.tailFrom = group.length();
      cursor.tailRows = true;
    }
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

  /** Chunks and level rows of one group. */
  static void insertGroup(
      Connection connection,
      long powerUp,
      long position,
      StreamGroup group,
      List<StreamGroup.ChunkRow> chunks)
      throws SQLException {
    for (StreamGroup.ChunkRow chunk : chunks) {
      update(
          connection,
          "INSERT INTO chunk (power_up, position, channel, version, count, first_index, crc32c,"
              + " data) VALUES (?,?,?,?,?,?,?,?)",
          powerUp,
          position,
          chunk.channel(),
          chunk.coded().version(),
          chunk.count(),
          chunk.firstIndex(),
          crc32c(chunk.coded().data()),
          chunk.coded().data());
    }
    for (int level = 0; level < Spans.LEVELS.length; level++) {
      Spans spans = Spans.of(group, Spans.LEVELS[level]);
      byte[] data = spans.pack();
      update(
          connection,
          "INSERT INTO span_level (power_up, level, position, first_bucket, buckets, version,"
              + " crc32c, data) VALUES (?,?,?,?,?,?,?,?)",
          powerUp,
          level,
          position,
          spans.firstBucket,
          spans.buckets,
          SeriesCoder.PLAIN,
          crc32c(data),
          data);
    }
  }

  private void update(String sql, Object... values) throws SQLException {
    update(connection, sql, values);
  }

  static void update(Connection connection, String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int k = 0; k < values.length; k++) {
        statement.setObject(k + 1, values[k]);
      }
      statement.executeUpdate();
    }
  }

  private StreamGroup newGroup() {
    return raw ? new ConversionGroup() : new ReadingGroup();
  }

  static long crc32c(byte[] data) {
    CRC32C crc = new CRC32C();
    crc.update(data, 0, data.length);
    return crc.getValue();
  }
}
