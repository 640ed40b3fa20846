package firstamp.emulate.bench;

import firstamp.model.samples.Channel;

/**
 * What is at the probe's clips and digital inputs, over time.
 *
 * <p>Times are seconds from the probe's first start and never go back. For one thread.
 */
public interface Bench {
  /**
   * Lets time pass, at most until the current crosses the comparator's level.
   *
   * @param untilS time wanted
   * @param watchHardShort whether to stop at a crossing; without it time always gets to untilS
   * @return the time reached: untilS, or the earlier time at which the current went over {@link
   *     #hardShortA}
   */
  double advance(double untilS, boolean watchHardShort);

  /** Joins or parts supply and set, now. */
  void join(Joined joined);

  /** Ampere or volt at a clip, now; NaN where a rail's clip is open. */
  double value(Channel channel);

  /**
   * Whether the clip of head or meter is joined to something, now; one that is not reads 0. Rails
   * tell it by their value.
   */
  default boolean joined(Channel level) {
    return true;
  }

  /** Bits of {@link firstamp.protocol.values.Inputs}, now; what the chip finds itself is left 0. */
  int inputBits();

  /** What the person's hands can do in this set. */
  default Hands hands() {
    return Hands.NONE;
  }

  /** Ampere above which the limiter is seen to hold the current, now. */
  double hardShortA();

  /** Whether the limiter is seen to hold the current, now. */
  default boolean limiting() {
    return value(Channel.I) > hardShortA();
  }

  /** Whether nothing new will come. */
  boolean ended();
}
