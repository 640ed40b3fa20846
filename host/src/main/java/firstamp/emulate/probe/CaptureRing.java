package firstamp.emulate.probe;

import firstamp.protocol.message.ProbeMessage;
import java.util.ArrayList;
import java.util.List;

/** The last 128 conversions of I, and 128 more after a trip. */
final class CaptureRing {
  private static final int BEFORE = 128;
  private static final int ALL = 256;
  private static final int BLOCK = ProbeMessage.Capture.CONVERSIONS;
  private static final int MICROS_APART = 250;
  private static final int IDLE = -1;

  private final int[] ring = new int[BEFORE];
  private final int[] frozen = new int[ALL];
  private long taken;
  private int filled = IDLE;
  private int missing;
  private int number;
  private long decidedMicros;

  /** A capture block and the time of its first conversion. */
  record Block(ProbeMessage.Capture message, long tickMicros) {}

  /** Restarts recording; what was kept is gone. */
  void start() {
    taken = 0;
    filled = IDLE;
    number = 0;
  }

  /** Takes a conversion of I; true when it completes a capture. */
  boolean conversion(int counts) {
    ring[(int) (taken++ % BEFORE)] = counts;
    if (filled == IDLE || filled == ALL) {
      return false;
    }
    frozen[filled++] = counts;
    return filled == ALL;
  }

  /**
   * Freezes what came before; the conversions that follow go behind it.
   *
   * @param decidedTickMicros start of the last conversion of I taken
   */
  void trip(int tripNumber, long decidedTickMicros) {
    number = tripNumber;
    decidedMicros = decidedTickMicros;
    missing = (int) Math.max(0, BEFORE - taken);
    for (int i = 0; i < BEFORE; i++) {
      frozen[i] = i < missing ? 0 : ring[(int) ((taken + i) % BEFORE)];
    }
    filled = BEFORE;
  }

  /** The number of the trip that is kept whole, 0 = none. */
  int number() {
    return filled == ALL ? number : 0;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    for (int from = 0; from < ALL; from += BLOCK) {
      List<Integer> counts = new ArrayList<>(BLOCK);
      for (int i = 0; i < BLOCK; i++) {
        counts.add(frozen[from + i]);
      }
      int first = from - (BEFORE - 1);
      int voids = Math.max(0, Math.min(BLOCK, missing - from));
      long tick = decidedMicros + (long) first * MICROS_APART & 0xFFFF_FFFFL;
      blocks.add(new Block(new ProbeMessage.Capture(number, first, voids, counts), tick));
    }
    return blocks;
  }
}
