package firstamp.log.code;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * A series of whole numbers to bytes and back, without loss.
 *
 * <p>The version tells how the bytes are made ({@code schemas/log-schema.md}); a version is never
 * changed, only added.
 */
public final class SeriesCoder {
  /** Lowest value, bit width, packed differences to the lowest. */
  public static final int PLAIN = 0;

  /** Prediction and entropy coding. */
  static final int LINEAR = 1;

  /** The same, predicted from a companion channel as well; no longer written. */
  static final int JOINT = 2;

  /** Prediction by a few predictors, in segments that can be read alone. */
  static final int BANK = 3;

  /** No series in the log is longer. */
  public static final int LONGEST = 1 << 20;

  /** A coded series. */
  public record Coded(int version, byte[] data) {}

  private SeriesCoder() {}

  /** Whole numbers of any size: the shorter of a coded and a plain series. */
  public static Coded encode(int[] values, int count) {
    return shorter(
        new Coded(PLAIN, plain(values, count)), LINEAR, LinearEncoder.encode(values, count));
  }

  /** Counts, or what is as small: the shorter of a coded and a plain series. */
  public static Coded encode(
      int[] values, int count, ReferenceChannel companion, BankTrainer.Effort effort) {
    return encode(values, count, MinMax.of(values, count), companion, effort, new BankEncoder());
  }

  /** The same where the range of the values is known and an encoder exists. */
  public static Coded encode(
      int[] values,
      int count,
      MinMax range,
      ReferenceChannel companion,
      BankTrainer.Effort effort,
      BankEncoder encoder) {
    byte[] coded = encoder.encode(values, count, range, companion, effort);
    if (coded != null && coded.length < plainBytes(range, count)) {
      return new Coded(BANK, coded);
    }
    return new Coded(PLAIN, plain(values, count));
  }

  /** As short as can be, whatever time it takes. */
  public static Coded smallest(int[] values, int count) {
    return shorter(
        encode(values, count),
        BANK,
        new BankEncoder()
            .encode(values, count, MinMax.of(values, count), null, BankTrainer.Effort.REPACK));
  }

  private static Coded shorter(Coded one, int version, byte[] other) {
    return other == null || other.length >= one.data().length ? one : new Coded(version, other);
  }

  private static int plainBytes(MinMax range, int count) {
    return 5 + Bits.bytes(count, Bits.width(range.highest() - range.lowest()));
  }

  /**
   * The series.
   *
   * @throws MalformedChunkException if the bytes cannot be {@code count} values of this version
   */
  public static int[] decode(int version, byte[] data, int count) throws MalformedChunkException {
    CodedSeries series = new CodedSeries(version, data, count, null);
    return series.part(0, count).values();
  }

  public static byte[] plain(int[] values, int count) {
    MinMax range = MinMax.of(values, count);
    int lowest = range.lowest();
    int width = Bits.width(range.highest() - lowest);
    byte[] data = new byte[plainBytes(range, count)];
    ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN).putInt(lowest).put((byte) width);
    Bits.pack(values, 0, count, lowest, width, data, 5);
    return data;
  }

  static int[] fromPlain(byte[] data, int count) throws MalformedChunkException {
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
