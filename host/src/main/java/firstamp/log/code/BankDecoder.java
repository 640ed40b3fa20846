package firstamp.log.code;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Reads series version 3, whole or only the segments that are asked for. */
final class BankDecoder {
  private final byte[] data;
  private final int count;
  private final int base;
  private final int segment;
  private final PredictorBank bank;
  private final int companionBase;
  private final int stride;
  private final int offset;
  private final int taps;
  private final ResidualDecoder errors;
  private final int directory;
  private final int[] places;

  /** Reads all but the segments; the buffer's bounds throw where the data end too early. */
  BankDecoder(byte[] data, int count) throws MalformedChunkException {
    this.data = data;
    this.count = count;
    ByteBuffer in = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
    base = in.getInt();
    segment = in.getInt();
    int predictors = in.get() & 0xff;
    taps = in.get() & 0xff;
    if (segment < PredictorBank.BLOCK
        || segment % PredictorBank.BLOCK != 0
        || segment > SeriesCoder.LONGEST
        || predictors < 1
        || predictors > PredictorBank.MOST
        || taps > PredictorBank.MOST_JOINT) {
      throw new MalformedChunkException(
          predictors + " predictors, " + taps + " taps, segments of " + segment);
    }
    companionBase = taps > 0 ? in.getInt() : 0;
    stride = taps > 0 ? in.get() & 0xff : 1;
    offset = taps > 0 ? in.getShort() : 0;
    if (stride == 0) {
      throw new MalformedChunkException("companion with stride 0");
    }
    bank = bank(in, predictors);
    EntropyTables tables = EntropyTables.read(in);
    errors = new ResidualDecoder(tables, data);
    int segments = (count + segment - 1) / segment;
    directory = in.position();
    places = new int[segments];
    long place = directory + (long) segments * BankEncoder.DIRECTORY_BYTES;
    for (int s = 0; s < segments; s++) {
      places[s] = (int) place;
      int line = directory + s * BankEncoder.DIRECTORY_BYTES;
      place += 16 + 2 * (in.getShort(line) & 0xffff) + (in.getShort(line + 2) & 0xffff);
      if (place > data.length) {
        throw new MalformedChunkException("segment " + s + " ends after the data");
      }
    }
    if (place != data.length) {
      throw new MalformedChunkException(data.length - place + " bytes too many");
    }
  }

  private PredictorBank bank(ByteBuffer in, int predictors) throws MalformedChunkException {
    int[] intercepts = new int[predictors];
    int[][] own = new int[predictors][];
    int[][] joint = new int[predictors][taps];
    for (int p = 0; p < predictors; p++) {
      intercepts[p] = in.getInt();
      int order = in.get() & 0xff;
      if (order > PredictorBank.MOST_OWN) {
        throw new MalformedChunkException("predictor of order " + order);
      }
      own[p] = new int[order];
      for (int i = 0; i < order; i++) {
        own[p][i] = in.getShort();
      }
      for (int j = 0; j < taps; j++) {
        joint[p][j] = in.getShort();
      }
    }
    int[] choice = new int[PredictorBank.blocks(count)];
    int width = Bits.width(predictors - 1);
    byte[] packed = new byte[Bits.bytes(choice.length, width)];
    in.get(packed);
    Bits.unpack(packed, 0, choice.length, 0, width, choice, 0);
    for (int predictor : choice) {
      if (predictor >= predictors) {
        throw new MalformedChunkException("predictor " + predictor + " of " + predictors);
      }
    }
    return new PredictorBank(intercepts, own, joint, choice);
  }

  /** The first value of the segment that holds a value. */
  int beginOfSegment(int value) {
    return value / segment * segment;
  }

  /** Whether the series cannot be read without its companion. */
  boolean needsCompanion() {
    return taps > 0;
  }

  /** The companion's values that values from a segment's begin on look at; may lie outside. */
  long[] companionRange(int begin, int end) {
    long middle = offset + taps / 2;
    return new long[] {middle + (long) stride * begin, middle + (long) stride * end + taps / 2};
  }

  /**
   * Values of a series.
   *
   * @param begin first value of a segment
   * @param companion its values, those of {@link #companionRange} as far as there are any; null =
   *     none
   */
  CodedSeries.Part decode(int begin, int end, CodedSeries.Part companion)
      throws MalformedChunkException {
    if (taps > 0 && companion == null) {
      throw new MalformedChunkException("companion channel is missing");
    }
    ReferenceChannel h = null;
    if (taps > 0) {
      int[] values = companion.values();
      int shifted = offset - companion.origin();
      h = new ReferenceChannel(values, values.length, companionBase, stride, shifted, taps);
    }
    int longest = Math.min(segment, end - begin);
    ResidualFilter recursion = new ResidualFilter(bank, h, longest);
    int[] scratch = new int[longest];
    int[] values = new int[end - begin];
    for (int from = begin; from < end; from += segment) {
      int s = from / segment;
      int line = directory + s * BankEncoder.DIRECTORY_BYTES;
      int words = LittleEndian.get(data, line);
      int segmentEnd = (int) Math.min(count, (long) from + segment);
      int to = Math.min(end, segmentEnd);
      if (words > segmentEnd - from + 4 || (data[line + 4] & 0xff) >= ResidualContext.COUNT) {
        throw new MalformedChunkException(words + " code words for " + (segmentEnd - from));
      }
      errors.read(
          places[s],
          words,
          LittleEndian.get(data, line + 2),
          data[line + 4],
          to - from,
          to == segmentEnd,
          scratch);
      recursion.values(
          scratch,
          new ReferenceChannel.Segment(from, segmentEnd),
          to,
          (short) LittleEndian.get(data, line + 5),
          base,
          values,
          begin);
    }
    return new CodedSeries.Part(values, begin);
  }
}
