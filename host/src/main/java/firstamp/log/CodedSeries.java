package firstamp.log;

import java.nio.BufferUnderflowException;

/**
 * A coded series of one channel; only those parts of it are decoded that are asked for. Not
 * thread-safe.
 */
final class CodedSeries {
  private final int version;
  private final byte[] data;
  private final int count;
  private final CodedSeries companion;
  private BankDecoder decoder;
  private BankDecoder.Worker worker;
  private boolean[] decoded;
  private int[] values;

  /**
   * Nothing decoded yet.
   *
   * @param companion channel that this one may be predicted from; null = none
   * @throws MalformedChunkException no series can be so long
   */
  CodedSeries(int version, byte[] data, int count, CodedSeries companion)
      throws MalformedChunkException {
    if (count < 0 || count > SeriesCoder.LONGEST) {
      throw new MalformedChunkException("count " + count + ", allowed 0 to " + SeriesCoder.LONGEST);
    }
    this.version = version;
    this.data = data;
    this.count = count;
    this.companion = companion;
  }

  int count() {
    return count;
  }

  /**
   * The series: an array of all its values, in which those from one place to another are right.
   *
   * @throws MalformedChunkException if the bytes cannot be {@code count} values of this version
   */
  int[] values(int from, int to) throws MalformedChunkException {
    try {
      if (version == SeriesCoder.BANK) {
        segments(from, to);
      } else if (values == null) {
        values = whole();
      }
      return values;
    } catch (BufferUnderflowException | IndexOutOfBoundsException e) {
      throw new MalformedChunkException("ends too early", e);
    }
  }

  private int[] whole() throws MalformedChunkException {
    switch (version) {
      case SeriesCoder.PLAIN:
        return SeriesCoder.fromPlain(data, count);
      case SeriesCoder.LINEAR:
        return LinearDecoder.decode(data, count, null);
      case SeriesCoder.JOINT:
        return LinearDecoder.decode(
            data, count, companion == null ? null : companion.values(0, companion.count));
      default:
        throw new MalformedChunkException("version " + version + " is not known");
    }
  }

  private void segments(int from, int to) throws MalformedChunkException {
    if (decoder == null) {
      decoder = new BankDecoder(data, count);
      decoded = new boolean[decoder.segments()];
      values = new int[count];
    }
    if (from >= to) {
      return;
    }
    for (int s = decoder.segmentOf(from); s <= decoder.segmentOf(to - 1); s++) {
      if (!decoded[s]) {
        int[] other = null;
        if (decoder.needsCompanion()) {
          if (companion == null) {
            throw new MalformedChunkException("companion channel is missing");
          }
          long[] range = decoder.companionRange(s);
          other =
              companion.values(
                  (int) Math.max(0, Math.min(companion.count, range[0])),
                  (int) Math.max(0, Math.min(companion.count, range[1])));
        }
        if (worker == null) {
          worker = decoder.new Worker(other);
        }
        worker.decode(s, values);
        decoded[s] = true;
      }
    }
  }
}
