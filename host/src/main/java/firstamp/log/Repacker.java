package firstamp.log;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;

/**
 * Makes the chunks of a finished raw power-up smaller: three groups of 10 s become one, predicted
 * more strongly. What was made is decoded and compared before the old chunks go, in one
 * transaction; stopped at any moment, it goes on from there the next time.
 */
final class Repacker {
  private static final int CELLS = 3;

  private final Connection connection;
  private final Path file;
  private final PowerUpEntry entry;
  private final EventCodec codec;

  Repacker(Connection connection, Path file, PowerUpEntry entry, EventCodec codec) {
    this.connection = connection;
    this.file = file;
    this.entry = entry;
    this.codec = codec;
  }

  /** Repacks all; false when it was told to stop before the end. */
  boolean repack(BooleanSupplier goOn) throws SQLException, LogException {
    StreamReader reader = new StreamReader(connection, file, entry, codec);
    long position = 0;
    StreamReader.Elements first = reader.chunks(position);
    while (first != null) {
      if (!goOn.getAsBoolean()) {
        return false;
      }
      ConversionGroup group = new ConversionGroup();
      append(group, first);
      long end = first.position() + first.length();
      StreamReader.Elements next = reader.chunks(end);
      while (next != null && joins(group, next)) {
        append(group, next);
        end = next.position() + next.length();
        next = reader.chunks(end);
      }
      // One that is longer than a cell was made by an earlier run.
      if (first.length() <= StreamStore.GROUP_CONVERSIONS) {
        replace(group, first.position(), end);
      }
      first = next;
    }
    StreamStore.update(
        connection, "UPDATE power_up SET state = 'repacked' WHERE id = ?", entry.number());
    connection.commit();
    return true;
  }

  /** Whether a group belongs to the same 30 s and goes only forward. */
  private static boolean joins(ConversionGroup group, StreamReader.Elements next) {
    Stretches own = group.stretches();
    long first = own.firstIndex(0);
    int last = own.size() - 1;
    long end = own.firstIndex(last) + group.length() - own.offset(last);
    long cell = (long) CELLS * StreamStore.GROUP_CONVERSIONS;
    long begin = next.stretches().firstIndex(0);
    return begin >= end
        && Math.floorDiv(begin, cell) == Math.floorDiv(first, cell)
        && group.length() + next.length() <= cell
        && next.length() <= StreamStore.GROUP_CONVERSIONS;
  }

  private static void append(ConversionGroup group, StreamReader.Elements elements) {
    Stretches own = group.stretches();
    for (int s = 0; s < elements.stretches().size(); s++) {
      long index = elements.stretches().firstIndex(s);
      int last = own.size() - 1;
      boolean goesOn =
          last >= 0 && own.firstIndex(last) + group.length() - own.offset(last) == index;
      if (!goesOn || s > 0) {
        own.add(group.length() + elements.stretches().offset(s), index);
      }
    }
    group.add(elements.counts(), 0, elements.length());
  }

  private void replace(ConversionGroup group, long from, long to)
      throws SQLException, LogException {
    List<StreamGroup.ChunkRow> chunks = group.repacked();
    verify(group, chunks);
    if (bytes(chunks) >= oldBytes(from, to)) {
      return;
    }
    for (String table : new String[] {"chunk", "span_level"}) {
      StreamStore.update(
          connection,
          "DELETE FROM " + table + " WHERE power_up = ? AND position >= ? AND position < ?",
          entry.number(),
          from,
          to);
    }
    StreamStore.insertGroup(connection, entry.number(), from, group, chunks);
    connection.commit();
  }

  private void verify(ConversionGroup group, List<StreamGroup.ChunkRow> chunks)
      throws LogException {
    int[][] values = new int[firstamp.model.Channel.values().length][0];
    try {
      for (StreamGroup.ChunkRow chunk : chunks) {
        values[chunk.channel()] =
            SeriesCoder.decode(
                chunk.coded().version(),
                chunk.coded().data(),
                chunk.count(),
                StreamReader.companion(chunk.channel(), values));
      }
      short[] again = ConversionGroup.join(values, group.stretches(), group.length());
      if (!Arrays.equals(again, Arrays.copyOf(group.counts(), group.length()))) {
        throw new MalformedChunkException("other conversions come out");
      }
    } catch (MalformedChunkException e) {
      throw new LogException(
          LogException.Kind.IO,
          "repacked chunks of power-up "
              + entry.number()
              + " in "
              + file
              + " do not give the same conversions; the old ones were kept (a defect, please"
              + " report it)",
          e);
    }
  }

  private static long bytes(List<StreamGroup.ChunkRow> chunks) {
    long sum = 0;
    for (StreamGroup.ChunkRow chunk : chunks) {
      sum += chunk.coded().data().length;
    }
    return sum;
  }

  private long oldBytes(long from, long to) throws SQLException {
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT sum(length(data)) FROM chunk WHERE power_up = ? AND position >= ?"
                + " AND position < ?")) {
      query.setLong(1, entry.number());
      query.setLong(2, from);
      query.setLong(3, to);
      try (ResultSet row = query.executeQuery()) {
        return row.next() ? row.getLong(1) : 0;
      }
    }
  }
}
