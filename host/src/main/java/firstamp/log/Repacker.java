package firstamp.log;

import firstamp.log.code.EncoderWorkspace;
import firstamp.log.code.MalformedChunkException;
import firstamp.log.stream.ConversionGroup;
import firstamp.log.stream.ReadingGroup;
import firstamp.log.stream.StreamGroup;
import firstamp.log.stream.Stretches;
import firstamp.model.samples.Reading;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;

/**
 * Makes a finished power-up smaller: groups of 10 s become longer ones (40 s of conversions, 5 min
 * of readings), predicted more strongly, and the rows of the pyramid long ones.
 *
 * <p>What was made is decoded and compared before the old chunks go, in one transaction; stopped at
 * any moment, it continues from there the next time.
 */
final class Repacker {
  private static final int RAW_CELLS = 4;
  private static final int REDUCED_CELLS = 30;

  private final Statements statements;
  private final Connection connection;
  private final Path file;
  private final PowerUpEntry entry;
  private final StreamReader reader;
  private final EncoderWorkspace room = new EncoderWorkspace();
  private final boolean raw;
  private final long cell;

  Repacker(Statements statements, Path file, PowerUpEntry entry, EventCodec codec) {
    this.statements = statements;
    this.connection = statements.connection();
    this.file = file;
    this.entry = entry;
    this.reader = new StreamReader(statements, file, entry, codec);
    this.raw = entry.stream() == PowerUpHeader.Stream.RAW;
    this.cell = (long) StreamStore.GROUP_CONVERSIONS * (raw ? RAW_CELLS : REDUCED_CELLS);
  }

  /** Repacks all; false when it was told to stop before the end. */
  boolean repack(BooleanSupplier goOn) throws SQLException, LogException {
    StreamReader.Elements first = chunks(0);
    while (first != null) {
      if (!goOn.getAsBoolean()) {
        return false;
      }
      StreamGroup group = raw ? new ConversionGroup(0) : new ReadingGroup();
      append(group, first);
      long end = first.position() + first.length();
      StreamReader.Elements next = chunks(end);
      while (next != null && joins(group, next)) {
        append(group, next);
        end = next.position() + next.length();
        next = chunks(end);
      }
      // One that is longer than 10 s was made by an earlier run.
      if (isShort(first)) {
        replace(group, first.position(), end);
      }
      first = next;
    }
    try {
      new LevelRows(statements, entry.number()).join(0);
    } catch (MalformedChunkException e) {
      throw reader.damaged("a row of the pyramid", e);
    }
    statements.update("UPDATE power_up SET state = 'repacked' WHERE id = ?", entry.number());
    connection.commit();
    return true;
  }

  private StreamReader.Elements chunks(long position) throws SQLException, LogException {
    return reader.chunks(position, Long.MAX_VALUE);
  }

  private int step() {
    return raw ? 1 : firstamp.model.samples.SamplePlan.CONVERSIONS_PER_READING;
  }

  private boolean isShort(StreamReader.Elements elements) {
    return (long) elements.length() * step() <= StreamStore.GROUP_CONVERSIONS;
  }

  /** Whether a group belongs to the same cell of time and goes only forward. */
  private boolean joins(StreamGroup group, StreamReader.Elements next) {
    Stretches own = group.stretches();
    long first = own.firstIndex(0);
    int last = own.size() - 1;
    long end = own.firstIndex(last) + (group.length() - own.offset(last)) * (long) step();
    long begin = next.stretches().firstIndex(0);
    return begin >= end
        && Math.floorDiv(begin, cell) == Math.floorDiv(first, cell)
        && (group.length() + (long) next.length()) * step() <= cell
        && isShort(next);
  }

  private void append(StreamGroup group, StreamReader.Elements elements) {
    Stretches own = group.stretches();
    for (int s = 0; s < elements.stretches().size(); s++) {
      long index = elements.stretches().firstIndex(s);
      int last = own.size() - 1;
      boolean goesOn =
          last >= 0
              && own.firstIndex(last) + (group.length() - own.offset(last)) * (long) step()
                  == index;
      if (!goesOn || s > 0) {
        own.add(group.length() + elements.stretches().offset(s), index);
      }
    }
    if (group instanceof ConversionGroup conversions) {
      conversions.add(elements.values().counts(0, elements.length()), 0, elements.length());
    } else if (group instanceof ReadingGroup readings) {
      elements.readings().forEach(readings::add);
    }
  }

  private void replace(StreamGroup group, long from, long to) throws SQLException, LogException {
    List<StreamGroup.ChunkRow> chunks = group.repacked(room);
    if (bytes(chunks) >= oldBytes(from, to)) {
      return;
    }
    statements.update(
        "DELETE FROM chunk WHERE power_up = ? AND position >= ? AND position < ?",
        entry.number(),
        from,
        to);
    StreamStore.insertChunks(statements, entry.number(), from, chunks);
    // Read back from where it will be read from now on, before the old ones are gone for good.
    try {
      verify(group, from);
      connection.commit();
    } catch (LogException e) {
      connection.rollback();
      throw e;
    }
  }

  private void verify(StreamGroup group, long from) throws SQLException, LogException {
    StreamReader.Elements again = chunks(from);
    boolean same =
        again != null
            && again.length() == group.length()
            && (raw
                ? Arrays.equals(
                    again.values().counts(0, again.length()),
                    0,
                    again.length(),
                    ((ConversionGroup) group).counts(),
                    0,
                    group.length())
                : again.readings().equals(readings((ReadingGroup) group)));
    if (!same) {
      throw new LogException(
          LogException.Kind.IO,
          LogException.say("repacker.repacked-chunks-of-power-up", entry.number(), file));
    }
  }

  private static List<Reading> readings(ReadingGroup group) {
    return java.util.stream.IntStream.range(0, group.length()).mapToObj(group::get).toList();
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
