package firstamp.protocol.values;

import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.WireCode;
import java.util.List;

/**
 * Range checks of message fields; the field number is the one of wire-format.md, else the place in
 * the record.
 */
public final class Check {
  public static final int U8 = 0xFF;
  public static final int U16 = 0xFFFF;
  public static final long U32 = 0xFFFF_FFFFL;
  public static final int HIGHEST_COUNT = 1023;

  private Check() {}

  public static void range(int field, String name, long value, long lowest, long highest) {
    if (value < lowest || value > highest) {
      throw new FieldException(
          field,
          RefusalReason.BAD_VALUE,
          name + " is " + value + "; expected " + lowest + " to " + highest);
    }
  }

  /** A limit that is 0 (not watched) or at least {@code finest}. */
  static void limit(int field, String name, int value, int finest, int highest) {
    range(field, name, value, 0, highest);
    if (value != 0 && value < finest) {
      throw new FieldException(
          field,
          RefusalReason.LIMIT_TOO_FINE,
          name + " is " + value + "; expected 0 (not watched) or " + finest + " to " + highest);
    }
  }

  public static <T> List<T> size(int field, String name, List<T> list, int size) {
    if (list.size() != size) {
      throw new FieldException(
          field,
          RefusalReason.BAD_VALUE,
          name + " holds " + list.size() + " values; expected " + size);
    }
    return List.copyOf(list);
  }

  /** Finds the constant that stands for {@code code}. */
  public static <E extends Enum<E> & WireCode> E code(int field, Class<E> type, int code) {
    for (E constant : type.getEnumConstants()) {
      if (constant.code() == code) {
        return constant;
      }
    }
    throw new FieldException(
        field,
        RefusalReason.BAD_VALUE,
        type.getSimpleName()
            + " has no code "
            + code
            + " in wire format version "
            + WireCode.VERSION);
  }
}
