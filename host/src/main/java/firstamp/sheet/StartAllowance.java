package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.limits.ProbeLimits;

/**
 * What a motor may draw when it starts: volts over its winding's ohms, plus what the rest of the
 * set may draw. Only where the sheet says that a motor will run; unknown is no.
 *
 * @param ampere while it starts, null = no start is allowed
 * @param millis for how long, null = no start is allowed
 * @param heatA2s what the start may add to the budget of heat
 */
record StartAllowance(Double ampere, Double millis, double heatA2s) {
  /** A small motor is up to speed by then: common practice, no source. */
  private static final double USUAL_MS = 500;

  /** The probe holds a start no longer than this. */
  static final double LONGEST_MS = 1000;

  private static final StartAllowance NONE = new StartAllowance(null, null, 0);

  /**
   * For a sheet and its filled supply.
   *
   * @param runningA the running limit that holds before and after the start
   */
  static StartAllowance of(JobSheet stated, JobSheet.Supply supply, double runningA) {
    if (!Boolean.TRUE.equals(stated.set().motor())) {
      return NONE;
    }
    JobSheet.Limits said = stated.limits() == null ? JobSheet.Limits.NONE : stated.limits();
    Double ohm = stated.set().motorOhm();
    Double ampere = said.startA();
    if (ampere == null && ohm != null) {
      ampere = Math.min(ProbeLimits.COARSE_HIGHEST_A, supply.maxV() / ohm + runningA);
    }
    if (ampere == null || ampere <= runningA) {
      return NONE;
    }
    double millis = said.startMs() == null ? USUAL_MS : Math.min(LONGEST_MS, said.startMs());
    double heat = (ampere * ampere - runningA * runningA) * millis / 1000;
    return new StartAllowance(ampere, millis, heat);
  }
}
