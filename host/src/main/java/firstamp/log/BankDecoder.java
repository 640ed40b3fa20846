package firstamp.log;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Reads series version 3, whole or only the segments that are asked for. */
final class BankDecoder {
  private final byte[] data;
  private final int count;
  private final int base;
  private final int segment;
  private final int segments;
  private final PredictorBank bank;
  private final int companionBase;
  private final int stride;
  private final int offset;
  private final int taps;
  private final ErrorDecoder errors;
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
    errors = new ErrorDecoder(tables, data);
    segments = (count + segment - 1) / segment;
    directory = in.position();
    places = new int[segments + 1];
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

  int segments() {
    return segments;
  }

  int segmentOf(int value) {
    return value / segment;
  }

  /** Whether the series cannot be read without its companion. */
  boolean needsCompanion() {
    return taps > 0;
  }

  /** The companion's values that a segment looks at: from, to; both may lie outside. */
  long[] companionRange(int s) {
    long middle = offset + taps / 2;
    return new long[] {
      middle + (long) stride * s * segment,
      middle + (long) stride * Math.min(count, (s + 1L) * segment)
    };
  }

  /** A decoder of segments, to be used by one thread. */
  final class Worker {
    private final Recursion recursion;
    private final int[] scratch;

    /**
     * Made once for several segments.
     *
     * @param companion its values, those of {@link #companionRange} at least; null = none
     */
    Worker(int[] companion) throws MalformedChunkException {
      if (taps > 0 && companion == null) {
        throw new MalformedChunkException("companion channel is missing");
      }
      int longest = Math.min(segment, Math.max(1, count));
      Companion h =
          taps == 0
              ? null
              : new Companion(companion, companion.length, companionBase, stride, offset, taps);
      recursion = new Recursion(bank, h, longest);
      scratch = new int[longest];
    }

    /** Puts the values of a segment into their places. */
    void decode(int s, int[] values) throws MalformedChunkException {
      int line = directory + s * BankEncoder.DIRECTORY_BYTES;
      int words = Words.get(data, line);
      int begin = s * segment;
      int end = (int) Math.min(count, (long) begin + segment);
      if (words > end - begin + 4 || (data[line + 4] & 0xff) >= ErrorContext.COUNT) {
        throw new MalformedChunkException(words + " code words for " + (end - begin) + " values");
      }
      errors.read(
          places[s], words, Words.get(data, line + 2), data[line + 4], end - begin, scratch);
      recursion.values(scratch, begin, end, (short) Words.get(data, line + 5), base, values);
    }
  }
}
