package firstamp.emulate.probe;

import firstamp.model.samples.Channel;
import firstamp.protocol.rules.Zeros;

/** Means of 200 ms of I, J and V, from slot 0 on: 100 plans. */
final class ZeroTaking {
  private static final int V_AND_J = 100;
  private static final int I = 800;

  private boolean started;
  private int countI;
  private int countJ;
  private int countV;
  private long sumI;
  private long sumJ;
  private long sumV;

  /** Takes a conversion; true when the last one needed has come. */
  boolean conversion(int slot, Channel channel, int counts) {
    started |= slot == 0;
    if (!started || done()) {
      return done();
    }
    switch (channel) {
      case I -> {
        if (countI < I) {
          sumI += counts;
          countI++;
        }
      }
      case J -> {
        sumJ += counts;
        countJ++;
      }
      case V -> {
        sumV += counts;
        countV++;
      }
      default -> {}
    }
    return done();
  }

  private boolean done() {
    return countI == I && countJ >= V_AND_J && countV >= V_AND_J;
  }

  Zeros zeros() {
    return new Zeros(
        (int) ((16 * sumI + I / 2) / I),
        (int) ((16 * sumJ + V_AND_J / 2) / V_AND_J),
        (int) ((16 * sumV + V_AND_J / 2) / V_AND_J));
  }
}
