package firstamp.log.code;

/** Bytes back to prediction errors; the reverse of {@link ResidualEncoder}. */
final class ResidualDecoder {
  /** What is added to a direct error in the lookup: it then is below the tokens of others. */
  private static final int NEAREST = Tokens.DIRECT / 2;

  /** More than there are tokens, a power of two. */
  private static final int MOST_TOKENS = 128;

  private final EntropyTables tables;
  private final byte[][] tokens;
  private final int[][] facts;
  private final byte[] data;

  /** A decoder for the segments of one series. */
  ResidualDecoder(EntropyTables tables, byte[] data) {
    this.tables = tables;
    this.tokens = new byte[tables.frequency.length][];
    this.facts = new int[tables.frequency.length][];
    this.data = data;
  }

  private int table(int context) throws MalformedChunkException {
    int table = tables.tableOf[context];
    if (table >= tokens.length) {
      throw new MalformedChunkException("a context without a table");
    }
    if (tokens[table] == null) {
      // Made when it is needed first: a short span needs few of them.
      make(table);
    }
    return table;
  }

  /** For the low bits of a state the token; for a token begin of its run, frequency, error. */
  private void make(int table) {
    int[] frequency = tables.frequency[table];
    int[] start = tables.start[table];
    byte[] tokens = new byte[EntropyTables.TOTAL];
    int[] facts = new int[MOST_TOKENS];
    for (int token = 0; token < Tokens.COUNT; token++) {
      if (frequency[token] > 0) {
        java.util.Arrays.fill(tokens, start[token], start[token] + frequency[token], (byte) token);
        int code = token < Tokens.DIRECT ? (token >>> 1 ^ -(token & 1)) + NEAREST : token;
        facts[token] = start[token] << 20 | frequency[token] << 7 | code;
      }
    }
    this.tokens[table] = tokens;
    this.facts[table] = facts;
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
    int table = table(firstContext);
    byte[] tokens = this.tokens[table];
    int[] facts = this.facts[table];
    int size = 0;
    int fours = end & -4;
    for (int k = 0; k < fours; k += 4) {
      if ((k & ResidualContext.RUN - 1) == 0 && k > 0) {
        table = table(ResidualContext.of(size));
        tokens = this.tokens[table];
        facts = this.facts[table];
        size = 0;
      }
      int p = facts[tokens[a & tokens.length - 1] & facts.length - 1];
      int q = facts[tokens[b & tokens.length - 1] & facts.length - 1];
      int r = facts[tokens[c & tokens.length - 1] & facts.length - 1];
      int s = facts[tokens[d & tokens.length - 1] & facts.length - 1];
      a = (p >>> 7 & 0x1fff) * (a >>> 12) + (a & EntropyTables.TOTAL - 1) - (p >>> 20);
      b = (q >>> 7 & 0x1fff) * (b >>> 12) + (b & EntropyTables.TOTAL - 1) - (q >>> 20);
      c = (r >>> 7 & 0x1fff) * (c >>> 12) + (c & EntropyTables.TOTAL - 1) - (r >>> 20);
      d = (s >>> 7 & 0x1fff) * (d >>> 12) + (d & EntropyTables.TOTAL - 1) - (s >>> 20);
      long next;
      if (word + 8 <= wordsEnd) {
        next = LittleEndian.eight(data, word);
      } else {
        int missing = needs(a) + needs(b) + needs(c) + needs(d);
        if (word + 2 * missing > wordsEnd) {
          throw new MalformedChunkException("code words end at value " + k);
        }
        next = last(word);
      }
      // Which state needs a word cannot be foreseen: masks (all ones = it does), no branches.
      int needed = a - ResidualContext.LOWEST >> 31;
      int bits = needed & 16;
      a = a << bits | (int) next & 0xffff & needed;
      next >>>= bits;
      int all = bits;
      needed = b - ResidualContext.LOWEST >> 31;
      bits = needed & 16;
      b = b << bits | (int) next & 0xffff & needed;
      next >>>= bits;
      all += bits;
      needed = c - ResidualContext.LOWEST >> 31;
      bits = needed & 16;
      c = c << bits | (int) next & 0xffff & needed;
      next >>>= bits;
      all += bits;
      needed = d - ResidualContext.LOWEST >> 31;
      bits = needed & 16;
      d = d << bits | (int) next & 0xffff & needed;
      word += all + bits >> 3;
      int e = (p & 0x7f) - NEAREST;
      int f = (q & 0x7f) - NEAREST;
      int g = (r & 0x7f) - NEAREST;
      int h = (s & 0x7f) - NEAREST;
      if (((p | q | r | s) & 0x60) == 0) {
        size += Math.abs(e) + Math.abs(f) + (Math.abs(g) + Math.abs(h));
      } else {
        e = error(p & 0x7f, extras);
        f = error(q & 0x7f, extras);
        g = error(r & 0x7f, extras);
        h = error(s & 0x7f, extras);
        size += ResidualContext.size(e) + ResidualContext.size(f);
        size += ResidualContext.size(g) + ResidualContext.size(h);
      }
      errors[k] = e;
      errors[k + 1] = f;
      errors[k + 2] = g;
      errors[k + 3] = h;
    }
    for (int k = fours; k < end; k++) {
      if ((k & ResidualContext.RUN - 1) == 0 && k > 0) {
        table = table(ResidualContext.of(size));
        tokens = this.tokens[table];
        facts = this.facts[table];
        size = 0;
      }
      int p = facts[tokens[a & tokens.length - 1] & facts.length - 1];
      int next = (p >>> 7 & 0x1fff) * (a >>> 12) + (a & EntropyTables.TOTAL - 1) - (p >>> 20);
      if (next < ResidualContext.LOWEST) {
        if (word == wordsEnd) {
          throw new MalformedChunkException("code words end at value " + k);
        }
        next = next << 16 | LittleEndian.get(data, word);
        word += 2;
      }
      a = b;
      b = c;
      c = d;
      d = next;
      errors[k] = error(p & 0x7f, extras);
      size += ResidualContext.size(errors[k]);
    }
    boolean begun =
        a == ResidualContext.LOWEST
            && b == ResidualContext.LOWEST
            && c == ResidualContext.LOWEST
            && d == ResidualContext.LOWEST;
    if (whole && (word != wordsEnd || !begun || !extras.over())) {
      throw new MalformedChunkException("code does not end with its last value");
    }
  }

  private int state(int at) throws MalformedChunkException {
    int state = LittleEndian.get(data, at) | LittleEndian.get(data, at + 2) << 16;
    if (state < ResidualContext.LOWEST) {
      throw new MalformedChunkException("state " + state);
    }
    return state;
  }

  private long last(int word) {
    long eight = 0;
    for (int k = Math.min(data.length - word, 8) - 1; k >= 0; k--) {
      eight = eight << 8 | data[word + k] & 0xff;
    }
    return eight;
  }

  private static int needs(int state) {
    return state < ResidualContext.LOWEST ? 1 : 0;
  }

  private static int error(int token, BitReader extras) {
    if (token < Tokens.DIRECT) {
      return token - NEAREST;
    }
    return Tokens.error(token, extras.take(Tokens.extraBits(token)));
  }
}
