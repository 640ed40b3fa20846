package firstamp.log.code;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Reads series versions 1 and 2 ({@code schemas/log-schema.md}); the latter has a companion. */
final class LinearDecoder {
  private LinearDecoder() {}

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
        if (even < LinearEncoder.LOWEST_STATE) {
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
    if (word != end
        || even != LinearEncoder.LOWEST_STATE
        || odd != LinearEncoder.LOWEST_STATE
        || !extras.over()) {
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

  private static int[] centred(int[] values, int count, int base) {
    int[] x = new int[count];
    for (int k = 0; k < count; k++) {
      x[k] = values[k] - base;
    }
    return x;
  }
}
