package firstamp.sheet;

import firstamp.model.JobSheet;

/**
 * The running limit that follows from what is known of a set. There is always one: with nothing
 * known the limit of the supply, else 1 A, which is loose.
 *
 * <p>The factors are common practice, no source: never above 0.8 times the fuse, nor above what the
 * supply can give.
 *
 * @param ampere the limit
 * @param why key of its reason, behind {@code why.runningA.}
 */
record RunningLimit(double ampere, String why) {
  /** Where nothing is known. */
  private static final double LOOSE_A = 1;

  /** What the probe carries for long (limits of use in its hardware page). */
  private static final double SWITCH_A = 8;

  private static final double OF_THE_FUSE = 0.8;

  /** Under it the probe's fine range cannot judge: 4 counts of 0.39 mA, and room. */
  private static final double LEAST_A = 0.002;

  private static final String SUPPLY = "supply";
  private static final String LOOSE = "NOTHING";

  /** For a sheet, filled or not. */
  static RunningLimit of(JobSheet sheet) {
    KnownCurrent known = KnownCurrent.of(sheet);
    Double supply = sheet.supply().limitA();
    RunningLimit limit;
    if (known.runningA() != null) {
      limit = new RunningLimit(known.runningA(), known.from().name());
    } else {
      limit = supply == null ? new RunningLimit(LOOSE_A, LOOSE) : new RunningLimit(supply, SUPPLY);
    }
    Double fuse = sheet.supply().fuseA();
    return limit
        .under(fuse == null ? null : OF_THE_FUSE * fuse, "held")
        .under(supply, "held.supply")
        .under(SWITCH_A, "held.switch")
        .atLeast();
  }

  /** Whether it is a guess that somebody should put right. */
  boolean loose() {
    return why.equals(LOOSE);
  }

  /** Whether something is known of the set itself. */
  boolean fromTheSet() {
    return !loose() && !why.equals(SUPPLY);
  }

  private RunningLimit under(Double highest, String reason) {
    return highest == null || ampere <= highest + 1e-12 ? this : new RunningLimit(highest, reason);
  }

  private RunningLimit atLeast() {
    return ampere < LEAST_A ? new RunningLimit(LEAST_A, "least") : this;
  }
}
