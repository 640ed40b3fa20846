package firstamp.emulate.probe;

import firstamp.model.samples.Channel;
import firstamp.protocol.rules.Zeros;

/**
 * The test of the limiter before a closing, in the firmware's integers: the switch has its gate
 * volts and its pin is low, and the set must stay dark.
 *
 * @param i16 mean of I before, 1/16 count
 * @param j16 mean of J before
 * @param darkV16 mean of V before, 1/16 count; what the set still holds is no fault
 */
record LimiterTest(int i16, int j16, int darkV16) {
  private static final int DARK_I = 8;
  private static final int DARK_J = 4;
  private static final int DARK_V = 3;

  /** The switch is open: what these zeros are. */
  static LimiterTest before(Zeros taken) {
    return new LimiterTest(taken.iSixteenths(), taken.jSixteenths(), taken.vSixteenths());
  }

  /** The look path is joined: what it ends with; its current is on I too, a 32nd of the counts. */
  static LimiterTest behindTheLook(Zeros zeros, LookWatch look) {
    int lookJ = Math.max(0, look.endJ() - zeros.jSixteenths());
    return new LimiterTest(zeros.iSixteenths() + lookJ / 32, look.endJ(), look.voltsSoon());
  }

  /** Whether a conversion shows that something has come on. */
  boolean lightsUp(Channel channel, int counts) {
    return switch (channel) {
      case I -> counts > Zeros.counts(i16) + DARK_I;
      case J -> counts > Zeros.counts(j16) + DARK_J;
      case V -> counts > Zeros.counts(darkV16) + DARK_V;
      default -> false;
    };
  }
}
