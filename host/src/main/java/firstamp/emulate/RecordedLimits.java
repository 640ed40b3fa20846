package firstamp.emulate;

import firstamp.model.ConversionBlock;
import firstamp.model.SamplePlan;
import firstamp.model.Zero;
import firstamp.protocol.TripLimits;

/**
 * The probe's own limits over conversions that were logged: when would it have opened the switch?
 *
 * <p>Every conversion must come, from the closing on. Not thread-safe.
 */
public final class RecordedLimits {
  private final TripWatch watch;
  private Crossing crossing;

  /**
   * A limit that was crossed for as long as it takes.
   *
   * @param cause number in the wire format
   * @param channel that decided, 255 = none
   * @param pinMicros when the switch pin would have gone low
   */
  public record Crossing(int cause, int channel, long pinMicros) {}

  /**
   * Nothing seen yet.
   *
   * @param limits to hold the conversions against
   * @param zero taken before the closing
   * @param closedMicros when the switch closed
   */
  public RecordedLimits(TripLimits limits, Zero zero, long closedMicros) {
    Zeros zeros = new Zeros(zero.sixteenthsI(), zero.sixteenthsJ(), zero.sixteenthsV());
    this.watch = new TripWatch(limits, zeros, SamplePlan.indexAt(closedMicros));
  }

  /** Takes conversions while the switch was closed; after the first crossing nothing more. */
  public void accept(ConversionBlock block) {
    short[] counts = block.counts();
    for (int k = 0; k < counts.length && crossing == null; k++) {
      long n = block.firstIndex() + k;
      long at = SamplePlan.microsOf(n);
      Decision decision = watch.conversion(n, SamplePlan.channelAt(n), counts[k], at);
      if (decision != null) {
        crossing =
            new Crossing(
                decision.cause().code(), decision.channel(), at + ProbeMachine.PIN_LOW_MICROS);
      }
    }
  }

  /** The first crossing; null = none so far. */
  public Crossing crossing() {
    return crossing;
  }
}
