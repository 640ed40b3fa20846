package firstamp.log.code;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * Series version 3 ({@code schemas/log-schema.md}): predictors per block, segments to seek to. One
 * encoder codes one series after another and keeps its memory.
 */
public final class BankEncoder {
  /** Bytes of a segment's line in the directory. */
  static final int DIRECTORY_BYTES = 7;

  private static final int SHORTEST = 64;
  private static final int WIDEST = 1 << 15;
  private static final int LONG_SERIES = 1 << 16;

  private final ResidualEncoder encoder = new ResidualEncoder();
  private int[] x = new int[0];
  private int[] errors = new int[0];
  private byte[] data = new byte[0];

  /**
   * The coded series; null when it is too short to gain or its values lie too far apart.
   *
   * @param companion null = none
   */
  byte[] encode(
      int[] values,
      int count,
      MinMax range,
      ReferenceChannel companion,
      BankTrainer.Effort effort) {
    int lowest = range.lowest();
    int highest = range.highest();
    if (count < SHORTEST || (long) highest - lowest >= WIDEST) {
      return null;
    }
    int base = mean(values, count, lowest);
    if (x.length < count) {
      x = new int[count];
      errors = new int[count];
    }
    for (int k = 0; k < count; k++) {
      x[k] = values[k] - base;
    }
    int size = Math.max(highest - base, base - lowest);
    PredictorBank bank = BankTrainer.train(x, count, size, companion, effort);
    if (!bank.fits(size, companion == null ? 0 : companion.highest())) {
      bank = PredictorBank.none(count);
    }
    return encode(count, base, bank, companion, segment(count, companion, effort));
  }

  /** Shorter ones are read sooner, longer ones are smaller. */
  private static int segment(int count, ReferenceChannel companion, BankTrainer.Effort effort) {
    if (companion != null && companion.stride() > 1) {
      return 2048; // Of the companion's values a reader needs many times as many.
    }
    return count > LONG_SERIES || effort == BankTrainer.Effort.REPACK ? 8192 : 4096;
  }

  private static int mean(int[] values, int count, int lowest) {
    long sum = 0;
    for (int from = 0; from < count; from += 1024) {
      int piece = 0;
      for (int k = from; k < Math.min(count, from + 1024); k++) {
        piece += values[k] - lowest;
      }
      sum += piece;
    }
    return lowest + (int) ((sum + count / 2) / count);
  }

  private byte[] encode(int count, int base, PredictorBank bank, ReferenceChannel h, int segment) {
    int segments = (count + segment - 1) / segment;
    ResidualFilter recursion = new ResidualFilter(bank, h, segment);
    encoder.begin(errors, count, segment);
    int[] contexts = new int[segments];
    for (int s = 0; s < segments; s++) {
      int end = Math.min(count, (s + 1) * segment);
      recursion.errors(x, s * segment, end, x[s * segment], errors);
      contexts[s] = encoder.scan(s * segment, end);
    }
    EntropyTables tables = encoder.tables();
    int longest = 64 + bank.size() * (8 + 2 * 48) + bank.choice().length + tables.longest();
    longest += segments * (DIRECTORY_BYTES + 32) + 6 * count;
    if (data.length < longest) {
      data = new byte[longest];
    }
    ByteBuffer out = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
    int taps = bank.joint()[0].length;
    out.putInt(base).putInt(segment).put((byte) bank.size()).put((byte) taps);
    if (taps > 0) {
      out.putInt(h.base()).put((byte) h.stride()).putShort((short) h.offset());
    }
    for (int p = 0; p < bank.size(); p++) {
      out.putInt(bank.intercepts()[p]).put((byte) bank.own()[p].length);
      for (int c : bank.own()[p]) {
        out.putShort((short) c);
      }
      for (int c : bank.joint()[p]) {
        out.putShort((short) c);
      }
    }
    byte[] choice = new byte[Bits.bytes(bank.choice().length, bank.choiceWidth())];
    Bits.pack(bank.choice(), 0, bank.choice().length, 0, bank.choiceWidth(), choice, 0);
    out.put(choice);
    tables.write(out);
    int directory = out.position();
    int place = directory + segments * DIRECTORY_BYTES;
    int[] sizes = new int[2];
    for (int s = 0; s < segments; s++) {
      int end = Math.min(count, (s + 1) * segment);
      place = encoder.write(s * segment, end, data, place, sizes);
      int line = directory + s * DIRECTORY_BYTES;
      LittleEndian.put(data, line, sizes[0]);
      LittleEndian.put(data, line + 2, sizes[1]);
      data[line + 4] = (byte) contexts[s];
      LittleEndian.put(data, line + 5, x[s * segment]);
    }
    return Arrays.copyOf(data, place);
  }
}
