package firstamp.log.code;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * Series version 1 ({@code schemas/log-schema.md}), for whole numbers of any size: prediction and
 * entropy coding (range asymmetric numeral systems, two states in turn).
 */
final class LinearEncoder {
  /** A state is at least this. */
  static final long LOWEST_STATE = 1L << 16;

  private static final int SHORTEST = 64;
  private static final int BLOCK = 1 << 15;
  private static final int MOST_OWN = 16;

  private final int[] x;
  private final int count;
  private final byte[] contexts;
  private final byte[] tokens;
  private final int[][] counts = new int[Tokens.CONTEXTS][Tokens.COUNT];
  private final BitWriter extras = new BitWriter();

  private LinearEncoder(int[] x, int count) {
    this.x = x;
    this.count = count;
    this.contexts = new byte[count];
    this.tokens = new byte[count];
  }

  /** The coded series; null when it is too short to gain. */
  static byte[] encode(int[] values, int count) {
    if (count < SHORTEST) {
      return null;
    }
    int base = mean(values, count);
    int[] x = centred(values, count, base);
    LinearEncoder coder = new LinearEncoder(x, count);
    int blocks = (count + BLOCK - 1) / BLOCK;
    int[][] own = new int[blocks][];
    int[] intercept = new int[blocks];
    int mean = Tokens.FIRST_MEAN;
    for (int block = 0; block < blocks; block++) {
      int from = block * BLOCK;
      int to = Math.min(count, from + BLOCK);
      own[block] = Predictor.fit(x, from, to, Math.min(MOST_OWN, (to - from) / 16));
      intercept[block] = coder.intercept(from, to, own[block]);
      mean = coder.predict(from, to, intercept[block], own[block], mean);
    }
    EntropyTables tables = EntropyTables.of(coder.counts, Tokens.PHASES);
    ByteBuffer out =
        ByteBuffer.allocate(
                64 + blocks * (6 + 2 * 48) + tables.longest() + 4 * count + coder.extras.longest())
            .order(ByteOrder.LITTLE_ENDIAN);
    out.putInt(base).putInt(0).putInt(BLOCK);
    for (int block = 0; block < blocks; block++) {
      out.putInt(intercept[block]);
      out.put((byte) own[block].length).put((byte) 0);
      for (int c : own[block]) {
        out.putShort((short) c);
      }
    }
    tables.write(out);
    coder.range(tables, out);
    coder.extras.write(out);
    return Arrays.copyOf(out.array(), out.position());
  }

  /** What the prediction is short of on the average. */
  private int intercept(int from, int to, int[] own) {
    double sum = 0;
    for (int k = from; k < to; k++) {
      sum += (double) ((long) x[k] << Predictor.POINT) - prediction(k, 0, own);
    }
    double mean = Math.rint(sum / (to - from));
    return (int) Math.max(Integer.MIN_VALUE, Math.min(Integer.MAX_VALUE, mean));
  }

  private int predict(int from, int to, int intercept, int[] own, int meanBefore) {
    int mean = meanBefore;
    for (int k = from; k < to; k++) {
      long prediction = prediction(k, intercept, own);
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

  private long prediction(int k, int intercept, int[] own) {
    long sum = intercept;
    int reach = Math.min(own.length, k);
    for (int i = 0; i < reach; i++) {
      sum += (long) own[i] * x[k - 1 - i];
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
