package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.limits.ProbeLimits;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a job sheet does not say, filled in. A default never widens what the sheet states.
 *
 * <p>The probe's limits of the supply current always end low, also with nothing known: surge limit
 * for the capacitors' time, then the running limit ({@link RunningLimit}), and for both a budget of
 * inrush I2t, twice what {@link SurgeForecast} predicts. The surge limit follows the set and not
 * the fuse's rated amperes: a slow fuse carries many times its rating for 10 ms. With a fuse and
 * unknown capacitors the budget is half the rating squared: what the smallest quick-acting fuse
 * melts at, half of what a time-lag one does (IEC 60127-2 sheets 2 and 3, from memory).
 *
 * <p>The factors are common practice at repair benches, no single source.
 */
public final class Defaults {
  private static final double USUAL_INRUSH_MS = 60;

  /** A surge into capacitors is over by then; what still draws is a load. */
  static final double LONGEST_INRUSH_MS = 200;

  /** The coarse range judges from 4 counts, 49 mA, on. */
  private static final double LEAST_INRUSH_A = 0.1;

  /** Small motors stall at 4 to 8 times their running current. */
  private static final double OVER_RUNNING = 4;

  private static final double OVER_PEAK = 1.25;
  private static final double OVER_HEAT = 2;
  private static final double LEAST_A2S = 0.02;
  private static final double LARGEST_A2S = 50;

  private Defaults() {}

  /** The sheet with every default filled in; what stays null is not watched. */
  public static JobSheet fill(JobSheet stated) {
    return filled(stated, limits(stated, supply(stated.supply())));
  }

  /** A sheet that was kept filled in: the limits that the probe was given then are not added to. */
  public static JobSheet refill(JobSheet kept) {
    return filled(kept, kept.limits());
  }

  private static JobSheet filled(JobSheet stated, JobSheet.Limits limits) {
    JobSheet.Supply supply = supply(stated.supply());
    JobSheet.SetInfo set = set(stated.set());
    Map<String, JobSheet.RuleSettings> rules = new LinkedHashMap<>();
    for (RuleId rule : RuleId.values()) {
      rules.put(rule.id(), rule.settings(stated));
    }
    return new JobSheet(
        stated.sheet(),
        set,
        supply,
        limits,
        rails(stated),
        levels(stated.levels()),
        rules,
        stated.path(),
        stated.unknownWires(),
        steps(stated));
  }

  /**
   * A step lasts at least a minute and at most an hour, and its current has settled under 1 % a
   * minute; forming continues at a tenth of what is allowed (common practice, no single source).
   */
  private static List<JobSheet.Step> steps(JobSheet stated) {
    List<JobSheet.Step> steps = new ArrayList<>();
    for (JobSheet.Step said : stated.steps()) {
      boolean forming = Boolean.TRUE.equals(said.forming());
      steps.add(
          new JobSheet.Step(
              said.supplyV(),
              said.limitA(),
              or(said.dwellMs(), 60_000.0),
              or(said.settledPercentPerMin(), 1.0),
              or(said.belowA(), forming ? 0.1 * said.limitA() : said.limitA()),
              or(said.timeoutMs(), 3_600_000.0),
              forming));
    }
    return steps;
  }

  private static JobSheet.SetInfo set(JobSheet.SetInfo said) {
    return new JobSheet.SetInfo(
        said.name(),
        or(said.kind(), "other"),
        or(said.chassis(), "negative"),
        said.motor(),
        said.valveRectifier(),
        said.leakageA(),
        said.motorOhm());
  }

  private static JobSheet.Supply supply(JobSheet.Supply said) {
    double nominal = said.nominalV();
    String kind = or(said.kind(), "bench");
    return new JobSheet.Supply(
        kind,
        or(said.probeSits(), kind.equals("mains-transformer") ? "before-reservoir" : "supply-lead"),
        nominal,
        or(said.minV(), 0.85 * nominal),
        or(said.maxV(), 1.15 * nominal),
        said.limitA(),
        said.fuseA(),
        or(said.look(), true),
        or(said.through(), "direct"),
        said.labelW(),
        said.idleA(),
        said.capacitanceUf());
  }

  private static JobSheet.Limits limits(JobSheet stated, JobSheet.Supply supply) {
    JobSheet.Limits said = stated.limits() == null ? JobSheet.Limits.NONE : stated.limits();
    double running = said.runningA() != null ? said.runningA() : RunningLimit.of(stated).ampere();
    SurgeForecast surge = SurgeForecast.of(stated, running);
    double inrush = said.inrushA() != null ? said.inrushA() : inrushA(surge, running);
    double lasts = said.inrushMs() != null ? said.inrushMs() : inrushMs(surge);
    StartAllowance start = StartAllowance.of(stated, supply, running);
    double heat = Math.max(LEAST_A2S, OVER_HEAT * surge.heatA2s()) + start.heatA2s();
    double squares = said.i2tA2s() != null ? said.i2tA2s() : Math.min(LARGEST_A2S, heat);
    boolean pulsed = "before-reservoir".equals(supply.probeSits());
    Double peak = said.peakA() == null && pulsed ? (Double) inrush : said.peakA();
    // Also a longer time that the sheet states: after it only the running limit may hold.
    return new JobSheet.Limits(
        inrush,
        Math.min(LONGEST_INRUSH_MS, lasts),
        running,
        squares,
        peak,
        start.ampere(),
        start.millis());
  }

  private static double inrushA(SurgeForecast surge, double running) {
    double wanted = Math.max(OVER_PEAK * surge.peakA(), OVER_RUNNING * running);
    double held = Math.min(ProbeLimits.COARSE_HIGHEST_A, Math.max(LEAST_INRUSH_A, wanted));
    return Math.max(held, running);
  }

  private static double inrushMs(SurgeForecast surge) {
    return Math.max(USUAL_INRUSH_MS, Math.ceil(surge.chargingMs() - 1e-6));
  }

  private static List<JobSheet.Rail> rails(JobSheet stated) {
    List<JobSheet.Rail> rails = new ArrayList<>();
    for (JobSheet.Rail said : stated.rails()) {
      rails.add(
          new JobSheet.Rail(
              said.input(),
              or(said.name(), "rail " + said.input()),
              said.nominalV(),
              or(said.tolerancePercent(), 10.0),
              or(said.settleMs(), 500.0),
              said.overV(),
              said.rippleMaxVrms(),
              said.capacitanceUf(),
              or(said.rectifier(), "none")));
    }
    return rails;
  }

  private static JobSheet.Levels levels(JobSheet.Levels said) {
    return said == null
        ? null
        : new JobSheet.Levels(
            said.toneHz(),
            said.headOhm(),
            expectedDb(said),
            or(said.marginDb(), 6.0),
            or(said.meterSignalDbv(), -30.0),
            or(said.fromMs(), 1500.0),
            said.meterFullV(),
            said.expectedCurve());
  }

  /** A curve holds the number for the tone. */
  private static Double expectedDb(JobSheet.Levels said) {
    if (said.expectedDb() != null || said.expectedCurve().isEmpty() || said.toneHz() == null) {
      return said.expectedDb();
    }
    return JobSheet.LevelPoint.between(said.expectedCurve(), said.toneHz());
  }

  private static <T> T or(T said, T usual) {
    return said == null ? usual : said;
  }
}
