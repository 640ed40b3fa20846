package firstamp.emulate.line;

import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.frame.FrameEncoder;
import firstamp.protocol.message.ProbeMessage;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * The wire from the probe to the host: ten bits a byte at the line's speed, and the faults of a bad
 * cable.
 */
public final class LineOut implements FrameOutput {
  private static final int BITS_PER_BYTE = 10;

  private final ArrayDeque<Piece> pieces = new ArrayDeque<>();
  private final byte[] scratch = new byte[FrameEncoder.LONGEST_ON_LINE_BYTES];
  private final SplittableRandom random;
  private final Faults faults;
  private FrameEncoder encoder = new FrameEncoder();
  private LineSpeed speed = LineSpeed.FAST;
  private long nowNanos;
  private long freeNanos;

  private static final class Piece {
    private final byte[] bytes;
    private final long readyNanos;
    private int taken;

    Piece(byte[] bytes, long readyNanos) {
      this.bytes = bytes;
      this.readyNanos = readyNanos;
    }
  }

  public LineOut(Faults faults, long seed) {
    this.faults = faults;
    this.random = new SplittableRandom(seed);
  }

  /** The probe restarts: the frame under way is cut off, a delimiter ends what is left of it. */
  public void restart() {
    cut();
    encoder = new FrameEncoder();
    if (!silent()) {
      freeNanos = nowNanos + byteNanos();
      pieces.add(new Piece(new byte[] {FrameEncoder.DELIMITER}, freeNanos + lateNanos()));
    }
  }

  private long byteNanos() {
    return 1_000_000_000L * BITS_PER_BYTE / speed.baud();
  }

  private long lateNanos() {
    return faults.lateMillis() * 1_000_000L;
  }

  public void now(long nanos) {
    nowNanos = nanos;
  }

  public void speed(LineSpeed next) {
    speed = next;
  }

  @Override
  public void send(ProbeMessage message, long tickMicros) {
    put(encoder.encode(message, tickMicros & 0xFFFF_FFFFL, scratch, 0));
  }

  @Override
  public void sendRaw(int firstSlot, int dropped, short[] counts, int number, long tickMicros) {
    put(
        encoder.encodeRaw(
            firstSlot, dropped, counts, 0, number, tickMicros & 0xFFFF_FFFFL, scratch, 0));
  }

  private void put(int length) {
    if (silent()) {
      return;
    }
    byte[] bytes = Arrays.copyOf(scratch, length);
    if (faults.protocolVersion() != Frame.VERSION) {
      bytes = ForeignVersion.of(bytes, faults.protocolVersion());
    }
    freeNanos = Math.max(freeNanos, nowNanos) + byteNanos() * bytes.length;
    pieces.add(new Piece(damaged(bytes), freeNanos + lateNanos()));
  }

  private boolean silent() {
    double nowS = nowNanos / 1e9;
    return faults.silentAtS() >= 0
        && nowS >= faults.silentAtS()
        && nowS < faults.silentAtS() + faults.silentForS();
  }

  private byte[] damaged(byte[] bytes) {
    if (faults.droppedShare() + faults.flippedShare() + faults.repeatedShare() == 0) {
      return bytes;
    }
    byte[] out = new byte[2 * bytes.length];
    int length = 0;
    for (byte each : bytes) {
      if (random.nextDouble() < faults.droppedShare()) {
        continue;
      }
      byte sent = each;
      if (random.nextDouble() < faults.flippedShare()) {
        sent ^= (byte) (1 << random.nextInt(8));
      }
      out[length++] = sent;
      if (random.nextDouble() < faults.repeatedShare()) {
        out[length++] = sent;
      }
    }
    return Arrays.copyOf(out, length);
  }

  /** Whether bytes have arrived by now. */
  public boolean ready() {
    Piece first = pieces.peek();
    return first != null && first.readyNanos <= nowNanos;
  }

  /** Takes what has arrived. */
  public int take(byte[] buffer) {
    int length = 0;
    while (length < buffer.length && ready()) {
      Piece first = pieces.element();
      int part = Math.min(buffer.length - length, first.bytes.length - first.taken);
      System.arraycopy(first.bytes, first.taken, buffer, length, part);
      length += part;
      first.taken += part;
      if (first.taken == first.bytes.length) {
        pieces.remove();
      }
    }
    return length;
  }

  /** What is not here yet is lost; of the frame that is under way a part arrives. */
  public void cut() {
    Optional<Piece> underWay =
        pieces.stream().filter(piece -> piece.readyNanos > nowNanos).findFirst();
    pieces.removeIf(piece -> piece.readyNanos > nowNanos);
    underWay
        .filter(piece -> piece.bytes.length > 1)
        .map(piece -> Arrays.copyOf(piece.bytes, piece.bytes.length / 2))
        .ifPresent(part -> pieces.add(new Piece(part, nowNanos)));
  }
}
