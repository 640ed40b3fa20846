package firstamp.log;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * A series of whole numbers to bytes and back, without loss.
 *
 * <p>The version tells how the bytes are made ({@code schemas/log-schema.md}); a version is never
 * changed, only added.
 */
final class SeriesCoder {
  /** Lowest value, bit width, packed differences to the lowest. */
  static final int PLAIN = 0;

  /** Prediction and entropy coding. */
  static final int LINEAR = 1;

  /** The same, predicted from a companion channel as well. */
  static final int JOINT = 2;

  /** No series in the log is longer. */
  static final int LONGEST = 1 << 20;

  /** A coded series. */
  record Coded(int version, byte[] data) {}

  private SeriesCoder() {}

  static Coded encode(int[] values, int count) {
    return encode(values, count, null, LinearCoder.Strength.LIVE);
  }

  /** The shorter of a coded and a plain series. */
  static Coded encode(int[] values, int count, int[] companion, LinearCoder.Strength strength) {
    byte[] plain = plain(values, count);
    byte[] linear = LinearCoder.encode(values, count, companion, strength);
    return linear == null || linear.length >= plain.length
        ? new Coded(PLAIN, plain)
        : new Coded(companion == null ? LINEAR : JOINT, linear);
  }

  /**
   * The series.
   *
   * @throws MalformedChunkException if the bytes cannot be {@code count} values of this version
   */
  static int[] decode(int version, byte[] data, int count) throws MalformedChunkException {
    return decode(version, data, count, null);
  }

  static int[] decode(int version, byte[] data, int count, int[] companion)
      throws MalformedChunkException {
    if (count < 0 || count > LONGEST) {
      throw new MalformedChunkException("count " + count + ", allowed 0 to " + LONGEST);
    }
    try {
      if (version == PLAIN) {
        return fromPlain(data, count);
      }
      if (version == LINEAR) {
        return LinearCoder.decode(data, count, null);
      }
      if (version == JOINT) {
        return LinearCoder.decode(data, count, companion);
      }
    } catch (BufferUnderflowException | IndexOutOfBoundsException e) {
      throw new MalformedChunkException("ends too early", e);
    }
    throw new MalformedChunkException("version " + version + " is not known");
  }

  static byte[] plain(int[] values, int count) {
    int lowest = count == 0 ? 0 : values[0];
    int highest = lowest;
    for (int k = 1; k < count; k++) {
      lowest = Math.min(lowest, values[k]);
      highest = Math.max(highest, values[k]);
    }
    int width = Bits.width(highest - lowest);
    byte[] data = new byte[5 + Bits.bytes(count, width)];
    ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN).putInt(lowest).put((byte) width);
    Bits.pack(values, 0, count, lowest, width, data, 5);
    return data;
  }

  private static int[] fromPlain(byte[] data, int count) throws MalformedChunkException {
    ByteBuffer in = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
    int lowest = in.getInt();
    int width = in.get();
    if (width < 0 || width > 32 || data.length != 5 + Bits.bytes(count, width)) {
      throw new MalformedChunkException(
          data.length + " bytes for " + count + " values of " + width + " bits");
    }
    int[] values = new int[count];
    Bits.unpack(data, 5, count, lowest, width, values, 0);
    return values;
  }
}
