package firstamp.log.stream;

import firstamp.log.code.EncoderWorkspace;
import firstamp.log.code.SeriesCoder;
import java.util.List;

/**
 * Elements (conversions or readings) of one power-up that are not yet in chunks, at most 10 s of
 * probe time.
 */
public interface StreamGroup {
  /** Elements. */
  int length();

  /** Where the index jumps. */
  Stretches stretches();

  /** Takes back everything from this offset on, after a transaction that failed. */
  void truncate(int length);

  /** Elements from an offset on, packed for the tail. */
  byte[] packed(int from);

  /** What goes into the file for this group while recording. */
  Parts parts(EncoderWorkspace room);

  /** The same chunks, smaller and slower. */
  List<ChunkRow> repacked(EncoderWorkspace room);

  /**
   * A group as the file holds it.
   *
   * @param chunks one per channel that has values
   * @param spans buckets of the finest level
   */
  record Parts(List<ChunkRow> chunks, Spans spans) {}

  /**
   * A chunk as its row holds it.
   *
   * @param channel number
   * @param count values of the channel
   * @param firstIndex conversion index of the first
   */
  record ChunkRow(int channel, int count, long firstIndex, SeriesCoder.Coded coded) {}
}
