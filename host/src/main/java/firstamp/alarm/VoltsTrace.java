package firstamp.alarm;

import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.SamplePlan;

/** The last quarter of a second of V conversions, to pair one with a trip. */
final class VoltsTrace {
  private static final int KEPT = 128;
  private static final int V_SLOT = 3;

  private final long[] micros = new long[KEPT];
  private final int[] counts = new int[KEPT];
  private int next;
  private int held;
  private long end = RunState.NEVER;

  /**
   * Takes conversions, but keeps none that is later than a time: what belongs to a trip that is
   * still to be judged must not be pushed out by a long block behind it.
   */
  void take(ConversionBlock block, long untilMicros) {
    long first = block.firstIndex();
    long skip = Math.floorMod(V_SLOT - first, (long) SamplePlan.SLOTS);
    for (long index = first + skip; index < block.endIndex(); index += SamplePlan.SLOTS) {
      if (SamplePlan.microsOf(index) > untilMicros) {
        break;
      }
      micros[next] = SamplePlan.microsOf(index);
      counts[next] = block.counts()[(int) (index - first)];
      next = (next + 1) % KEPT;
      held = Math.min(KEPT, held + 1);
    }
    end = SamplePlan.microsOf(block.endIndex());
  }

  /** Everything before this time has come. */
  long endMicros() {
    return end;
  }

  /** Place of the last conversion within a stretch of time, -1 = none. */
  int lastWithin(long fromMicros, long toMicros) {
    for (int k = 1; k <= held; k++) {
      int place = Math.floorMod(next - k, KEPT);
      if (micros[place] >= fromMicros && micros[place] <= toMicros) {
        return place;
      }
    }
    return -1;
  }

  long micros(int place) {
    return micros[place];
  }

  int counts(int place) {
    return counts[place];
  }
}
