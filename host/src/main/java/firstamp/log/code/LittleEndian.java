package firstamp.log.code;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/** Numbers of 16 bits without sign in an array of bytes, little-endian, at any place. */
final class LittleEndian {
  private static final VarHandle SHORTS =
      MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.LITTLE_ENDIAN);

  private static final VarHandle INTS =
      MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);

  private static final VarHandle LONGS =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

  private LittleEndian() {}

  /** Eight bytes, the lowest first. */
  static long eight(byte[] data, int at) {
    return (long) LONGS.get(data, at);
  }

  static int get(byte[] data, int at) {
    return (short) SHORTS.get(data, at) & 0xffff;
  }

  static void putFour(byte[] data, int at, int value) {
    INTS.set(data, at, value);
  }

  static void put(byte[] data, int at, int word) {
    SHORTS.set(data, at, (short) word);
  }
}
