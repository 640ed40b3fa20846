package firstamp.log.code;

import java.nio.ByteBuffer;

/**
 * How often each token comes, per context, as whole numbers that add up to 4096; contexts that are
 * alike share a table.
 */
final class EntropyTables {
  /** Bits of the sum of a table. */
  static final int TOTAL_BITS = 12;

  /** Sum of a table. */
  static final int TOTAL = 1 << TOTAL_BITS;

  private static final int UNUSED = 255;

  final int[] tableOf;
  final int[][] frequency;
  final int[][] start;

  private EntropyTables(int[] tableOf, int[][] frequency) {
    this.tableOf = tableOf;
    this.frequency = frequency;
    this.start = new int[frequency.length][];
    for (int t = 0; t < frequency.length; t++) {
      start[t] = new int[Tokens.COUNT];
      int sum = 0;
      for (int token = 0; token < Tokens.COUNT; token++) {
        start[t][token] = sum;
        sum += frequency[t][token];
      }
    }
  }

  /**
   * Tables for these counts [context][token]; contexts that lie {@code phases} apart are joined
   * where that is shorter.
   */
  static EntropyTables of(int[][] counts, int phases) {
    int[] tableOf = new int[counts.length];
    java.util.Arrays.fill(tableOf, UNUSED);
    int[][] joined = new int[counts.length][];
    int tables = 0;
    for (int phase = 0; phase < phases; phase++) {
      int last = -1;
      double lastCost = 0;
      for (int context = phase; context < counts.length; context += phases) {
        if (empty(counts[context])) {
          continue;
        }
        double cost = cost(counts[context], null);
        if (last >= 0) {
          double both = cost(counts[context], joined[last]);
          if (both <= cost + lastCost) {
            for (int token = 0; token < Tokens.COUNT; token++) {
              joined[last][token] += counts[context][token];
            }
            tableOf[context] = last;
            lastCost = both;
            continue;
          }
        }
        joined[tables] = counts[context].clone();
        tableOf[context] = tables;
        last = tables++;
        lastCost = cost;
      }
    }
    int[][] frequency = new int[tables][];
    for (int t = 0; t < tables; t++) {
      frequency[t] = normalised(joined[t]);
    }
    return new EntropyTables(tableOf, frequency);
  }

  /** Bits of a table's tokens and of the table itself. */
  private static double cost(int[] a, int[] b) {
    double total = 0;
    double bits = 24;
    for (int token = 0; token < Tokens.COUNT; token++) {
      int n = a[token] + (b == null ? 0 : b[token]);
      if (n > 0) {
        total += n;
        bits += 12 - n * Math.log(n) / Math.log(2);
      }
    }
    return bits + total * Math.log(total) / Math.log(2);
  }

  private static boolean empty(int[] counts) {
    for (int count : counts) {
      if (count != 0) {
        return false;
      }
    }
    return true;
  }

  private static int[] normalised(int[] counts) {
    long total = 0;
    for (int count : counts) {
      total += count;
    }
    int[] frequency = new int[Tokens.COUNT];
    int sum = 0;
    int most = 0;
    for (int token = 0; token < Tokens.COUNT; token++) {
      if (counts[token] > 0) {
        frequency[token] = (int) Math.max(1, ((long) counts[token] * TOTAL + total / 2) / total);
        sum += frequency[token];
        if (frequency[token] > frequency[most]) {
          most = token;
        }
      }
    }
    // The commonest tokens take what rounding left over or took too much.
    while (sum != TOTAL) {
      if (sum < TOTAL || frequency[most] > sum - TOTAL + TOTAL / Tokens.COUNT) {
        frequency[most] += TOTAL - sum;
        sum = TOTAL;
      } else {
        for (int token = 0; token < Tokens.COUNT && sum > TOTAL; token++) {
          if (frequency[token] > 1) {
            frequency[token]--;
            sum--;
          }
        }
      }
    }
    return frequency;
  }

  void write(ByteBuffer out) {
    int first = 0;
    int last = tableOf.length - 1;
    while (first < last && tableOf[first] == UNUSED) {
      first++;
    }
    while (last > first && tableOf[last] == UNUSED) {
      last--;
    }
    out.put((byte) first).put((byte) (last - first + 1)).put((byte) frequency.length);
    for (int context = first; context <= last; context++) {
      out.put((byte) tableOf[context]);
    }
    for (int[] table : frequency) {
      int low = 0;
      int high = Tokens.COUNT - 1;
      while (table[low] == 0) {
        low++;
      }
      while (table[high] == 0) {
        high--;
      }
      out.put((byte) low).put((byte) (high - low + 1));
      for (int token = low; token <= high; token++) {
        if (table[token] > 127) {
          out.put((byte) (0x80 | table[token] >> 7));
        }
        out.put((byte) (table[token] & 0x7f));
      }
    }
  }

  /** Bytes that {@link #write} needs at most. */
  int longest() {
    return 3 + tableOf.length + frequency.length * (2 + 2 * Tokens.COUNT);
  }

  static EntropyTables read(ByteBuffer in) throws MalformedChunkException {
    int first = in.get() & 0xff;
    int contexts = in.get() & 0xff;
    int tables = in.get() & 0xff;
    if (first + contexts > Tokens.CONTEXTS || tables > contexts) {
      throw new MalformedChunkException(tables + " tables for " + contexts + " contexts");
    }
    int[] tableOf = new int[Tokens.CONTEXTS];
    java.util.Arrays.fill(tableOf, UNUSED);
    for (int k = 0; k < contexts; k++) {
      tableOf[first + k] = in.get() & 0xff;
      if (tableOf[first + k] >= tables && tableOf[first + k] != UNUSED) {
        throw new MalformedChunkException("table " + tableOf[first + k] + " of " + tables);
      }
    }
    int[][] frequency = new int[tables][Tokens.COUNT];
    for (int[] table : frequency) {
      int low = in.get() & 0xff;
      int width = in.get() & 0xff;
      if (low + width > Tokens.COUNT) {
        throw new MalformedChunkException("table of tokens " + low + " to " + (low + width));
      }
      int sum = 0;
      for (int token = low; token < low + width; token++) {
        int value = in.get() & 0xff;
        if (value > 127) {
          value = (value & 0x7f) << 7 | in.get() & 0x7f;
        }
        table[token] = value;
        sum += value;
      }
      if (sum != TOTAL) {
        throw new MalformedChunkException("table adds up to " + sum + ", expected " + TOTAL);
      }
    }
    return new EntropyTables(tableOf, frequency);
  }
}
