package firstamp.protocol.frame;

import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.MessageType;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.Message;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.Check;
import firstamp.protocol.values.SlotPlan;
import java.util.Arrays;
import java.util.Objects;

/**
 * Turns messages into bytes for the line, delimiter included, and counts the frames of one sender.
 * For one thread.
 */
public final class FrameEncoder {
  /** Ends a frame; may also be put in front of one after a pause. */
  public static final byte DELIMITER = 0;

  /** Most bytes that one frame takes on the line, delimiter included. */
  public static final int LONGEST_ON_LINE_BYTES = FrameLimits.STANDARD.encodedBytes() + 1;

  private static final int LONGEST_PAYLOAD_BYTES =
      FrameLimits.STANDARD.frameBytes() - FrameLimits.SHORTEST_FRAME_BYTES;

  private final byte[] plain = new byte[FrameLimits.STANDARD.frameBytes()];
  private final PayloadWriter writer = new PayloadWriter(plain);
  private final ProbePayloads probePayloads = new ProbePayloads(writer);
  private final HostPayloads hostPayloads = new HostPayloads(writer);
  private int nextSequence;

  /** Counts from 0. */
  public FrameEncoder() {
    this(0);
  }

  /** Counts from the given sequence, 0 to 65535. */
  public FrameEncoder(int firstSequence) {
    Check.range(1, "firstSequence", firstSequence, 0, Check.U16);
    this.nextSequence = firstSequence;
  }

  /** The sequence that the next frame will carry; the answer to a command names it. */
  public int nextSequence() {
    return nextSequence;
  }

  /** A frame from the host, whose tick is 0. */
  public byte[] encode(HostMessage message) {
    return encode(message, 0);
  }

  /**
   * Asks who is there as a host of another version does: a probe that knows only that one answers
   * in it, and its version can be named.
   */
  public byte[] encodeHello(int version, LineSpeed speed) {
    Check.range(1, "version", version, 0, Check.U8);
    byte[] out = new byte[LONGEST_ON_LINE_BYTES];
    begin(MessageType.HELLO_REQUEST.code(), 0, out, 0);
    plain[0] = (byte) version;
    hostPayloads.helloRequest(new HostMessage.HelloRequest(speed));
    return Arrays.copyOf(out, finish(out, 0));
  }

  /** A frame whose tick is the given microseconds modulo 2^32. */
  public byte[] encode(Message message, long tickMicros) {
    byte[] out = new byte[LONGEST_ON_LINE_BYTES];
    return Arrays.copyOf(out, encode(message, tickMicros, out, 0));
  }

  /**
   * Writes a frame into memory of the caller, which needs {@link #LONGEST_ON_LINE_BYTES}.
   *
   * @return how many bytes were written
   */
  public int encode(Message message, long tickMicros, byte[] out, int offset) {
    begin(message.type().code(), tickMicros, out, offset);
    if (message instanceof ProbeMessage fromProbe) {
      fromProbe.accept(probePayloads);
    } else if (message instanceof HostMessage fromHost) {
      fromHost.accept(hostPayloads);
    }
    return finish(out, offset);
  }

  /**
   * Writes a raw block without building a message: the fast path.
   *
   * @param number conversions to take, 1 to 128
   * @return how many bytes were written
   */
  public int encodeRaw(
      int firstSlot,
      int dropped,
      short[] counts,
      int from,
      int number,
      long tickMicros,
      byte[] out,
      int offset) {
    Check.range(1, "firstSlot", firstSlot, 0, SlotPlan.SLOTS - 1);
    Check.range(2, "number", number, 1, ProbeMessage.Raw.MOST_CONVERSIONS);
    Objects.checkFromIndexSize(from, number, counts.length);
    begin(MessageType.RAW.code(), tickMicros, out, offset);
    ProbePayloads.writeRaw(writer, firstSlot, dropped, counts, from, number);
    return finish(out, offset);
  }

  /**
   * A frame of any type with any payload up to 244 bytes, to try the other end with what no message
   * allows.
   */
  public byte[] encodeUnchecked(int typeCode, long tickMicros, byte[] payload) {
    Check.range(1, "typeCode", typeCode, 0, Check.U8);
    Check.range(2, "payload length", payload.length, 0, LONGEST_PAYLOAD_BYTES);
    byte[] out = new byte[LONGEST_ON_LINE_BYTES];
    begin(typeCode, tickMicros, out, 0);
    writer.bytes(payload);
    return Arrays.copyOf(out, finish(out, 0));
  }

  private void begin(int typeCode, long tickMicros, byte[] out, int offset) {
    Objects.checkFromIndexSize(offset, LONGEST_ON_LINE_BYTES, out.length);
    writer.rewind().u8(Frame.VERSION).u8(typeCode).u16(nextSequence).u32(tickMicros);
    nextSequence = nextSequence + 1 & Check.U16;
  }

  private int finish(byte[] out, int offset) {
    writer.u16(Crc16.of(plain, 0, writer.position()));
    int length = Cobs.encode(plain, 0, writer.position(), out, offset);
    out[offset + length] = DELIMITER;
    return length + 1;
  }
}
