package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a job sheet does not say, filled in. A default never widens what the sheet states, and never
 * goes above its fuse.
 *
 * <p>The factors are common practice at repair benches, no single source: running current as {@link
 * KnownCurrent}, never above 0.8 times the fuse; surge current as the fuse, else 4 times the
 * running limit (small motors stall at 4 to 8 times) and at least 0.1 A; surge heat 0.3 times the
 * fuse squared, which is a quarter to a third of what melts a small time-lag fuse (one maker's data
 * sheet for IEC 60127-2 sheet 5: 1.1 A2s at 1 A).
 */
public final class Defaults {
  private static final double USUAL_INRUSH_MS = 60;
  private static final double LEAST_RUNNING_A = 0.002;
  private static final double LARGEST_A2S = 50;

  private static final double LEAST_INRUSH_A = 0.1;
  private static final double LONGEST_INRUSH_MS = 10_000;

  private Defaults() {}

  /** The sheet with every default filled in; what stays null is not watched. */
  public static JobSheet fill(JobSheet stated) {
    JobSheet.Supply supply = supply(stated.supply());
    JobSheet.SetInfo set = set(stated.set());
    JobSheet.Limits limits = limits(stated, supply);
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
   * minute; forming goes on at a tenth of what is allowed (common practice, no single source).
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
        said.leakageA());
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
    JobSheet.Limits said =
        stated.limits() == null
            ? new JobSheet.Limits(null, null, null, null, null)
            : stated.limits();
    Double fuse = supply.fuseA();
    Double running = said.runningA();
    if (running == null) {
      running = held(KnownCurrent.of(stated).runningA(), fuse == null ? null : 0.8 * fuse);
    }
    Double inrush = said.inrushA();
    if (inrush == null) {
      inrush = inrush(running, fuse);
    }
    Double inrushMs = said.inrushMs();
    if (inrushMs == null && inrush != null) {
      inrushMs = inrushMs(stated, supply, inrush);
    }
    Double squares = said.i2tA2s();
    if (squares == null && fuse != null) {
      squares = Math.min(LARGEST_A2S, 0.3 * fuse * fuse);
    }
    boolean pulsed = "before-reservoir".equals(supply.probeSits());
    Double peak = said.peakA() == null && pulsed ? inrush : said.peakA();
    return new JobSheet.Limits(inrush, inrushMs, running, squares, peak);
  }

  /** Null where the coarse range could not watch it: then the running limit acts from the start. */
  private static Double inrush(Double running, Double fuse) {
    if (fuse != null) {
      return fuse < LEAST_INRUSH_A ? null : (Double) Math.min(fuse, Surge.HIGHEST_A);
    }
    return running == null
        ? null
        : (Double) Math.min(Surge.HIGHEST_A, Math.max(4 * running, LEAST_INRUSH_A));
  }

  /** Never above the highest, nor above what the switch is for; too small a one is none. */
  private static Double held(Double ampere, Double highest) {
    if (ampere == null || ampere < LEAST_RUNNING_A) {
      return null;
    }
    double held = Math.min(ampere, Surge.HIGHEST_A);
    return highest == null ? held : Math.min(held, highest);
  }

  /**
   * Charging takes CV/I at the lower of both limits; three times that, as for the rest of the short
   * rule.
   */
  private static double inrushMs(JobSheet stated, JobSheet.Supply supply, double inrushA) {
    double limitA = supply.limitA() == null ? inrushA : Math.min(inrushA, supply.limitA());
    double charging = 3 * Surge.farad(stated) * supply.nominalV() / limitA * 1000;
    return Math.min(LONGEST_INRUSH_MS, Math.max(USUAL_INRUSH_MS, Math.ceil(charging - 1e-6)));
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
