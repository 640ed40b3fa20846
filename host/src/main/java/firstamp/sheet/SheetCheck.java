package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.RuleId;
import firstamp.model.limits.Coverage;
import firstamp.model.limits.LimitException;
import firstamp.model.limits.ProbeLimits;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.text.Numbers;
import java.util.ArrayList;
import java.util.List;

/**
 * What a sheet makes the program watch, in words: on which range, how fast, by whom.
 *
 * @param watched one per limit of the probe and per rule of the host
 * @param notWatched what is not, and why
 * @param warnings warnings that do not stop anything
 */
public record SheetCheck(
    List<Watched> watched, List<NotWatched> notWatched, List<String> warnings) {

  /**
   * One thing that is watched.
   *
   * @param rule identifier
   * @param rail 1 to 3; 0 = the supply or no rail
   * @param on range or input it is seen on, null = not one input
   * @param limit as used, null = none
   * @param unit of the limit
   * @param withinMs how fast it decides
   * @param by probe or host
   * @param text the sentence
   */
  public record Watched(
      String rule,
      int rail,
      String on,
      Double limit,
      String unit,
      double withinMs,
      String by,
      String text) {}

  /** Copies the lists. */
  public SheetCheck {
    watched = List.copyOf(watched);
    notWatched = List.copyOf(notWatched);
    warnings = List.copyOf(warnings);
  }

  /**
   * Checks a sheet.
   *
   * @param stated as it was read
   * @throws LimitException a limit this probe cannot watch
   */
  public static SheetCheck of(JobSheet stated, Calibration calibration, boolean reducedStream)
      throws LimitException {
    JobSheet effective = Defaults.fill(stated);
    List<Watched> watched = new ArrayList<>();
    for (ProbeLimits.Planned limit : ProbeLimits.plan(effective, calibration).planned()) {
      watched.add(byProbe(limit, stated, effective));
    }
    Coverage coverage = new Coverage(effective, reducedStream);
    for (Coverage.Item item : coverage.items()) {
      if (item.rule() != RuleId.OVER_CURRENT) {
        watched.add(byHost(effective, item));
      }
    }
    return new SheetCheck(watched, coverage.notWatched(), SheetWarnings.of(stated));
  }

  private static Watched byProbe(ProbeLimits.Planned limit, JobSheet stated, JobSheet effective) {
    String range =
        switch (limit.channel()) {
          case I -> "coarse current range (I)";
          case J -> "fine current range (J)";
          case V -> "supply volts (V)";
          default -> "rail " + limit.rail() + " (" + limit.channel() + ")";
        };
    StringBuilder text = new StringBuilder(limit.field()).append(": ");
    String said = Numbers.inUnit(limit.sheetValue(), limit.unit());
    String acts = actsAt(limit);
    text.append(said)
        .append(StatedLimits.has(stated, limit.field()) ? " on the sheet" : " by default");
    if (!acts.equals(said)) {
      text.append(", acts at ").append(acts);
    }
    text.append(during(limit.field(), effective.limits()));
    text.append(". The probe switches off by itself, on the ").append(range);
    text.append(", within ").append(Numbers.text(limit.withinMs())).append(" ms.");
    return new Watched(
        limit.rule().id(),
        limit.rail(),
        limit.channel().toString(),
        limit.usedValue(),
        limit.unit(),
        limit.withinMs(),
        "probe",
        text.toString());
  }

  /** The acting limit in the unit of the stated one: 0.977 A beside 1 A. */
  private static String actsAt(ProbeLimits.Planned limit) {
    boolean ampere = Numbers.inUnit(limit.sheetValue(), limit.unit()).endsWith(" A");
    return ampere
        ? Numbers.text(limit.usedValue()) + " A"
        : Numbers.inUnit(limit.usedValue(), limit.unit());
  }

  /** When a limit of the supply current acts. */
  private static String during(String field, JobSheet.Limits limits) {
    String ms = Numbers.text(limits.inrushMs()) + " ms after closing";
    return switch (field) {
      case "limits.inrushA" -> ", until " + ms;
      case "limits.runningA", "limits.peakA" -> ", from " + ms + " on";
      default -> "";
    };
  }

  private static Watched byHost(JobSheet sheet, Coverage.Item item) {
    JobSheet.RuleSettings settings = item.rule().settings(sheet);
    Goal goal = Goal.of(sheet, item);
    double withinMs = settings.onDelayMs() + goal.stepMs();
    StringBuilder text = new StringBuilder("The computer ");
    text.append("off".equals(settings.action()) ? "switches off and raises" : "raises");
    text.append(" an alarm ").append(goal.words());
    text.append(CheckWords.from(sheet, item));
    text.append(", within ").append(Numbers.text(withinMs)).append(" ms.");
    return new Watched(
        item.rule().id(),
        item.rail(),
        goal.on(),
        goal.limit(),
        goal.unit(),
        withinMs,
        "host",
        text.toString());
  }

  /** Name of the input of a rail. */
  static String input(int rail) {
    return rail == 0 ? Channel.V.toString() : Channel.ofRail(rail).toString();
  }
}
