package firstamp.log;

import java.nio.ByteBuffer;

/**
 * Prediction errors to bytes: tokens in contexts, each by its frequency (range asymmetric numeral
 * systems, four states in turn), and plain bits for what is large.
 *
 * <p>The context of a run of {@link ErrorContext#RUN} errors is how large the errors of the run
 * before were; so a reader knows it before the run, and errors can be taken without waiting for
 * predictions.
 */
final class ErrorEncoder {
  private final int[] errors;
  private final int count;
  private final byte[] tokens;
  private final byte[] contexts;
  private final int[][] counts = new int[ErrorContext.COUNT][Tokens.COUNT];
  private final short[] words;
  private EntropyTables tables;
  private final int[] state = new int[4];
  private boolean large;
  private long[] reciprocal;
  private long[] limit;
  private int[] shift;
  private int[] rest;
  private int[] start;

  /** Errors of a whole series. */
  ErrorEncoder(int[] errors, int count, int segment) {
    this.errors = errors;
    this.count = count;
    this.tokens = new byte[count];
    this.contexts = new byte[count / ErrorContext.RUN + 1 + count / segment];
    this.words = new short[segment + 8];
  }

  /** Looks at a segment; returns the context of its first run. */
  int scan(int begin, int end) {
    int first = ErrorContext.of(sizeOfRun(begin, end));
    int context = first;
    for (int from = begin; from < end; from += ErrorContext.RUN) {
      int to = Math.min(end, from + ErrorContext.RUN);
      int[] ofContext = counts[context];
      contexts[from / ErrorContext.RUN] = (byte) context;
      int size = 0;
      for (int k = from; k < to; k++) {
        int error = errors[k];
        int folded = error << 1 ^ error >> 31;
        int token = folded;
        if (folded < 0 || folded >= Tokens.DIRECT) {
          token = Tokens.of(error);
          large = true;
        }
        tokens[k] = (byte) token;
        ofContext[token]++;
        size += ErrorContext.size(error);
      }
      context = ErrorContext.of(size);
    }
    return first;
  }

  private int sizeOfRun(int begin, int end) {
    int size = 0;
    for (int k = begin; k < Math.min(end, begin + ErrorContext.RUN); k++) {
      size += ErrorContext.size(errors[k]);
    }
    return size;
  }

  /** Frequencies of everything that was looked at. */
  EntropyTables tables() {
    tables = EntropyTables.of(counts, 1);
    int number = tables.frequency.length * Tokens.COUNT;
    reciprocal = new long[number];
    shift = new int[number];
    limit = new long[number];
    rest = new int[number];
    start = new int[number];
    for (int at = 0; at < number; at++) {
      int frequency = tables.frequency[at / Tokens.COUNT][at % Tokens.COUNT];
      if (frequency > 0) {
        int width = 32 - Integer.numberOfLeadingZeros(frequency - 1);
        // Division of one below 2^31 by one up to 4096, as a product (Granlund and Montgomery
        // 1994): exact, as the reciprocal has 32 bits and is rounded up.
        shift[at] = width + 31;
        reciprocal[at] = ((1L << width + 31) + frequency - 1) / frequency;
        limit[at] = (long) frequency << 19;
        // (s / f) * 4096 + s % f + start = s + (s / f) * (4096 - f) + start
        rest[at] = EntropyTables.TOTAL - frequency;
        start[at] = tables.start[at / Tokens.COUNT][at % Tokens.COUNT];
      }
    }
    return tables;
  }

  /**
   * Bytes of a segment: four states, code words, plain bits.
   *
   * @param sizes gets the number of words and of plain bytes
   * @return where they end
   */
  int write(int begin, int end, byte[] out, int at, int[] sizes) {
    int used = code(begin, end);
    int place = at;
    for (int s : state) {
      Words.put(out, place, s);
      Words.put(out, place + 2, s >>> 16);
      place += 4;
    }
    for (int w = used - 1; w >= 0; w--, place += 2) {
      Words.put(out, place, words[w]);
    }
    sizes[0] = used;
    sizes[1] = large ? extras(begin, end, out, place) : 0;
    return place + sizes[1];
  }

  /** Codes backwards, as a reader takes the words forwards; returns how many words there are. */
  private int code(int begin, int end) {
    java.util.Arrays.fill(state, ErrorContext.LOWEST);
    int used = 0;
    int k = end;
    while (k > begin) {
      int run = (k - 1) / ErrorContext.RUN;
      int from = run * ErrorContext.RUN;
      int base = tables.tableOf[contexts[run]] * Tokens.COUNT;
      while ((k & 3) != 0) {
        k--;
        int s = state[k & 3];
        int symbolAt = base + tokens[k];
        if (s >= limit[symbolAt]) {
          words[used++] = (short) s;
          s >>>= 16;
        }
        state[k & 3] = next(s, symbolAt);
      }
      int a = state[0];
      int b = state[1];
      int c = state[2];
      int d = state[3];
      for (; k > from; k -= 4) {
        int p = base + tokens[k - 4];
        int q = base + tokens[k - 3];
        int r = base + tokens[k - 2];
        int s = base + tokens[k - 1];
        if (d >= limit[s]) {
          words[used++] = (short) d;
          d >>>= 16;
        }
        if (c >= limit[r]) {
          words[used++] = (short) c;
          c >>>= 16;
        }
        if (b >= limit[q]) {
          words[used++] = (short) b;
          b >>>= 16;
        }
        if (a >= limit[p]) {
          words[used++] = (short) a;
          a >>>= 16;
        }
        d = next(d, s);
        c = next(c, r);
        b = next(b, q);
        a = next(a, p);
      }
      state[0] = a;
      state[1] = b;
      state[2] = c;
      state[3] = d;
    }
    return used;
  }

  private int next(int s, int symbolAt) {
    int quotient = (int) (s * reciprocal[symbolAt] >>> shift[symbolAt]);
    return s + quotient * rest[symbolAt] + start[symbolAt];
  }

  private int extras(int begin, int end, byte[] out, int at) {
    BitWriter extras = new BitWriter();
    for (int k = begin; k < end; k++) {
      int bits = Tokens.extraBits(tokens[k]);
      if (bits > 0) {
        extras.put(Tokens.extra(errors[k], bits), bits);
      }
    }
    ByteBuffer buffer = ByteBuffer.wrap(out).position(at);
    extras.write(buffer);
    return buffer.position() - at;
  }
}
