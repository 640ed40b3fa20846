package firstamp.study;

import firstamp.account.Comparison;
import firstamp.account.FigureList;
import firstamp.locate.wire.TrialVerdict;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.text.Worded;
import java.util.ArrayList;
import java.util.List;

/**
 * What a power-up with one wire joined showed, compared with the last good one.
 *
 * <p>Each figure is judged by how far it moved towards what the sheet wants, beyond the uncertainty
 * of the difference. Figures that say the same thing twice carry one name, so that they do not
 * confirm each other.
 *
 * @param judged verdict and the figures that became better
 * @param good number of the power-up it was compared with
 * @param lines what moved, in words
 */
public record TrialComparison(TrialVerdict.Judged judged, long good, List<Worded> lines) {
  /** Hum and ripple can never be too low. */
  private static final double AS_LOW_AS_CAN_BE_DBV = -200;

  /** Copies the list. */
  public TrialComparison {
    lines = List.copyOf(lines);
  }

  /**
   * Compares.
   *
   * @param good the last good power-up
   * @param trial with one wire joined
   * @param idleA current when all is well, null = that of the good one
   */
  public static TrialComparison of(PowerUpStudy good, PowerUpStudy trial, Double idleA) {
    Comparison comparison = trial.against(good);
    List<TrialVerdict.Figure> figures = new ArrayList<>();
    List<Worded> lines = new ArrayList<>();
    for (Comparison.Difference difference : comparison.differences()) {
      TrialVerdict.Figure figure = figure(difference, trial.sheet(), idleA);
      if (figure != null && difference.significant()) {
        figures.add(figure);
        lines.add(
            Thinking.say(
                "trial.line",
                name(difference, trial.sheet()),
                FigureList.value(difference.before(), difference.unit()),
                FigureList.value(difference.after(), difference.unit())));
      }
    }
    levels(good, trial, figures, lines);
    Double steadyA = trial.summary().supply() == null ? null : trial.summary().supply().steadyA();
    if ("over-voltage".equals(trial.summary().tripCause())) {
      TrialVerdict.Judged worse = new TrialVerdict.Judged(TrialVerdict.WORSE, List.of());
      return new TrialComparison(worse, good.entry().number(), lines);
    }
    double wantedA = idleA != null ? idleA : goodIdleA(good, trial);
    return new TrialComparison(
        TrialVerdict.judge(
            TrialEvidence.shorted(trial.summary()),
            TrialEvidence.drewTooMuch(trial.summary()),
            steadyA,
            wantedA,
            figures),
        good.entry().number(),
        lines);
  }

  /** Without any current of a good power-up the running limit is all there is. */
  private static double goodIdleA(PowerUpStudy good, PowerUpStudy trial) {
    Summary.SupplyFigures supply = good.summary().supply();
    if (supply != null && supply.steadyA() != null) {
      return supply.steadyA();
    }
    JobSheet.Limits limits = trial.sheet().limits();
    return limits == null || limits.runningA() == null ? Double.MAX_VALUE : limits.runningA();
  }

  private static TrialVerdict.Figure figure(
      Comparison.Difference difference, JobSheet sheet, Double idleA) {
    return switch (difference.figure()) {
      case "steadyA" -> idleA == null ? null : of("idle current", difference, idleA);
      case "finalV" -> {
        JobSheet.Rail rail = sheet.rail(difference.rail());
        yield rail == null || rail.nominalV() == null
            ? null
            : of("volts of " + railName(rail), difference, rail.nominalV());
      }
      case "rippleVrms" -> of("ripple of rail " + difference.rail(), difference, 0);
      case "humDbv" -> of("hum", difference, AS_LOW_AS_CAN_BE_DBV);
      case "headBelowMeterDb" -> {
        Double wanted = sheet.levels() == null ? null : sheet.levels().expectedDb();
        yield wanted == null ? null : of("head below meter", difference, wanted);
      }
      default -> null;
    };
  }

  private static String railName(JobSheet.Rail rail) {
    return rail.name() == null ? "rail " + rail.input() : rail.name();
  }

  private static TrialVerdict.Figure of(
      String name, Comparison.Difference difference, double wanted) {
    return new TrialVerdict.Figure(
        name, difference.before(), difference.after(), wanted, difference.plusMinus());
  }

  /** A meter that shows a signal where none was, or none where one was. */
  private static void levels(
      PowerUpStudy good,
      PowerUpStudy trial,
      List<TrialVerdict.Figure> figures,
      List<Worded> lines) {
    boolean before = signal(good);
    boolean now = signal(trial);
    if (before != now && trial.sheet().levels() != null) {
      figures.add(new TrialVerdict.Figure("level", before ? 1 : 0, now ? 1 : 0, 1, 0.5));
      lines.add(Thinking.say(now ? "trial.signal" : "trial.no-signal"));
    }
  }

  private static Object name(Comparison.Difference difference, JobSheet sheet) {
    Worded name = Worded.of("firstamp.account.figures", difference.figure());
    JobSheet.Rail rail = sheet.rail(difference.rail());
    return difference.rail() == 0 || rail == null
        ? name
        : Thinking.say("trial.rail", railName(rail), name);
  }

  /** What moved, in a row. */
  Worded words() {
    Worded all = lines.get(0);
    for (Worded line : lines.subList(1, lines.size())) {
      all = Thinking.say("trial.and", all, line);
    }
    return all;
  }

  private static boolean signal(PowerUpStudy study) {
    Summary.LevelFigures levels = study.summary().levels();
    return levels != null && levels.meterDbv() != null;
  }

  /**
   * The last good power-up of a set before a trial: it ran until its current had settled, was not
   * switched off by itself, and is not itself a trial of that wire. One flagged as known good goes
   * before all others.
   *
   * @return null if there is none
   */
  public static PowerUpEntry lastGood(BenchLog log, PowerUpEntry trial, String wire)
      throws LogException {
    return lastGood(log, trial.setName(), wire, trial.number());
  }

  /**
   * The same before a trial is made.
   *
   * @param before only power-ups with a smaller number
   */
  public static PowerUpEntry lastGood(BenchLog log, String setName, String wire, long before)
      throws LogException {
    PowerUpEntry best = null;
    for (PowerUpEntry entry : log.list()) {
      boolean fits =
          entry.number() < before
              && entry.setName().equals(setName)
              && TrialEvidence.good(entry)
              && !wire.equals(entry.trialWire());
      if (fits && (best == null || entry.baseline() || !best.baseline())) {
        best = entry;
      }
    }
    return best;
  }
}
