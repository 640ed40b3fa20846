package firstamp.protocol.values;

import firstamp.protocol.codes.SelfTestFault;
import java.util.EnumSet;
import java.util.Set;

/**
 * The outcome of the probe's self-test.
 *
 * @param bits as on the wire, 0 to 65535; 0 = all passed
 */
public record SelfTest(int bits) {
  /** All passed. */
  public static final SelfTest PASSED = new SelfTest(0);

  public SelfTest {
    Check.range(1, "selfTest", bits, 0, Check.U16);
  }

  /** The faults that have a name; bits without one still refuse arming. */
  public Set<SelfTestFault> faults() {
    EnumSet<SelfTestFault> faults = EnumSet.noneOf(SelfTestFault.class);
    for (SelfTestFault fault : SelfTestFault.values()) {
      if ((bits >> fault.code() & 1) != 0) {
        faults.add(fault);
      }
    }
    return faults;
  }

  /**
   * Whether the probe will not arm: any bit but the one for a start by the watchdog, which only
   * informs.
   */
  public boolean refusesArming() {
    return (bits & ~(1 << SelfTestFault.WATCHDOG_START.code())) != 0;
  }
}
