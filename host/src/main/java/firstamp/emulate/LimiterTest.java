package firstamp.emulate;

import firstamp.model.samples.Channel;
import firstamp.protocol.rules.Zeros;

/**
 * The test of the limiter before a closing, in the firmware's integers: the switch has its gate
 * volts and its pin is low, and the set must stay dark.
 *
 * @param zeros of this arming
 * @param darkV16 mean of V before, 1/16 count; what the set still holds is no fault
 */
record LimiterTest(Zeros zeros, int darkV16) {
  private static final int DARK_I = 8;
  private static final int DARK_J = 4;
  private static final int DARK_V = 3;

  /** Whether a conversion shows that something has come on. */
  boolean lightsUp(Channel channel, int counts) {
    return switch (channel) {
      case I -> counts > Zeros.counts(zeros.iSixteenths()) + DARK_I;
      case J -> counts > Zeros.counts(zeros.jSixteenths()) + DARK_J;
      case V -> counts > Zeros.counts(darkV16) + DARK_V;
      default -> false;
    };
  }
}
