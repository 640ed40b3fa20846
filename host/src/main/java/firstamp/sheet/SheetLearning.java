package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.text.Numbers;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/**
 * What a sheet can learn from a power-up in which nothing was found: fills only what the sheet does
 * not say, and says each value with its reason, so that a person can agree to it.
 *
 * @param learnt each value, empty = nothing new
 * @param sheet the stated sheet with them in it
 */
public record SheetLearning(List<Learnt> learnt, JobSheet sheet) {
  private static final double LEAST_IDLE_A = 0.0005;
  private static final double USUAL_SETTLE_MS = 500;

  /** Copies the list. */
  public SheetLearning {
    learnt = List.copyOf(learnt);
  }

  /**
   * One value.
   *
   * @param field place in the sheet
   * @param value for it, in the unit of the field
   * @param why in words
   */
  public record Learnt(String field, double value, String why) {}

  /** Whether anything may be learnt from it: it ended by itself and nothing was found. */
  public static boolean fits(Summary seen) {
    return "normal".equals(seen.outcome());
  }

  /**
   * Learns.
   *
   * @throws IllegalArgumentException the power-up does not {@link #fits fit}
   */
  public static SheetLearning of(JobSheet stated, Summary seen) {
    if (!fits(seen)) {
      throw new IllegalArgumentException("outcome " + seen.outcome() + ", expected normal");
    }
    List<Learnt> learnt = new ArrayList<>();
    JobSheet.Supply supply = supply(stated.supply(), seen, learnt);
    List<JobSheet.Rail> rails = new ArrayList<>();
    for (int k = 0; k < stated.rails().size(); k++) {
      JobSheet.Rail rail = stated.rails().get(k);
      Summary.RailFigures figures = figures(seen, rail.input());
      rails.add(figures == null ? rail : rail(rail, figures, "rails[" + k + "].", learnt));
    }
    JobSheet sheet =
        new JobSheet(
            stated.sheet(),
            stated.set(),
            supply,
            stated.limits(),
            rails,
            levels(stated.levels(), seen.levels(), learnt),
            stated.rules(),
            stated.path(),
            stated.unknownWires(),
            stated.steps());
    return new SheetLearning(learnt, sheet);
  }

  private static JobSheet.Supply supply(JobSheet.Supply said, Summary seen, List<Learnt> learnt) {
    Double idle = said.idleA();
    Double steady = seen.supply() == null ? null : seen.supply().steadyA();
    if (idle == null && steady != null && steady >= LEAST_IDLE_A) {
      idle = rounded(steady);
      learnt.add(
          new Learnt(
              "supply.idleA", idle, "what it drew at the end; the running limit follows from it"));
    }
    Double microfarad = said.capacitanceUf();
    Double looked = seen.look() == null ? null : seen.look().uF();
    if (microfarad == null && looked != null && looked >= 1) {
      microfarad = rounded(looked);
      learnt.add(new Learnt("supply.capacitanceUf", microfarad, "what the first look measured"));
    }
    return new JobSheet.Supply(
        said.kind(),
        said.probeSits(),
        said.nominalV(),
        said.minV(),
        said.maxV(),
        said.limitA(),
        said.fuseA(),
        said.look(),
        said.through(),
        said.labelW(),
        idle,
        microfarad);
  }

  private static Summary.RailFigures figures(Summary seen, int input) {
    for (Summary.RailFigures figures : seen.rails()) {
      if (figures.rail() == input && figures.finalV() != null) {
        return figures;
      }
    }
    return null;
  }

  private static JobSheet.Rail rail(
      JobSheet.Rail said, Summary.RailFigures seen, String field, List<Learnt> learnt) {
    Double nominal = said.nominalV();
    if (nominal == null && Math.abs(seen.finalV()) >= 0.1) {
      nominal = rounded(seen.finalV());
      learnt.add(new Learnt(field + "nominalV", nominal, "where it came to rest"));
    }
    Double over = said.overV();
    if (over == null && nominal != null && 1.2 * Math.abs(nominal) <= 60) {
      over = rounded(1.2 * Math.abs(nominal));
      learnt.add(new Learnt(field + "overV", over, "a fifth above its nominal volts"));
    }
    Double settle = said.settleMs();
    if (settle == null && seen.settled10Ms() != null) {
      double needed = Math.max(100, Math.ceil(2 * seen.settled10Ms() / 10) * 10);
      settle = needed;
      learnt.add(
          new Learnt(
              field + "settleMs",
              settle,
              "twice what it took to come within 10 %"
                  + (needed > USUAL_SETTLE_MS
                      ? ", later than the usual " + Numbers.text(USUAL_SETTLE_MS) + " ms"
                      : "")));
    }
    Double ripple = said.rippleMaxVrms();
    if (ripple == null && seen.rippleVrms() != null && seen.rippleVrms() >= 0.001) {
      ripple = rounded(2 * seen.rippleVrms());
      learnt.add(new Learnt(field + "rippleMaxVrms", ripple, "twice the ripple that was there"));
    }
    return new JobSheet.Rail(
        said.input(),
        said.name(),
        nominal,
        said.tolerancePercent(),
        settle,
        over,
        ripple,
        said.capacitanceUf(),
        said.rectifier());
  }

  private static JobSheet.Levels levels(
      JobSheet.Levels said, Summary.LevelFigures seen, List<Learnt> learnt) {
    if (seen == null
        || seen.toneHz() == null
        || seen.headBelowMeterDb() == null
        || said != null && said.expectedDb() != null) {
      return said;
    }
    double expected = Math.round(seen.headBelowMeterDb() * 10) / 10.0;
    learnt.add(new Learnt("levels.expectedDb", expected, "how far the head was below the meter"));
    JobSheet.Levels base =
        said == null ? new JobSheet.Levels(null, null, null, null, null, null) : said;
    return new JobSheet.Levels(
        base.toneHz(),
        base.headOhm(),
        expected,
        base.marginDb(),
        base.meterSignalDbv(),
        base.fromMs(),
        base.meterFullV(),
        base.expectedCurve());
  }

  private static double rounded(double value) {
    return new BigDecimal(value).round(new MathContext(3)).doubleValue();
  }
}
