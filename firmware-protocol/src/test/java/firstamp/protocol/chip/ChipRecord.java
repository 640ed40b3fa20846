package firstamp.protocol.chip;

import firstamp.protocol.frame.Frame;
import firstamp.protocol.frame.FrameDecoder;
import firstamp.protocol.frame.RawBlock;
import firstamp.protocol.frame.Rejected;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.IntSupplier;

/** What the chip sent in a run: its frames, its conversions by number, and what did not come. */
final class ChipRecord implements FrameDecoder.Sink {
  /** Of a run: 16 s. */
  private static final int KEPT_CONVERSIONS = 1 << 18;

  static final int NOT_RECEIVED = 1024;

  private final BlockingQueue<Frame> frames = new LinkedBlockingQueue<>();
  private final List<String> holes = new CopyOnWriteArrayList<>();
  private final AtomicLong rejected = new AtomicLong();
  private final short[] record = new short[KEPT_CONVERSIONS];
  private final IntSupplier repeated;
  private long next = -1;

  /**
   * Empty.
   *
   * @param repeated how many requests were sent again so far
   */
  ChipRecord(IntSupplier repeated) {
    this.repeated = repeated;
    Arrays.fill(record, (short) NOT_RECEIVED);
  }

  /** Frames as they came, raw blocks apart. */
  BlockingQueue<Frame> frames() {
    return frames;
  }

  @Override
  public void frame(Frame frame) {
    frames.add(frame);
  }

  @Override
  public void rejected(Rejected frame) {
    rejected.incrementAndGet();
  }

  @Override
  public void raw(RawBlock block) {
    // Conversion n starts at tick floor(62.5 n); no run here lasts until ticks wrap.
    long number = (2 * block.tickMicros() + 1) / 125;
    if (next >= 0 && number != next) {
      holes.add(
          "%d conversions from %d on, %d dropped by the probe, %d frames rejected, %d requests repeated"
              .formatted(
                  number - next, next, block.dropped(), rejected.get(), repeated.getAsInt()));
    }
    next = number + block.count();
    keep(number, block);
  }

  private void keep(long number, RawBlock block) {
    synchronized (record) {
      for (int k = 0; k < block.count() && number + k < record.length; k++) {
        record[(int) number + k] = block.counts()[k];
      }
    }
  }

  /** Counts of a conversion by its number since the start; 1024 = it did not come. */
  int counts(long number) {
    synchronized (record) {
      return number < record.length ? record[(int) number] : NOT_RECEIVED;
    }
  }

  /** Where a raw block did not begin where the one before ended. */
  List<String> holes() {
    return List.copyOf(holes);
  }

  /** Frames that were damaged, or cut off by a reset. */
  long rejected() {
    return rejected.get();
  }
}
