package firstamp.log;

import firstamp.log.code.EncoderWorkspace;
import firstamp.log.code.MalformedChunkException;
import firstamp.log.code.SeriesCoder;
import firstamp.log.stream.ConversionGroup;
import firstamp.log.stream.ReadingGroup;
import firstamp.log.stream.Spans;
import firstamp.log.stream.StreamGroup;
import firstamp.model.Alarm;
import firstamp.model.ProbeEvent;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Zero;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;

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

  /** Groups whose rows of the pyramid are joined: 5 min. */
  private static final int JOINED_GROUPS = 30;

  private final Connector connector;
  private final PowerUpHeader header;
  private final boolean raw;
  private final Calibration calibration;
  private final EventCodec codec;
  private final EncoderWorkspace room = new EncoderWorkspace();
  private Connection connection;
  private Statements statements;
  private long powerUp;
  private StreamGroup group;
  private Cursor cursor = new Cursor();

  /** Opens a connection that writes. */
  @FunctionalInterface
  interface Connector {
    Connection open() throws SQLException;

    /** Before each commit; an invented disk may be full. */
    default void checkRoom() throws SQLException {}
  }

  /** Place in the stream. */
  private static final class Cursor implements Cloneable {
    long groupPosition;
    int tailFrom;
    long nextIndex = Long.MIN_VALUE;
    long event;
    long transition;
    long joinFrom;
    int groupsToJoin;
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
    this.group = newGroup(0);
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
      connector.checkRoom();
      if (connection == null) {
        connection = connector.open();
        connection.setAutoCommit(false);
        statements = new Statements(connection);
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

  void conversions(long firstIndex, short[] counts, int length) throws SQLException {
    int offset = 0;
    while (offset < length) {
      long index = firstIndex + offset;
      beginStretch(index);
      int room = (int) (GROUP_CONVERSIONS - Math.floorMod(index, (long) GROUP_CONVERSIONS));
      int take = Math.min(room, length - offset);
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
    rows().event(++cursor.event, place(), event);
    if (event instanceof ProbeEvent.Looked looked) {
      cursor.zero = looked.look().zero();
    }
  }

  void gap(long firstIndex, long conversions, String cause) throws SQLException {
    rows().gap(place(), firstIndex, conversions, cause);
  }

  void alarm(Alarm alarm) throws SQLException {
    rows().alarm(++cursor.transition, alarm);
  }

  void clockFit(long micros, long hostEpochMs, long offsetMicros, double driftPpm)
      throws SQLException {
    rows().clockFit(micros, hostEpochMs, offsetMicros, driftPpm);
  }

  private EventRows rows() {
    return new EventRows(statements, powerUp, codec);
  }

  private long place() {
    return cursor.groupPosition + group.length();
  }

  void finish(String summaryJson, String outcome, String ended, long epochMs) throws SQLException {
    flushGroup();
    joinLevels(new LevelRows(statements, powerUp), cursor.groupPosition);
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
      statements = null;
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
    StreamGroup.Parts parts = group.parts(room);
    insertChunks(statements, powerUp, cursor.groupPosition, parts.chunks());
    LevelRows levels = new LevelRows(statements, powerUp);
    levels.add(cursor.groupPosition, parts.spans());
    seconds(parts.spans().coarser(SamplePlan.CONVERSIONS_PER_SECOND));
    if (++cursor.groupsToJoin == JOINED_GROUPS) {
      joinLevels(levels, cursor.groupPosition + group.length());
    }
    if (cursor.tailRows) {
      update("DELETE FROM tail WHERE power_up = ?", powerUp);
      cursor.tailRows = false;
    }
    cursor.groupPosition += group.length();
    cursor.tailFrom = 0;
    group = newGroup(group.length());
  }

  /** Long rows of the pyramid are read sooner; a row that cannot be read stays as it is. */
  private void joinLevels(LevelRows levels, long nextPosition) throws SQLException {
    try {
      levels.join(cursor.joinFrom);
    } catch (MalformedChunkException e) {
      throw new SQLException("a level row written before cannot be read", e);
    }
    cursor.groupsToJoin = 0;
    cursor.joinFrom = nextPosition;
  }

  private void seconds(Spans seconds) throws SQLException {
    int rows = 0;
    PreparedStatement insert = statements.with(SecondTable.INSERT);
    for (int bucket = 0; bucket < seconds.buckets; bucket++) {
      Object[] row = SecondTable.row(seconds, bucket, calibration, cursor.zero);
      if (!row[1].equals(0L)) {
        insert.setLong(1, powerUp);
        // Places only have to rise and differ: a group has no more seconds than elements.
        insert.setLong(2, cursor.groupPosition + rows++);
        for (int k = 0; k < row.length; k++) {
          insert.setObject(3 + k, row[k]);
        }
        insert.executeUpdate();
      }
    }
  }

  private void writeTail() throws SQLException {
    if (group.length() > cursor.tailFrom) {
      byte[] data = group.packed(cursor.tailFrom);
      update(
          "INSERT INTO tail (power_up, position, version, count, crc32c, data) VALUES"
              + " (?,?,?,?,?,?)",
          powerUp,
          cursor.groupPosition + cursor.tailFrom,
          raw ? SeriesCoder.PLAIN : ReadingGroup.CHUNK_VERSION,
          group.length() - cursor.tailFrom,
          Rows.crc32c(data),
          data);
      cursor.tailFrom = group.length();
      cursor.tailRows = true;
    }
  }

  /** The chunks of one group. */
  static void insertChunks(
      Statements statements, long powerUp, long position, List<StreamGroup.ChunkRow> chunks)
      throws SQLException {
    for (StreamGroup.ChunkRow chunk : chunks) {
      statements.update(
          "INSERT INTO chunk (power_up, position, channel, version, count, first_index, crc32c,"
              + " data) VALUES (?,?,?,?,?,?,?,?)",
          powerUp,
          position,
          chunk.channel(),
          chunk.coded().version(),
          chunk.count(),
          chunk.firstIndex(),
          Rows.crc32c(chunk.coded().data()),
          chunk.coded().data());
    }
  }

  private void update(String sql, Object... values) throws SQLException {
    statements.update(sql, values);
  }

  private StreamGroup newGroup(int elements) {
    return raw ? new ConversionGroup(elements) : new ReadingGroup();
  }
}
