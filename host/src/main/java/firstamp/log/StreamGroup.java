package firstamp.log;

import java.util.List;

/**
 * Elements (conversions or readings) of one power-up that are not yet in chunks, at most 10 s of
 * probe time.
 */
interface StreamGroup {
  /** Elements. */
  int length();

  /** Where the index jumps. */
  Stretches stretches();

  /** Takes back everything from this offset on, after a transaction that failed. */
  void truncate(int length);

  /** Elements from an offset on, packed for the tail. */
  byte[] packed(int from);

  /** One coded chunk per channel. */
  List<ChunkRow> chunks();

  /** Conversions that all elements stand for. */
  long conversions();

  /**
   * A chunk as its row holds it.
   *
   * @param channel number
   * @param count values of the channel
   * @param firstIndex conversion index of the first
   */
  record ChunkRow(int channel, int count, long firstIndex, SeriesCoder.Coded coded) {}
}
