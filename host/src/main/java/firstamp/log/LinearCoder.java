package firstamp.log;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * Prediction and entropy coding (range asymmetric numeral systems, two states in turn) of a series.
 * The layout of the bytes is in {@code schemas/log-schema.md}, "series version 1".
 */
final class LinearCoder {
  /** How hard to try. */
  record Strength(int mostOwn, int block) {
    /** While recording. */
    static final Strength LIVE = new Strength(16, 1 << 15);

    /** Afterwards. */
    static final Strength REPACK = new Strength(32, 1 << 14);
  }

  private static final long LOWEST_STATE = 1L << 16;
  private static final int SHORTEST = 64;

  private final int[] x;
  private final int count;
  private final byte[] contexts;
  private final byte[] tokens;
  private final int[][] counts = new int[Tokens.CONTEXTS][Tokens.COUNT];
  private final BitWriter extras = new BitWriter();

  private LinearCoder(int[] x, int count) {
    this.x = x;
    this.count = count;
    this.contexts = new byte[count];
    this.tokens = new byte[count];
  }

  /**
   * The coded series; null when it is too short to gain.
   *
   * @param companion another series of the same length that the reader has already; null = none
   */
  static byte[] encode(int[] values, int count, int[] companion, Strength strength) {
    if (count < SHORTEST) {
      return null;
    }
    int base = mean(values, count);
    int[] x = centred(values, count, base);
    int companionBase = companion == null ? 0 : mean(companion, count);
    int[] h = companion == null ? null : centred(companion, count, companionBase);
    LinearCoder coder = new LinearCoder(x, count);
    int blocks = (count + strength.block() - 1) / strength.block();
    int[][] own = new int[blocks][];
    int[][] joint = new int[blocks][];
    int[] intercept = new int[blocks];
    int mean = Tokens.FIRST_MEAN;
    for (int block = 0; block < blocks; block++) {
      int from = block * strength.block();
      int to = Math.min(count, from + strength.block());
      coder.choose(h, from, to, strength.mostOwn(), own, joint, block);
      intercept[block] = coder.intercept(h, from, to, own[block], joint[block]);
      mean = coder.predict(h, from, to, intercept[block], own[block], joint[block], mean);
    }
    EntropyTables tables = EntropyTables.of(coder.counts);
    ByteBuffer out =
        ByteBuffer.allocate(
                64 + blocks * (6 + 2 * 48) + tables.longest() + 4 * count + coder.extras.longest())
            .order(ByteOrder.LITTLE_ENDIAN);
    out.putInt(base).putInt(companionBase).putInt(strength.block());
    for (int block = 0; block < blocks; block++) {
      out.putInt(intercept[block]);
      out.put((byte) own[block].length).put((byte) joint[block].length);
      for (int c : own[block]) {
        out.putShort((short) c);
      }
      for (int c : joint[block]) {
        out.putShort((short) c);
      }
    }
    tables.write(out);
    coder.range(tables, out);
    coder.extras.write(out);
    return Arrays.copyOf(out.array(), out.position());
  }

  private void choose(int[] h, int from, int to, int most, int[][] own, int[][] joint, int block) {
    Predictor.Fit fit = Predictor.fit(x, null, from, to, Math.min(most, (to - from) / 16));
    if (h != null && to - from >= 1000) {
      Predictor.Fit both = Predictor.fit(x, h, from, to, most);
      if (both.bits() < fit.bits()) {
        fit = both;
      }
    }
    own[block] = fit.own();
    joint[block] = fit.joint();
  }

  /** What the prediction is short of on the average. */
  private int intercept(int[] h, int from, int to, int[] own, int[] joint) {
    double sum = 0;
    for (int k = from; k < to; k++) {
      sum += (double) ((long) x[k] << Predictor.POINT) - prediction(x, h, k, 0, own, joint);
    }
    double mean = Math.rint(sum / (to - from));
    return (int) Math.max(Integer.MIN_VALUE, Math.min(Integer.MAX_VALUE, mean));
  }

  private int predict(
      int[] h, int from, int to, int intercept, int[] own, int[] joint, int meanBefore) {
    int mean = meanBefore;
    for (int k = from; k < to; k++) {
      long prediction = prediction(x, h, k, intercept, own, joint);
      int near = (int) (prediction + (1 << Predictor.POINT - 1) >> Predictor.POINT);
      int rest = (int) (prediction - ((long) near << Predictor.POINT));
      int error = x[k] - near;
      if (rest < 0) {
        error = -error;
        rest = -rest;
      }
      int context = Tokens.context(mean, Math.min(3, rest >> 9));
      int token = Tokens.of(error);
      contexts[k] = (byte) context;
      tokens[k] = (byte) token;
      counts[context][token]++;
      int bits = Tokens.extraBits(token);
      if (bits > 0) {
        extras.put(Tokens.extra(error, bits), bits);
      }
      mean = Tokens.mean(mean, error);
    }
    return mean;
  }

  private static long prediction(int[] x, int[] h, int k, int intercept, int[] own, int[] joint) {
    long sum = intercept;
    int reach = Math.min(own.length, k);
    for (int i = 0; i < reach; i++) {
      sum += (long) own[i] * x[k - 1 - i];
    }
    for (int j = 0; j < joint.length; j++) {
      int place = k + Predictor.COMPANION_FROM + j;
      if (place >= 0 && place < x.length) {
        sum += (long) joint[j] * h[place];
      }
    }
    return sum;
  }

  private void range(EntropyTables tables, ByteBuffer out) {
    long[] state = {LOWEST_STATE, LOWEST_STATE};
    short[] words = new short[count + 4];
    int used = 0;
    for (int k = count - 1; k >= 0; k--) {
      int table = tables.tableOf[contexts[k]];
      int frequency = tables.frequency[table][tokens[k]];
      long s = state[k & 1];
      if (s >= (long) frequency << 20) {
        words[used++] = (short) s;
        s >>>= 16;
      }
      long quotient = s / frequency;
      state[k & 1] =
          (quotient << EntropyTables.TOTAL_BITS)
              + (s - quotient * frequency)
              + tables.start[table][tokens[k]];
    }
    out.putInt(used).putInt((int) state[0]).putInt((int) state[1]);
    for (int w = used - 1; w >= 0; w--) {
      out.putShort(words[w]);
    }
  }

  /** The series; the buffer's bounds throw where it ends too early. */
  static int[] decode(byte[] data, int count, int[] companion) throws MalformedChunkException {
    ByteBuffer in = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
    int base = in.getInt();
    int companionBase = in.getInt();
    int block = in.getInt();
    if (block < 1 || count > 0 && (count - 1) / block + 1 > in.remaining()) {
      throw new MalformedChunkException("blocks of " + block + " values");
    }
    int blocks = count == 0 ? 0 : (count - 1) / block + 1;
    int[][] own = new int[blocks][];
    int[][] joint = new int[blocks][];
    int[] intercept = new int[blocks];
    for (int b = 0; b < blocks; b++) {
      intercept[b] = in.getInt();
      own[b] = new int[in.get() & 0xff];
      joint[b] = new int[in.get() & 0xff];
      if (own[b].length > Predictor.MOST_OWN
          || joint[b].length != 0 && joint[b].length != Predictor.COMPANION_TAPS) {
        throw new MalformedChunkException("predictor of order " + own[b].length);
      }
      if (joint[b].length > 0 && (companion == null || companion.length != count)) {
        throw new MalformedChunkException("companion channel is missing or of another length");
      }
      read(in, own[b]);
      read(in, joint[b]);
    }
    EntropyTables tables = EntropyTables.read(in);
    int[] h = companion == null ? null : centred(companion, companion.length, companionBase);
    return decode(in, data, count, base, block, intercept, own, joint, h, tables);
  }

  private static int[] decode(
      ByteBuffer in,
      byte[] data,
      int count,
      int base,
      int block,
      int[] intercept,
      int[][] own,
      int[][] joint,
      int[] h,
      EntropyTables tables)
      throws MalformedChunkException {
    int words = in.getInt();
    if (words < 0 || words > count + 4 || 2L * words + 8 > in.remaining()) {
      throw new MalformedChunkException(words + " code words in " + in.remaining() + " bytes");
    }
    long even = in.getInt() & 0xffff_ffffL;
    long odd = in.getInt() & 0xffff_ffffL;
    int word = in.position();
    int end = word + 2 * words;
    BitReader extras = new BitReader(data, end);
    int[][] lookup = lookup(tables);
    int[] x = new int[count];
    int mean = Tokens.FIRST_MEAN;
    for (int b = 0, k = 0; b < own.length; b++) {
      int to = (int) Math.min(count, (b + 1L) * block);
      for (; k < to; k++) {
        long prediction = prediction(x, h, k, intercept[b], own[b], joint[b]);
        int near = (int) (prediction + (1 << Predictor.POINT - 1) >> Predictor.POINT);
        int rest = (int) (prediction - ((long) near << Predictor.POINT));
        boolean turned = rest < 0;
        int[] table = lookup[Tokens.context(mean, Math.min(3, (turned ? -rest : rest) >> 9))];
        if (table == null) {
          throw new MalformedChunkException("a context without a table");
        }
        int entry = table[(int) even & EntropyTables.TOTAL - 1];
        even = (entry >>> 7 & 0x1fff) * (even >>> EntropyTables.TOTAL_BITS) + (entry >>> 20);
        if (even < LOWEST_STATE) {
          if (word == end) {
            throw new MalformedChunkException("code words end at value " + k);
          }
          even = even << 16 | data[word] & 0xff | (data[word + 1] & 0xff) << 8;
          word += 2;
        }
        long other = odd;
        odd = even;
        even = other;
        int token = entry & 0x7f;
        int error;
        if (token < Tokens.DIRECT) {
          error = token >>> 1 ^ -(token & 1);
        } else {
          error = Tokens.error(token, extras.take(Tokens.extraBits(token)));
        }
        x[k] = near + (turned ? -error : error);
        mean = Tokens.mean(mean, error);
      }
    }
    if (word != end || even != LOWEST_STATE || odd != LOWEST_STATE || !extras.over()) {
      throw new MalformedChunkException("code does not end with its last value");
    }
    for (int k = 0; k < count; k++) {
      x[k] += base;
    }
    return x;
  }

  /** Per context, for the low bits of a state: token, frequency, and place within the token. */
  private static int[][] lookup(EntropyTables tables) {
    int[][] perTable = new int[tables.frequency.length][];
    for (int t = 0; t < perTable.length; t++) {
      perTable[t] = new int[EntropyTables.TOTAL];
      for (int token = 0; token < Tokens.COUNT; token++) {
        int frequency = tables.frequency[t][token];
        int start = tables.start[t][token];
        for (int k = 0; k < frequency; k++) {
          perTable[t][start + k] = k << 20 | frequency << 7 | token;
        }
      }
    }
    int[][] lookup = new int[Tokens.CONTEXTS][];
    for (int context = 0; context < lookup.length; context++) {
      int table = tables.tableOf[context];
      lookup[context] = table < perTable.length ? perTable[table] : null;
    }
    return lookup;
  }

  private static void read(ByteBuffer in, int[] coefficients) {
    for (int i = 0; i < coefficients.length; i++) {
      coefficients[i] = in.getShort();
    }
  }

  private static int mean(int[] values, int count) {
    long sum = 0;
    for (int k = 0; k < count; k++) {
      sum += values[k];
    }
    return count == 0 ? 0 : (int) Math.floorDiv(sum + count / 2, (long) count);
  }

  private static int[] centred(int[] values, int count, int base) {
    int[] x = new int[count];
    for (int k = 0; k < count; k++) {
      x[k] = values[k] - base;
    }
    return x;
  }
}
