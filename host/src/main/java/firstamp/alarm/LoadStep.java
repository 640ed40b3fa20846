package firstamp.alarm;

import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.SamplePlan;

/** When the supply current last rose above half of the running limit. */
final class LoadStep {
  private boolean high;
  private long roseMicros = RunState.NEVER;

  /**
   * Looks at the conversions of I.
   *
   * @param halfCounts half of the running limit, absolute
   */
  void take(ConversionBlock block, double halfCounts) {
    short[] counts = block.counts();
    for (int k = 0; k < counts.length; k++) {
      long index = block.firstIndex() + k;
      if (SamplePlan.channelAt(index) != Channel.I) {
        continue;
      }
      boolean now = counts[k] > halfCounts;
      if (now && !high) {
        roseMicros = SamplePlan.microsOf(index);
      }
      high = now;
    }
  }

  /** Probe time of the last rise, {@link RunState#NEVER} = none was seen. */
  long roseMicros() {
    return roseMicros;
  }
}
