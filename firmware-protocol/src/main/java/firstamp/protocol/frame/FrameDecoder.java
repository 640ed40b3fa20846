package firstamp.protocol.frame;

import firstamp.protocol.codes.MessageType;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.Message;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.FieldException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * Turns bytes from the line, in any pieces, into messages. Every input is survived: what does not
 * decode is counted and reported, and reception continues at the next delimiter. Only a sink's own
 * exception comes out of {@link #push}; the rest of the pushed bytes is lost then, the decoder
 * stays usable. For one thread.
 */
public final class FrameDecoder {
  /** Takes what the decoder finds, on the thread that pushes. */
  public interface Sink {
    /** A whole frame. */
    void frame(Frame frame);

    /** A raw block, valid within this call; without an own method it comes as a frame. */
    default void raw(RawBlock block) {
      frame(block.toFrame());
    }

    /** A frame was dropped. */
    default void rejected(Rejected rejected) {}

    /** So many frames are missing before the one that follows. */
    default void framesLost(int count) {}
  }

  private static final VarHandle EIGHT_BYTES =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
  private static final MessageType[] TYPES = new MessageType[256];

  static {
    for (MessageType type : MessageType.values()) {
      TYPES[type.code()] = type;
    }
  }

  private final FrameLimits limits;
  private final Sink sink;
  private final byte[] held;
  private final byte[] plain;
  private final RawBlock rawBlock = new RawBlock();
  private final SequenceWatch sequences = new SequenceWatch();
  private final long[] rejects = new long[RejectReason.values().length];
  private int heldBytes;
  private boolean skipping;
  private long bytes;
  private long frames;
  private int foreignVersion = Rejected.UNKNOWN;
  private long lastBootId = Rejected.UNKNOWN;

  /** A decoder with the limits of the wire format. */
  public FrameDecoder(Sink sink) {
    this(sink, FrameLimits.STANDARD);
  }

  /** A decoder that takes smaller frames, as a probe with little memory does. */
  public FrameDecoder(Sink sink, FrameLimits limits) {
    this.sink = Objects.requireNonNull(sink, "sink");
    this.limits = Objects.requireNonNull(limits, "limits");
    this.held = new byte[limits.encodedBytes()];
    this.plain = new byte[limits.frameBytes()];
  }

  /** Takes the next bytes of the line. */
  public void push(byte[] source, int offset, int length) {
    Objects.checkFromIndexSize(offset, length, source.length);
    bytes += length;
    int end = offset + length;
    int start = offset;
    for (int at = delimiter(source, start, end); at < end; at = delimiter(source, start, end)) {
      endFrame(source, start, at - start);
      start = at + 1;
    }
    hold(source, start, end - start);
  }

  /** Place of the next delimiter, which is a zero byte; {@code end} = none. Eight bytes a step. */
  private static int delimiter(byte[] source, int from, int end) {
    int at = from;
    for (; at + 8 <= end; at += 8) {
      long eight = (long) EIGHT_BYTES.get(source, at);
      // The lowest set bit marks the first zero byte (borrows only spoil what lies above it).
      long zero = eight - 0x0101010101010101L & ~eight & 0x8080808080808080L;
      if (zero != 0) {
        return at + (Long.numberOfTrailingZeros(zero) >>> 3);
      }
    }
    while (at < end && source[at] != FrameEncoder.DELIMITER) {
      at++;
    }
    return at;
  }

  /** What was seen so far. */
  public ReceiveCounts counts() {
    Map<RejectReason, Long> rejected = new EnumMap<>(RejectReason.class);
    for (RejectReason reason : RejectReason.values()) {
      if (rejects[reason.ordinal()] > 0) {
        rejected.put(reason, rejects[reason.ordinal()]);
      }
    }
    return new ReceiveCounts(
        bytes,
        frames,
        rejected,
        sequences.lostFrames(),
        sequences.backwardJumps(),
        foreignVersion == Rejected.UNKNOWN ? OptionalInt.empty() : OptionalInt.of(foreignVersion));
  }

  private void endFrame(byte[] source, int start, int length) {
    if (heldBytes == 0 && !skipping && length <= held.length) {
      decode(source, start, length);
      return;
    }
    hold(source, start, length);
    int whole = heldBytes;
    boolean skipped = skipping;
    heldBytes = 0;
    skipping = false;
    if (!skipped) {
      decode(held, 0, whole);
    }
  }

  /** Keeps the beginning of a frame; a frame too long is reported once and then skipped. */
  private void hold(byte[] source, int start, int length) {
    if (skipping || length == 0) {
      return;
    }
    if (length > held.length - heldBytes) {
      skipping = true;
      heldBytes = 0;
      reject(Rejected.unreadable(RejectReason.TOO_LONG, held.length + 1));
      return;
    }
    System.arraycopy(source, start, held, heldBytes, length);
    heldBytes += length;
  }

  private void decode(byte[] source, int start, int length) {
    if (length == 0) {
      return;
    }
    int plainBytes = Cobs.decode(source, start, length, plain, plain.length);
    RejectReason broken = checkWhole(plainBytes);
    if (broken != null) {
      reject(Rejected.unreadable(broken, length));
      return;
    }
    PayloadReader header = new PayloadReader(plain, 1);
    int typeCode = header.u8();
    int sequence = header.u16();
    long tickMicros = header.u32();
    int payloadBytes = plainBytes - FrameLimits.SHORTEST_FRAME_BYTES;
    MessageType type = TYPES[typeCode];
    if (type == MessageType.RAW) {
      decodeRaw(sequence, tickMicros, payloadBytes, length);
    } else if (type == null || payloadBytes != type.payloadBytes()) {
      follow(sequence);
      RejectReason reason = type == null ? RejectReason.UNKNOWN_TYPE : RejectReason.WRONG_LENGTH;
      reject(
          new Rejected(
              reason, length, typeCode, sequence, Rejected.UNKNOWN, RefusalReason.BAD_VALUE));
    } else {
      decodeMessage(type, sequence, tickMicros, length);
    }
  }

  private RejectReason checkWhole(int plainBytes) {
    if (plainBytes == Cobs.BAD) {
      return RejectReason.BAD_COBS;
    }
    if (plainBytes < FrameLimits.SHORTEST_FRAME_BYTES) {
      return RejectReason.TOO_SHORT;
    }
    int covered = plainBytes - FrameLimits.CRC_BYTES;
    int carried = plain[covered] & 0xFF | (plain[covered + 1] & 0xFF) << 8;
    if (Crc16.of(plain, 0, covered) != carried) {
      return RejectReason.BAD_CRC;
    }
    int version = plain[0] & 0xFF;
    // Who is there may be asked in any version, so that both ends can say that they differ.
    if (version != Frame.VERSION && plain[1] != MessageType.HELLO_REQUEST.code()) {
      foreignVersion = version;
      return RejectReason.WRONG_VERSION;
    }
    return null;
  }

  private void decodeRaw(int sequence, long tickMicros, int payloadBytes, int encodedBytes) {
    follow(sequence);
    RejectReason reason =
        rawBlock.read(sequence, tickMicros, plain, FrameLimits.HEADER_BYTES, payloadBytes);
    if (reason == null) {
      frames++;
      sink.raw(rawBlock);
    } else {
      reject(
          new Rejected(
              reason,
              encodedBytes,
              MessageType.RAW.code(),
              sequence,
              Rejected.UNKNOWN,
              RefusalReason.BAD_VALUE));
    }
  }

  private void decodeMessage(MessageType type, int sequence, long tickMicros, int encodedBytes) {
    PayloadReader payload = new PayloadReader(plain, FrameLimits.HEADER_BYTES);
    Message message;
    try {
      message =
          type.fromHost()
              ? HostPayloads.read(type, payload)
              : ProbePayloadReader.read(type, payload);
    } catch (FieldException badField) {
      // The records hold the ranges, once; only a frame whose checksum is right gets here.
      follow(sequence);
      reject(
          new Rejected(
              RejectReason.BAD_VALUE,
              encodedBytes,
              type.code(),
              sequence,
              badField.field(),
              badField.reason()));
      return;
    }
    if (startsAgain(message)) {
      sequences.restartAt(sequence);
    } else {
      follow(sequence);
    }
    frames++;
    sink.frame(new Frame(sequence, tickMicros, message));
  }

  /** Whether this message may come from a sender that has restarted its sequence. */
  private boolean startsAgain(Message message) {
    if (message instanceof ProbeMessage.Hello hello) {
      boolean again = hello.bootId() != lastBootId;
      lastBootId = hello.bootId();
      return again;
    }
    return message instanceof HostMessage.HelloRequest;
  }

  private void follow(int sequence) {
    int lost = sequences.take(sequence);
    if (lost > 0) {
      sink.framesLost(lost);
    }
  }

  private void reject(Rejected rejected) {
    rejects[rejected.reason().ordinal()]++;
    sink.rejected(rejected);
  }
}
