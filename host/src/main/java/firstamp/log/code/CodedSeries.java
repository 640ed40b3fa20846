package firstamp.log.code;

import java.nio.BufferUnderflowException;

/**
 * A coded series of one channel; only those parts of it are decoded that are asked for. Not
 * thread-safe.
 */
public final class CodedSeries {
  private final int version;
  private final byte[] data;
  private final int count;
  private final CodedSeries companion;
  private BankDecoder decoder;
  private Part part;

  /**
   * Some of the values.
   *
   * @param origin place of the first of them
   */
  public record Part(int[] values, int origin) {
    boolean covers(int from, int to) {
      return from >= origin && to <= origin + values.length;
    }
  }

  /**
   * Nothing decoded yet.
   *
   * @param companion channel that this one may be predicted from; null = none
   * @throws MalformedChunkException no series can be so long
   */
  public CodedSeries(int version, byte[] data, int count, CodedSeries companion)
      throws MalformedChunkException {
    if (count < 0 || count > SeriesCoder.LONGEST) {
      throw new MalformedChunkException("count " + count + ", allowed 0 to " + SeriesCoder.LONGEST);
    }
    this.version = version;
    this.data = data;
    this.count = count;
    this.companion = companion;
  }

  public int count() {
    return count;
  }

  /**
   * Values from one place to another, and perhaps more.
   *
   * @throws MalformedChunkException if the bytes cannot be {@code count} values of this version
   */
  public Part part(int from, int to) throws MalformedChunkException {
    if (part != null && part.covers(from, to)) {
      return part;
    }
    try {
      part = version == SeriesCoder.BANK ? segments(from, to) : new Part(whole(), 0);
      return part;
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
            data, count, companion == null ? null : companion.part(0, companion.count).values());
      default:
        throw new MalformedChunkException("version " + version + " is not known");
    }
  }

  private Part segments(int from, int to) throws MalformedChunkException {
    if (decoder == null) {
      decoder = new BankDecoder(data, count);
    }
    int begin = decoder.beginOfSegment(from);
    Part other = null;
    if (decoder.needsCompanion() && companion != null) {
      long[] range = decoder.companionRange(begin, to);
      int low = (int) Math.max(0, Math.min(companion.count, range[0]));
      other = companion.part(low, (int) Math.max(low, Math.min(companion.count, range[1])));
    }
    return decoder.decode(begin, to, other);
  }
}
