package firstamp.locate.wire;

/**
 * What the trials must not damage.
 *
 * @param name of the set
 * @param chassis pole of the supply that is the chassis: negative or positive
 * @param supplyV maximum voltage of the supply, magnitude
 * @param runningA limit of the probe
 * @param goodIdleA current of the last good power-up, null = none yet
 */
public record SetFacts(
    String name, String chassis, double supplyV, double runningA, Double goodIdleA) {
  /** Checks the figures. */
  public SetFacts {
    if (!"negative".equals(chassis) && !"positive".equals(chassis)) {
      throw WireRefusals.of("chassis", String.valueOf(chassis));
    }
    if (!(supplyV > 0 && supplyV <= 1000 && runningA > 0 && runningA <= 100)
        || (goodIdleA != null && !(goodIdleA > 0 && goodIdleA <= 100))) {
      throw WireRefusals.of("set", supplyV, runningA, String.valueOf(goodIdleA));
    }
  }

  /** Limit of a trial: 1.2 times the last good idle current, never above the probe's. */
  public double trialLimitA() {
    return goodIdleA == null ? runningA : Math.min(runningA, TrialVerdict.LIMIT_FACTOR * goodIdleA);
  }
}
