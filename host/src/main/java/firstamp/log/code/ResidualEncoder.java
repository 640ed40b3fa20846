package firstamp.log.code;

import java.util.Arrays;

/**
 * Prediction errors to bytes: tokens in contexts, each by its frequency (range asymmetric numeral
 * systems, four states in turn), and plain bits for what is large.
 *
 * <p>One encoder codes one series after another and keeps its memory.
 *
 * <p>The context of a run of {@link ResidualContext#RUN} errors is how large the errors of the run
 * before were; so a reader knows it before the run, and errors can be taken without waiting for
 * predictions.
 */
final class ResidualEncoder {
  /** Neighbours are counted apart: adding to a number just written waits for it. */
  private static final int HISTOGRAMS = 4;

  private static final int START_BITS = 12;

  private final int[][] counts = new int[ResidualContext.COUNT][HISTOGRAMS * Tokens.COUNT];
  private final int[] state = new int[4];
  private int[] errors;
  private int[] tokens = new int[0];
  private int[] magnitudes = new int[0];
  private byte[] contexts = new byte[0];
  private short[] words = new short[0];
  private EntropyTables tables;
  private boolean large;
  private boolean[] largeRuns = new boolean[0];
  private double[] reciprocal;
  private int[] places;
  private final int[] tableBase = new int[ResidualContext.COUNT];

  /** Begins with the errors of a whole series. */
  void begin(int[] errors, int count, int segment) {
    this.errors = errors;
    if (tokens.length < count) {
      tokens = new int[count];
      magnitudes = new int[count];
      contexts = new byte[count / ResidualContext.RUN + 1 + count / segment];
      largeRuns = new boolean[contexts.length];
    }
    if (words.length < segment + 8) {
      words = new short[segment + 8];
    }
    large = false;
    for (int[] ofContext : counts) {
      Arrays.fill(ofContext, 0);
    }
  }

  /** Looks at a segment; returns the context of its first run. */
  int scan(int begin, int end) {
    foldAll(begin, end);
    int first = -1;
    int context = 0;
    for (int from = begin; from < end; from += ResidualContext.RUN) {
      int to = Math.min(end, from + ResidualContext.RUN);
      int size = tokens(from, to);
      int after = ResidualContext.of(size);
      if (first < 0) {
        first = after;
        context = after;
      }
      count(context, from, to);
      contexts[from / ResidualContext.RUN] = (byte) context;
      context = after;
    }
    return first;
  }

  /** The tokens of small errors, and how large all are. */
  private void foldAll(int begin, int end) {
    int[] errors = this.errors;
    int[] tokens = this.tokens;
    int[] magnitudes = this.magnitudes;
    for (int k = begin; k < end; k++) {
      tokens[k] = Tokens.folded(errors[k]);
    }
    for (int k = begin; k < end; k++) {
      magnitudes[k] = Math.abs(errors[k]);
    }
  }

  /** Sets the tokens of a run that are not small; returns the sum of the errors' sizes. */
  private int tokens(int from, int to) {
    int size = 0;
    int seen = 0;
    for (int k = from; k < to; k++) {
      seen |= tokens[k];
      size += magnitudes[k];
    }
    boolean direct = (seen & -Tokens.DIRECT) == 0;
    largeRuns[from / ResidualContext.RUN] = !direct;
    if (direct) {
      return size;
    }
    large = true;
    if ((seen & -Tokens.TABLE) == 0) {
      for (int k = from; k < to; k++) {
        tokens[k] = Tokens.ofFolded(tokens[k]);
      }
      return size;
    }
    size = 0;
    for (int k = from; k < to; k++) {
      tokens[k] = Tokens.of(errors[k]);
      size += ResidualContext.size(errors[k]);
    }
    return size;
  }

  private void count(int context, int from, int to) {
    int[] ofContext = counts[context];
    int k = from;
    for (; k + 4 <= to; k += 4) {
      ofContext[tokens[k]]++;
      ofContext[Tokens.COUNT + tokens[k + 1]]++;
      ofContext[2 * Tokens.COUNT + tokens[k + 2]]++;
      ofContext[3 * Tokens.COUNT + tokens[k + 3]]++;
    }
    for (; k < to; k++) {
      ofContext[tokens[k]]++;
    }
  }

  /** Frequencies of everything that was looked at. */
  EntropyTables tables() {
    int[][] sums = new int[ResidualContext.COUNT][Tokens.COUNT];
    for (int context = 0; context < sums.length; context++) {
      for (int histogram = 0; histogram < HISTOGRAMS; histogram++) {
        int from = histogram * Tokens.COUNT;
        for (int token = 0; token < Tokens.COUNT; token++) {
          sums[context][token] += counts[context][from + token];
        }
      }
    }
    tables = EntropyTables.of(sums, 1);
    for (int context = 0; context < tableBase.length; context++) {
      tableBase[context] = tables.tableOf[context] * Tokens.COUNT;
    }
    int number = tables.frequency.length * Tokens.COUNT;
    reciprocal = new double[number];
    places = new int[number];
    for (int at = 0; at < number; at++) {
      int frequency = tables.frequency[at / Tokens.COUNT][at % Tokens.COUNT];
      if (frequency > 0) {
        // Division as a product with a number that is no smaller than 1/f and larger by less than
        // 2^-51 of it: exact, as a state is below 2^31 and a quotient's distance from the next
        // whole number at least 1/f >= 2^-12.
        reciprocal[at] = Math.nextUp(1.0 / frequency);
        places[at] =
            EntropyTables.TOTAL - frequency << START_BITS
                | tables.start[at / Tokens.COUNT][at % Tokens.COUNT];
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
      LittleEndian.put(out, place, s);
      LittleEndian.put(out, place + 2, s >>> 16);
      place += 4;
    }
    for (int w = used - 1; w >= 0; w--, place += 2) {
      LittleEndian.put(out, place, words[w]);
    }
    sizes[0] = used;
    sizes[1] = large ? extras(begin, end, out, place) : 0;
    return place + sizes[1];
  }

  /** Codes backwards, as a reader takes the words forwards; returns how many words there are. */
  private int code(int begin, int end) {
    Arrays.fill(state, ResidualContext.LOWEST);
    int used = 0;
    int k = end;
    for (; (k & 3) != 0; k--) {
      int at = base(k - 1) + tokens[k - 1];
      int one = state[k - 1 & 3];
      int spill = spill(one, places[at]);
      words[used] = (short) one;
      used += spill;
      state[k - 1 & 3] = next(one >>> (spill << 4), reciprocal[at], places[at]);
    }
    int a = state[0];
    int b = state[1];
    int c = state[2];
    int d = state[3];
    // One long loop, and which state gives off a word is a number, not a branch that nobody could
    // foresee.
    for (; k > begin; k -= 4) {
      int base = base(k - 1);
      int at = base + tokens[k - 1];
      int spill = spill(d, places[at]);
      words[used] = (short) d;
      used += spill;
      d = next(d >>> (spill << 4), reciprocal[at], places[at]);
      at = base + tokens[k - 2];
      spill = spill(c, places[at]);
      words[used] = (short) c;
      used += spill;
      c = next(c >>> (spill << 4), reciprocal[at], places[at]);
      at = base + tokens[k - 3];
      spill = spill(b, places[at]);
      words[used] = (short) b;
      used += spill;
      b = next(b >>> (spill << 4), reciprocal[at], places[at]);
      at = base + tokens[k - 4];
      spill = spill(a, places[at]);
      words[used] = (short) a;
      used += spill;
      a = next(a >>> (spill << 4), reciprocal[at], places[at]);
    }
    state[0] = a;
    state[1] = b;
    state[2] = c;
    state[3] = d;
    return used;
  }

  /** Where the table of a value's run begins. */
  private int base(int k) {
    return tableBase[contexts[k >> 4]];
  }

  /** 1 when the state must give off a word before the token, else 0. */
  private static int spill(int state, int place) {
    return Integer.MAX_VALUE - (place >>> START_BITS << 19) - state >>> 31;
  }

  private static int next(int state, double reciprocal, int place) {
    // (s / f) * 4096 + s % f + start = s + (s / f) * (4096 - f) + start
    int quotient = (int) (state * reciprocal);
    return state + quotient * (place >>> START_BITS) + (place & EntropyTables.TOTAL - 1);
  }

  private int extras(int begin, int end, byte[] out, int at) {
    long held = 0;
    int bits = 0;
    int place = at;
    for (int from = begin; from < end; from += ResidualContext.RUN) {
      int to =
          largeRuns[from / ResidualContext.RUN] ? Math.min(end, from + ResidualContext.RUN) : from;
      for (int k = from; k < to; k++) {
        int width = Tokens.extraBits(tokens[k]);
        held |= (long) Tokens.extra(errors[k], width) << bits;
        bits += width;
        if (bits >= 32) {
          LittleEndian.putFour(out, place, (int) held);
          place += 4;
          held >>>= 32;
          bits -= 32;
        }
      }
    }
    for (; bits > 0; bits -= 8) {
      out[place++] = (byte) held;
      held >>>= 8;
    }
    return place - at;
  }
}
