package firstamp.emulate.probe;

import firstamp.model.samples.Channel;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.rules.Zeros;
import firstamp.protocol.values.LookParameters;

/** The pairs of V and J of the first look and what they say, in the firmware's integers. */
final class LookWatch {
  private static final int PAIR_MILLIS = 2;
  private static final int WINDOW = 50;
  private static final int FIRST_END_PAIRS = 150;
  private static final int FIRST_END_SHORTED_PAIRS = 500;
  private static final int NEAR_SUM_COUNTS = WINDOW / 2;
  private static final int TWO_COUNTS = 32;
  private static final int ONE_COUNT = 16;
  private static final int SUPPLY_APART = 32;
  private static final int SUPPLY_MOVES = 160;

  private final LookParameters parameters;
  private final Zeros zeros;
  private final int overJ;
  private final int[] windowV = new int[WINDOW];
  private final int[] windowJ = new int[WINDOW];
  private int pairs;
  private int lastV;
  private boolean haveV;
  private long sumV;
  private long sumJ;
  private int before = -1;
  private boolean overCurrent;
  private boolean settled;
  private int firstSupply;

  /**
   * @param overJCounts limit of J in the look, counts above zero, 0 = none
   */
  LookWatch(LookParameters parameters, Zeros zeros, int overJCounts) {
    this.parameters = parameters;
    this.zeros = zeros;
    this.overJ = overJCounts;
  }

  /** Takes a conversion; true when the look is over. */
  boolean conversion(Channel channel, int counts) {
    if (channel == Channel.V) {
      lastV = counts;
      haveV = true;
      return false;
    }
    if (channel != Channel.J || !haveV) {
      return false;
    }
    int at = pairs % WINDOW;
    windowV[at] = lastV;
    windowJ[at] = counts;
    sumV += lastV;
    sumJ += counts;
    pairs++;
    if (overJ != 0
        && counts
            > Math.min(Zeros.counts(zeros.jSixteenths()) + overJ, Converter.HIGHEST_COUNTS - 1)) {
      overCurrent = true;
      return true;
    }
    if (pairs * PAIR_MILLIS >= parameters.longestMillis()) {
      return true;
    }
    settled = settled();
    return settled;
  }

  private boolean settled() {
    if (pairs % WINDOW != 0) {
      return false;
    }
    int sum = 0;
    for (int v : windowV) {
      sum += v;
    }
    boolean near = before >= 0 && Math.abs(sum - before) <= NEAR_SUM_COUNTS;
    before = sum;
    firstSupply = firstSupply == 0 ? supply() : firstSupply;
    int first = v() < shortLevel() ? FIRST_END_SHORTED_PAIRS : FIRST_END_PAIRS;
    return near && pairs >= first;
  }

  private static int meanSixteenths(int[] window, int filled) {
    int sum = 0;
    for (int i = 0; i < filled; i++) {
      sum += window[i];
    }
    return filled == 0 ? 0 : (16 * sum + filled / 2) / filled;
  }

  int pairs() {
    return pairs;
  }

  int durationMillis() {
    return pairs * PAIR_MILLIS;
  }

  long sumV() {
    return sumV;
  }

  long sumJ() {
    return sumJ;
  }

  int endV() {
    return meanSixteenths(windowV, Math.min(pairs, WINDOW));
  }

  int endJ() {
    return meanSixteenths(windowJ, Math.min(pairs, WINDOW));
  }

  /** V while the gate gets its volts: a capacitor that is still filling continues to rise. */
  int voltsSoon() {
    int last = 16 * lastV;
    return last > endV() ? last + (last - endV()) / 2 : endV();
  }

  private int v() {
    return Math.max(0, endV() - zeros.vSixteenths());
  }

  private int j() {
    return Math.max(0, endJ() - zeros.jSixteenths());
  }

  /** What the supply must stand at for the current through the look resistor, 1/16 count of V. */
  int supply() {
    return (int) Math.min(0xFFFF, v() + (long) j() * parameters.vPerJ256ths() / 256);
  }

  /**
   * What V may show once the switch is closed. With half a shunt J says half of the volts across
   * the look resistor, and V then shows the rest.
   */
  int highestVBehindIt() {
    int shown = supply() + zeros.vSixteenths();
    int moves = Math.max(SUPPLY_MOVES, supply() / 16);
    return (shown + moves + Math.max(0, shown - endV()) * 3 / 8) / 16;
  }

  /** The supply does not move while a capacitor behind the look resistor fills. */
  private boolean fits() {
    int now = supply();
    if (firstSupply != 0 && Math.abs(now - firstSupply) > now / 4 + SUPPLY_APART) {
      return false;
    }
    // 0.3 of nominal times 8/3 is 0.8 of nominal.
    return j() >= ONE_COUNT || now * 3L >= parameters.supplyLowestCounts() * 16L * 8;
  }

  /** Half C (supply - V)^2 in counts; only a settled look has a resistance to take off. */
  private boolean tooMuchCharge() {
    if (parameters.chargeLimit() == 0) {
      return false;
    }
    long charge = Math.max(0, sumJ - (long) pairs * zeros.jSixteenths() / 16);
    long volts = Math.max(0, sumV - (long) pairs * zeros.vSixteenths() / 16);
    if (settled) {
      long pairsSixteenths = Math.min(0xFFFF, volts * 256 / v());
      charge = Math.max(0, charge - pairsSixteenths * j() / 256);
    }
    int across = Math.min(Converter.HIGHEST_COUNTS, Math.max(0, supply() - v()) / 16);
    return across != 0 && charge * across / (v() / 16) > parameters.chargeLimit() / across;
  }

  private int shortLevel() {
    return Math.max(TWO_COUNTS, j() * parameters.shortVPerJ256ths() / 256);
  }

  /** What the look says of the set. */
  LookOutcome outcome(boolean reversed) {
    if (reversed) {
      return LookOutcome.REVERSED;
    }
    if (overCurrent) {
      return LookOutcome.SHORT;
    }
    int supply = supply();
    if (supply < 16L * parameters.supplyLowestCounts()) {
      return LookOutcome.NO_SUPPLY;
    }
    if (supply > 16L * parameters.supplyHighestCounts()) {
      return LookOutcome.TOO_HIGH;
    }
    if (v() < shortLevel()) {
      return LookOutcome.SHORT;
    }
    if (!fits()) {
      return LookOutcome.SHUNT;
    }
    if (tooMuchCharge()) {
      return LookOutcome.TOO_MUCH_CHARGE;
    }
    if (v() < (long) j() * parameters.lowVPerJ256ths() / 256) {
      return LookOutcome.LOW;
    }
    return j() < ONE_COUNT ? LookOutcome.NOTHING_JOINED : LookOutcome.CLEAR;
  }
}
