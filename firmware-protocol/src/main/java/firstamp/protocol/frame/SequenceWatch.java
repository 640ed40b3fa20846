package firstamp.protocol.frame;

import firstamp.protocol.values.Check;

/** Follows the sender's sequence and counts what is missing. */
final class SequenceWatch {
  private static final int HALF = 0x8000;

  private boolean started;
  private int expected;
  private long lostFrames;
  private long backwardJumps;

  /** Takes the sequence of a whole frame and returns how many frames before it are missing. */
  int take(int sequence) {
    int jump = started ? sequence - expected & Check.U16 : 0;
    restartAt(sequence);
    if (jump >= HALF) {
      backwardJumps++;
      return 0;
    }
    lostFrames += jump;
    return jump;
  }

  /** Takes the first sequence of a sender that started again: nothing is missing before it. */
  void restartAt(int sequence) {
    started = true;
    expected = sequence + 1 & Check.U16;
  }

  long lostFrames() {
    return lostFrames;
  }

  long backwardJumps() {
    return backwardJumps;
  }
}
