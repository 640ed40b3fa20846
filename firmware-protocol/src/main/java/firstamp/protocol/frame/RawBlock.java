package firstamp.protocol.frame;

import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.SlotPlan;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * A raw block in the decoder's own memory: the fast path for conversions. It is valid until the
 * call that hands it over returns; whoever keeps conversions copies them.
 */
public final class RawBlock {
  private static final int HEADER_BYTES = 4;
  private static final int BITS = 10;

  private static final VarHandle FOUR_BYTES =
      MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);

  private final short[] counts = new short[ProbeMessage.Raw.MOST_CONVERSIONS];
  private int sequence;
  private long tickMicros;
  private int firstSlot;
  private int count;
  private int dropped;

  RawBlock() {}

  /**
   * The conversions, 0 to 1023; only the first {@link #count()} are of this block. Not to be
   * changed.
   */
  public short[] counts() {
    return counts;
  }

  /** How many conversions, 1 to 128. */
  public int count() {
    return count;
  }

  /** Slot of the first conversion, 0 to 31. */
  public int firstSlot() {
    return firstSlot;
  }

  /** Conversions the probe lost since its start, modulo 65536. */
  public int dropped() {
    return dropped;
  }

  /** The sender's count of frames, 0 to 65535. */
  public int sequence() {
    return sequence;
  }

  /** The probe's 32-bit microsecond tick at the start of the first conversion. */
  public long tickMicros() {
    return tickMicros;
  }

  /** A copy that may be kept. */
  public Frame toFrame() {
    return new Frame(
        sequence,
        tickMicros,
        new ProbeMessage.Raw(firstSlot, dropped, Arrays.copyOf(counts, count)));
  }

  static int packedBytes(int count) {
    return (count * BITS + 7) / 8;
  }

  static int payloadBytes(int count) {
    return HEADER_BYTES + packedBytes(count);
  }

  /** Takes a payload, or says why not; null means taken. */
  RejectReason read(int sequence, long tickMicros, byte[] bytes, int offset, int length) {
    if (length < HEADER_BYTES) {
      return RejectReason.WRONG_LENGTH;
    }
    int slot = bytes[offset] & 0xFF;
    int number = bytes[offset + 1] & 0xFF;
    if (number == 0 || number > counts.length) {
      return RejectReason.BAD_VALUE;
    }
    if (length != payloadBytes(number)) {
      return RejectReason.WRONG_LENGTH;
    }
    if (slot >= SlotPlan.SLOTS) {
      return RejectReason.BAD_VALUE;
    }
    this.sequence = sequence;
    this.tickMicros = tickMicros;
    this.firstSlot = slot;
    this.count = number;
    this.dropped = bytes[offset + 2] & 0xFF | (bytes[offset + 3] & 0xFF) << 8;
    unpack(bytes, offset + HEADER_BYTES, number);
    return null;
  }

  private void unpack(byte[] bytes, int offset, int number) {
    // Four conversions are five bytes.
    int fours = number / 4;
    for (int four = 0; four < fours; four++) {
      int at = offset + 5 * four;
      int low = (int) FOUR_BYTES.get(bytes, at);
      counts[4 * four] = (short) (low & 0x3FF);
      counts[4 * four + 1] = (short) (low >> 10 & 0x3FF);
      counts[4 * four + 2] = (short) (low >> 20 & 0x3FF);
      counts[4 * four + 3] = (short) (low >>> 30 | (bytes[at + 4] & 0xFF) << 2);
    }
    for (int index = 4 * fours; index < number; index++) {
      int first = offset + index * BITS / 8;
      int pair = bytes[first] & 0xFF | (bytes[first + 1] & 0xFF) << 8;
      counts[index] = (short) (pair >> index * BITS % 8 & 0x3FF);
    }
  }

  /** Packs conversions; the bytes up to the end of the packed run are overwritten. */
  static void pack(short[] counts, int from, int number, byte[] out, int offset) {
    int at = offset;
    int held = 0;
    int bits = 0;
    for (int index = from; index < from + number; index++) {
      held |= (counts[index] & 0x3FF) << bits;
      bits += BITS;
      while (bits >= 8) {
        out[at++] = (byte) held;
        held >>>= 8;
        bits -= 8;
      }
    }
    if (bits > 0) {
      out[at] = (byte) held;
    }
  }
}
