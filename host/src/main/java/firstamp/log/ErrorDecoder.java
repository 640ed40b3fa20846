package firstamp.log;

/** Bytes back to prediction errors; the reverse of {@link ErrorEncoder}. */
final class ErrorDecoder {
  private final EntropyTables tables;
  private final int[][] lookup;
  private final byte[] data;

  /** A decoder for the segments of one series. */
  ErrorDecoder(EntropyTables tables, byte[] data) {
    this.tables = tables;
    this.lookup = new int[tables.frequency.length][];
    this.data = data;
  }

  /** Made when it is needed first: a short span needs few of them. */
  private int[] lookup(int context) throws MalformedChunkException {
    int table = tables.tableOf[context];
    if (table >= lookup.length) {
      throw new MalformedChunkException("a context without a table");
    }
    if (lookup[table] == null) {
      lookup[table] = lookup(tables.frequency[table], tables.start[table]);
    }
    return lookup[table];
  }

  /** For the low bits of a state: place within the token, frequency, token. */
  private static int[] lookup(int[] frequencies, int[] starts) {
    int[] lookup = new int[EntropyTables.TOTAL];
    for (int token = 0; token < Tokens.COUNT; token++) {
      int packed = frequencies[token] << 7 | token;
      int start = starts[token];
      for (int k = 0; k < frequencies[token]; k++) {
        lookup[start + k] = k << 20 | packed;
      }
    }
    return lookup;
  }

  /**
   * Errors of one segment, from 0 to {@code end}.
   *
   * @param at of its bytes
   * @param words code words of it
   * @param extraBytes plain bits after them
   * @param whole whether the segment ends there
   */
  void read(
      int at, int words, int extraBytes, int firstContext, int end, boolean whole, int[] errors)
      throws MalformedChunkException {
    int word = at + 16;
    int wordsEnd = word + 2 * words;
    int extrasEnd = wordsEnd + extraBytes;
    BitReader extras = new BitReader(data, wordsEnd, extrasEnd);
    int a = state(at);
    int b = state(at + 4);
    int c = state(at + 8);
    int d = state(at + 12);
    int context = firstContext;
    int k = 0;
    while (k < end) {
      int[] table = lookup(context);
      int stop = Math.min(end, k + ErrorContext.RUN);
      int size = 0;
      for (; k + 4 <= stop; k += 4) {
        int p = table[a & EntropyTables.TOTAL - 1];
        int q = table[b & EntropyTables.TOTAL - 1];
        int r = table[c & EntropyTables.TOTAL - 1];
        int s = table[d & EntropyTables.TOTAL - 1];
        a = (p >>> 7 & 0x1fff) * (a >>> 12) + (p >>> 20);
        b = (q >>> 7 & 0x1fff) * (b >>> 12) + (q >>> 20);
        c = (r >>> 7 & 0x1fff) * (c >>> 12) + (r >>> 20);
        d = (s >>> 7 & 0x1fff) * (d >>> 12) + (s >>> 20);
        if (word + 8 > wordsEnd) {
          int missing = needs(a) + needs(b) + needs(c) + needs(d);
          if (word + 2 * missing > wordsEnd) {
            throw new MalformedChunkException("code words end at value " + k);
          }
        }
        if (word + 8 > data.length) {
          if (a < ErrorContext.LOWEST) {
            a = a << 16 | Words.get(data, word);
            word += 2;
          }
          if (b < ErrorContext.LOWEST) {
            b = b << 16 | Words.get(data, word);
            word += 2;
          }
          if (c < ErrorContext.LOWEST) {
            c = c << 16 | Words.get(data, word);
            word += 2;
          }
          if (d < ErrorContext.LOWEST) {
            d = d << 16 | Words.get(data, word);
            word += 2;
          }
        } else {
          // Which state needs a word cannot be foreseen: masks (all ones = it does), no branches.
          int needed = a - ErrorContext.LOWEST >> 31;
          a = a << (needed & 16) | Words.get(data, word) & needed;
          word += needed & 2;
          needed = b - ErrorContext.LOWEST >> 31;
          b = b << (needed & 16) | Words.get(data, word) & needed;
          word += needed & 2;
          needed = c - ErrorContext.LOWEST >> 31;
          c = c << (needed & 16) | Words.get(data, word) & needed;
          word += needed & 2;
          needed = d - ErrorContext.LOWEST >> 31;
          d = d << (needed & 16) | Words.get(data, word) & needed;
          word += needed & 2;
        }
        int e = error(p & 0x7f, extras);
        int f = error(q & 0x7f, extras);
        int g = error(r & 0x7f, extras);
        int h = error(s & 0x7f, extras);
        errors[k] = e;
        errors[k + 1] = f;
        errors[k + 2] = g;
        errors[k + 3] = h;
        size += ErrorContext.size(e) + ErrorContext.size(f);
        size += ErrorContext.size(g) + ErrorContext.size(h);
      }
      for (; k < stop; k++) {
        int p = table[a & EntropyTables.TOTAL - 1];
        int next = (p >>> 7 & 0x1fff) * (a >>> 12) + (p >>> 20);
        if (next < ErrorContext.LOWEST) {
          if (word == wordsEnd) {
            throw new MalformedChunkException("code words end at value " + k);
          }
          next = next << 16 | Words.get(data, word);
          word += 2;
        }
        a = b;
        b = c;
        c = d;
        d = next;
        errors[k] = error(p & 0x7f, extras);
        size += ErrorContext.size(errors[k]);
      }
      context = ErrorContext.of(size);
    }
    boolean begun =
        a == ErrorContext.LOWEST
            && b == ErrorContext.LOWEST
            && c == ErrorContext.LOWEST
            && d == ErrorContext.LOWEST;
    if (whole && (word != wordsEnd || !begun || !extras.over())) {
      throw new MalformedChunkException("code does not end with its last value");
    }
  }

  private int state(int at) throws MalformedChunkException {
    int state = Words.get(data, at) | Words.get(data, at + 2) << 16;
    if (state < ErrorContext.LOWEST) {
      throw new MalformedChunkException("state " + state);
    }
    return state;
  }

  private static int needs(int state) {
    return state < ErrorContext.LOWEST ? 1 : 0;
  }

  private static int error(int token, BitReader extras) {
    if (token < Tokens.DIRECT) {
      return token >>> 1 ^ -(token & 1);
    }
    return Tokens.error(token, extras.take(Tokens.extraBits(token)));
  }
}
