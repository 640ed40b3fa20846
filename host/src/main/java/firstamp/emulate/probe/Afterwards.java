package firstamp.emulate.probe;

import firstamp.model.samples.Channel;
import firstamp.protocol.codes.SelfTestFault;

/**
 * What is watched for a while after an opening (nothing flows) and after a closing (V is what the
 * look foretold), in the firmware's integers.
 */
final class Afterwards {
  private static final long SETTLE_CONVERSIONS = 50 * 32;
  private static final long OPEN_CONVERSIONS = 550 * 32;
  private static final int CURRENT_IN_ROW = 100;

  /** The closing's own plan is left out: leads ring in it. */
  private static final long FROM_CONVERSION = 32;

  private static final long CLOSED_CONVERSIONS = 16 * 32;
  private static final int HIGHER_V_IN_ROW = 3;

  private final int overJ;
  private int overV;
  private SelfTestFault lookingFor;
  private long since;
  private int inRow;

  Afterwards(int overJ) {
    this.overJ = overJ;
  }

  void opened(long n) {
    begin(SelfTestFault.SWITCH_PATH, n);
  }

  /**
   * @param highestV counts of V that the look allows; of a pulsed current and without a look there
   *     are none: 1023
   */
  void closed(long n, int highestV) {
    overV = highestV;
    begin(SelfTestFault.SHUNT, n);
  }

  /** The look begins. */
  void looking() {
    lookingFor = null;
  }

  private void begin(SelfTestFault fault, long n) {
    lookingFor = fault;
    since = n;
    inRow = 0;
  }

  /** Takes a conversion; what it has found, once, or null. */
  SelfTestFault conversion(long n, Channel channel, int counts) {
    long passed = n - since;
    boolean open = lookingFor == SelfTestFault.SWITCH_PATH;
    if (lookingFor == null || passed > (open ? OPEN_CONVERSIONS : CLOSED_CONVERSIONS)) {
      lookingFor = null;
      return null;
    }
    boolean counted =
        open
            ? channel == Channel.J && passed >= SETTLE_CONVERSIONS
            : channel == Channel.V && passed >= FROM_CONVERSION;
    if (!counted) {
      return null;
    }
    inRow = counts > (open ? overJ : overV) ? inRow + 1 : 0;
    if (inRow < (open ? CURRENT_IN_ROW : HIGHER_V_IN_ROW)) {
      return null;
    }
    SelfTestFault found = lookingFor;
    lookingFor = null;
    return found;
  }
}
