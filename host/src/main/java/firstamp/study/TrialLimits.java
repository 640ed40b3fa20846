package firstamp.study;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.locate.wire.TriedWire;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.model.JobSheet;

/**
 * Limits of a power-up in which one wire is tried: 1.2 times what the last good one drew (common
 * practice, no source).
 *
 * <p>The limit for the inrush, 1.2 times the last good one's, holds until the rails have settled,
 * at most 200 ms. Where they need longer, what still charges them then is allowed for: a rail that
 * settles to 2 % has a time constant of a quarter of that time.
 */
public final class TrialLimits {
  private static final double FACTOR = 1.2;

  /** Of the settling time of the slowest rail. */
  private static final double SETTLED_TWICE = 2;

  private static final double LONGEST_INRUSH_MS = 200;
  private static final double TIME_CONSTANTS = 4;

  /** Under this the probe's coarse range cannot judge (4 counts above zero). */
  private static final double LEAST_INRUSH_A = 0.05;

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private TrialLimits() {}

  /**
   * The sheet of a power-up: tightened where a wire is tried in it.
   *
   * @param tried null = none
   * @throws LogException the log cannot be read
   */
  public static JobSheet forTrial(JobSheet sheet, TriedWire tried, BenchLog log)
      throws LogException {
    if (tried == null) {
      return sheet;
    }
    return tighten(
        sheet, TrialComparison.lastGood(log, sheet.set().name(), tried.wire(), Long.MAX_VALUE));
  }

  /**
   * The sheet of a trial: never wider than the sheet was.
   *
   * @param sheet effective
   * @param good the last good power-up, null = none: then the sheet's idle current alone counts
   */
  public static JobSheet tighten(JobSheet sheet, PowerUpEntry good) {
    JsonNode supply = supply(good);
    Double idleA = larger(number(supply, "steadyA"), sheet.supply().idleA());
    boolean drew = good != null && !"no-draw".equals(good.outcome());
    Double peakA = drew ? larger(number(supply, "inrushPeakA"), LEAST_INRUSH_A) : null;
    JobSheet.Limits was = sheet.limits();
    if (idleA == null || was == null) {
      return sheet;
    }
    double settleMs =
        sheet.rails().stream()
            .filter(rail -> rail.settleMs() != null)
            .mapToDouble(JobSheet.Rail::settleMs)
            .max()
            .orElse(0);
    Double inrushMs = was.inrushMs() == null ? null : longer(was.inrushMs(), settleMs);
    JobSheet.Limits limits =
        new JobSheet.Limits(
            lower(was.inrushA(), peakA),
            inrushMs,
            lower(was.runningA(), idleA + (peakA == null ? 0 : charging(peakA - idleA, settleMs))),
            was.i2tA2s(),
            was.peakA(),
            was.startA(),
            was.startMs());
    return new JobSheet(
        sheet.sheet(),
        sheet.set(),
        sheet.supply(),
        limits,
        sheet.rails(),
        sheet.levels(),
        sheet.rules(),
        sheet.path(),
        sheet.unknownWires(),
        sheet.steps());
  }

  /** A set that drew nothing because the wire was off says nothing about its current. */
  private static Double larger(Double one, Double other) {
    if (one == null || other == null) {
      return one == null ? other : one;
    }
    return Math.max(one, other);
  }

  private static double longer(double inrushMs, double settleMs) {
    return Math.min(LONGEST_INRUSH_MS, Math.max(inrushMs, SETTLED_TWICE * settleMs));
  }

  /** Of the surge, what is left when its time is over; ampere. */
  private static double charging(double surgeA, double settleMs) {
    boolean settled = SETTLED_TWICE * settleMs <= LONGEST_INRUSH_MS;
    return settled
        ? 0
        : Math.max(0, surgeA) * Math.exp(-TIME_CONSTANTS * LONGEST_INRUSH_MS / settleMs);
  }

  private static Double lower(Double limitA, Double goodA) {
    if (limitA == null || goodA == null || goodA <= 0) {
      return limitA;
    }
    return Math.min(limitA, FACTOR * goodA);
  }

  private static JsonNode supply(PowerUpEntry good) {
    if (good == null || good.summaryJson() == null) {
      return MAPPER.createObjectNode();
    }
    try {
      return MAPPER.readTree(good.summaryJson()).path("supply");
    } catch (JsonProcessingException broken) {
      // A summary that cannot be read is as good as none: the sheet's limits stand.
      return MAPPER.createObjectNode();
    }
  }

  private static Double number(JsonNode node, String key) {
    return node.path(key).isNumber() ? (Double) node.path(key).doubleValue() : null;
  }
}
