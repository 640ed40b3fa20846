package firstamp.log;

import firstamp.log.LogException.Kind;
import firstamp.log.code.CodedSeries;
import firstamp.log.code.Deinterleaver;
import firstamp.log.code.MalformedChunkException;
import firstamp.log.code.SeriesCoder;
import firstamp.log.stream.ChannelValues;
import firstamp.log.stream.CodedGroup;
import firstamp.log.stream.ConversionGroup;
import firstamp.log.stream.ReadingGroup;
import firstamp.log.stream.StreamSink;
import firstamp.log.stream.Stretches;
import firstamp.model.RulesVersion;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import firstamp.model.text.Explained;
import java.nio.file.Path;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;

/** Walks over the stream of one power-up, group by group, with the events between. */
final class StreamReader {
  /** Longest block that is given out; a whole number of plans. */
  private static final int BLOCK = 3200;

  /** No position or index lies beyond: five hundred years of conversions. */
  private static final long FARTHEST = 1L << 48;

  private final Statements statements;
  private final Path file;
  private final long powerUp;
  private final boolean raw;
  private final EventCodec codec;
  private final boolean spokenMarks;

  /**
   * Elements of one group or tail row.
   *
   * @param values conversions as far as they were asked for; null in a reduced stream
   * @param readings null in a raw stream
   */
  record Elements(
      long position,
      int length,
      Stretches stretches,
      ChannelValues values,
      List<Reading> readings) {}

  /** Elements that are perhaps still being decoded. */
  private interface Pending {
    /** Waits for them; null = there are none. */
    Elements get() throws SQLException, LogException;

    /** For a caller that no longer wants them: no decoding continues after this. */
    default void stop() {}
  }

  StreamReader(Statements statements, Path file, PowerUpEntry entry, EventCodec codec) {
    this.statements = statements;
    this.file = file;
    this.powerUp = entry.number();
    this.raw = entry.stream() == PowerUpHeader.Stream.RAW;
    this.codec = codec;
    this.spokenMarks = entry.rulesVersion() < RulesVersion.MARKS_ARE_NOTES;
  }

  void replay(StreamSink given) throws SQLException, LogException {
    StreamSink sink = spokenMarks ? SpokenMarks.before(given) : given;
    long position = 0;
    Pending pending = begin(position, Long.MAX_VALUE);
    try (EventPages events = new EventPages(statements.connection(), powerUp, codec)) {
      Elements elements = pending.get();
      while (elements != null) {
        int from = (int) (position - elements.position());
        position = elements.position() + elements.length();
        pending = ahead(position);
        give(elements, from, events, sink);
        elements = pending.get();
      }
      events.upTo(Long.MAX_VALUE, sink);
    } finally {
      pending.stop();
    }
  }

  /**
   * The group or tail row that holds a position, decoded from there on; null at the end.
   *
   * @param until position up to which elements are needed
   */
  Elements elements(long position, long until) throws SQLException, LogException {
    return begin(position, until).get();
  }

  /** Begins with the elements that come next while others are given out; failures come later. */
  private Pending ahead(long position) {
    try {
      return begin(position, Long.MAX_VALUE);
    } catch (SQLException e) {
      return () -> {
        throw e;
      };
    } catch (LogException e) {
      return () -> {
        throw e;
      };
    }
  }

  private Pending begin(long position, long until) throws SQLException, LogException {
    Pending chunked = chunked(position, until);
    if (chunked != null) {
      return chunked;
    }
    Elements tail = tail(position);
    return () -> tail;
  }

  private void give(Elements elements, int from, EventPages events, StreamSink sink)
      throws SQLException, LogException {
    Stretches stretches = elements.stretches();
    for (int s = 0; s < stretches.size(); s++) {
      int end = stretches.end(s, elements.length());
      int offset = Math.max(from, stretches.offset(s));
      while (offset < end) {
        long next = events.upTo(elements.position() + offset, sink);
        int stop = (int) Math.min(end, Math.min(offset + (long) BLOCK, next - elements.position()));
        if (raw) {
          sink.conversions(
              new ConversionBlock(
                  stretches.firstIndex(s) + (offset - stretches.offset(s)),
                  elements.values().counts(offset, stop)));
        } else {
          for (int k = offset; k < stop; k++) {
            sink.reading(elements.readings().get(k));
          }
        }
        offset = stop;
      }
    }
  }

  /** The group that holds a position, as far as chunks reach; null beyond them. */
  Elements chunks(long wanted, long until) throws SQLException, LogException {
    Pending chunked = chunked(wanted, until);
    return chunked == null ? null : chunked.get();
  }

  private Pending chunked(long wanted, long until) throws SQLException, LogException {
    String sql =
        "SELECT position, channel, version, count, crc32c, data FROM chunk WHERE power_up = ?1"
            + " AND position = (SELECT max(position) FROM chunk WHERE power_up = ?1"
            + " AND position <= ?2) ORDER BY channel";
    try (ResultSet row = statements.with(sql, powerUp, wanted).executeQuery()) {
      if (raw) {
        return conversions(row, wanted, until);
      }
      Elements readings = readings(row, wanted);
      return readings == null ? null : () -> readings;
    }
  }

  private Pending conversions(ResultSet row, long wanted, long until)
      throws SQLException, LogException {
    CodedSeries[] series = new CodedSeries[Deinterleaver.CHANNELS];
    long position = -1;
    long length = 0;
    while (row.next()) {
      position = row.getLong(1);
      int channel = row.getInt(2);
      String what = "chunk at " + position + " of channel " + channel;
      byte[] data = checked(row, 5, what);
      try {
        int of = ConversionGroup.companionOf(channelNumber(channel));
        CodedSeries companion = of < 0 ? null : series[of];
        series[channel] = new CodedSeries(row.getInt(3), data, row.getInt(4), companion);
        length += series[channel].count();
      } catch (MalformedChunkException e) {
        throw damaged(what, e);
      }
    }
    if (position < 0 || wanted >= position + length) {
      return null;
    }
    try {
      Stretches stretches = stretches(position, checkedLength(length));
      CodedGroup group = new CodedGroup(position, (int) length, stretches, series);
      int from = (int) (wanted - position);
      int to = (int) Math.min(length, until - position);
      CodedGroup.Decoding decoding = group.decode(from, to);
      return new Pending() {
        @Override
        public Elements get() throws LogException {
          try {
            ChannelValues values = decoding.values();
            return new Elements(group.position(), group.length(), stretches, values, null);
          } catch (MalformedChunkException e) {
            throw damaged("a chunk at " + group.position(), e);
          }
        }

        @Override
        public void stop() {
          decoding.stop();
        }
      };
    } catch (MalformedChunkException e) {
      throw damaged("a chunk at " + position, e);
    }
  }

  private Elements readings(ResultSet row, long wanted) throws SQLException, LogException {
    int[][] values = new int[4 * Deinterleaver.CHANNELS][0];
    long position = -1;
    int length = 0;
    while (row.next()) {
      position = row.getLong(1);
      int channel = row.getInt(2);
      length = row.getInt(4);
      String what = "chunk at " + position + " of channel " + channel;
      byte[] data = checked(row, 5, what);
      try {
        if (row.getInt(3) != ReadingGroup.CHUNK_VERSION) {
          throw new MalformedChunkException("version " + row.getInt(3));
        }
        int[][] series = ReadingGroup.series(data, length, Channel.of(channelNumber(channel)));
        System.arraycopy(series, 0, values, 4 * channel, 4);
      } catch (MalformedChunkException e) {
        throw damaged(what, e);
      }
    }
    if (position < 0 || wanted >= position + length) {
      return null;
    }
    try {
      Stretches stretches = stretches(position, checkedLength(length));
      for (int[] series : values) {
        if (series.length != length) {
          throw new MalformedChunkException("channels of different length");
        }
      }
      List<Reading> readings = ReadingGroup.readings(values, stretches, length);
      return new Elements(position, length, stretches, null, readings);
    } catch (MalformedChunkException e) {
      throw damaged("chunks at " + position, e);
    }
  }

  private static int channelNumber(int channel) throws MalformedChunkException {
    if (channel < 0 || channel >= Deinterleaver.CHANNELS) {
      throw new MalformedChunkException("channel " + channel);
    }
    return channel;
  }

  private static int checkedLength(long length) throws MalformedChunkException {
    if (length > SeriesCoder.LONGEST) {
      throw new MalformedChunkException(length + " elements");
    }
    return (int) length;
  }

  private Elements tail(long wanted) throws SQLException, LogException {
    String sql =
        "SELECT position, count, version, crc32c, data FROM tail WHERE power_up = ?1"
            + " AND position <= ?2 ORDER BY position DESC LIMIT 1";
    try (ResultSet row = statements.with(sql, powerUp, wanted).executeQuery()) {
      if (!row.next()) {
        return null;
      }
      long position = row.getLong(1);
      int count = row.getInt(2);
      if (wanted >= position + count) {
        return null;
      }
      String what = "tail at " + position;
      byte[] data = checked(row, 4, what);
      try {
        int version = row.getInt(3);
        if (version != (raw ? SeriesCoder.PLAIN : ReadingGroup.CHUNK_VERSION)) {
          throw new MalformedChunkException("version " + version);
        }
        if (count < 0 || count > SeriesCoder.LONGEST) {
          throw new MalformedChunkException("count " + count);
        }
        Stretches stretches = stretches(position, count);
        if (raw) {
          short[] counts = ConversionGroup.unpack(data, count);
          ChannelValues values = ChannelValues.of(stretches, counts);
          return new Elements(position, count, stretches, values, null);
        }
        List<Reading> readings = ReadingGroup.unpack(data, count, stretches);
        return new Elements(position, count, stretches, null, readings);
      } catch (MalformedChunkException e) {
        throw damaged(what, e);
      }
    }
  }

  private Stretches stretches(long position, int length)
      throws SQLException, MalformedChunkException {
    String sql =
        "SELECT position, first_index FROM stretch WHERE power_up = ?1 AND position < ?3"
            + " AND position >= (SELECT max(position) FROM stretch WHERE power_up = ?1"
            + " AND position <= ?2) ORDER BY position";
    if (position < 0 || position > FARTHEST) {
      throw new MalformedChunkException("its position is " + position);
    }
    int step = raw ? 1 : SamplePlan.CONVERSIONS_PER_READING;
    Stretches stretches = new Stretches();
    PreparedStatement query = statements.with(sql, powerUp, position, position + length);
    try (ResultSet row = query.executeQuery()) {
      while (row.next()) {
        long begin = row.getLong(1);
        if (begin < 0 || begin > FARTHEST || row.getLong(2) < 0 || row.getLong(2) > FARTHEST) {
          throw new MalformedChunkException(
              "a stretch at " + begin + " begins with index " + row.getLong(2));
        }
        long ahead = Math.max(0, position - begin);
        stretches.add((int) Math.max(0, begin - position), row.getLong(2) + ahead * step);
      }
    }
    if (stretches.size() == 0) {
      throw new MalformedChunkException("no stretch begins at or before it");
    }
    return stretches;
  }

  private byte[] checked(ResultSet row, int crcColumn, String what)
      throws SQLException, LogException {
    byte[] data = row.getBytes(crcColumn + 1);
    if (data == null || Rows.crc32c(data) != row.getLong(crcColumn)) {
      throw damaged(what, new MalformedChunkException("its CRC-32C does not match"));
    }
    return data;
  }

  LogException damaged(String what, MalformedChunkException e) {
    return new LogException(
        Kind.DAMAGED,
        LogException.say(
            "stream-reader.power-up-of-is-damaged", powerUp, file, what, Explained.of(e)),
        e);
  }
}
