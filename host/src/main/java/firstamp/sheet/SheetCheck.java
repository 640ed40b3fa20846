package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.RuleId;
import firstamp.model.limits.Coverage;
import firstamp.model.limits.LimitException;
import firstamp.model.limits.ProbeLimits;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;
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
    List<Watched> watched, List<NotWatched> notWatched, List<Worded> warnings) {

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
      Worded text) {}

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
    Quantity said = Quantity.amps(limit.sheetValue(), limit.unit());
    Quantity acts = actsAt(limit, said.unit());
    Worded text =
        CheckWords.say(
            "probe",
            limit.field(),
            said,
            new Phrase(StatedLimits.has(stated, limit.field()) ? "probe.stated" : "probe.default"),
            acts.looksLike(said) ? "" : new Phrase("probe.acts", acts),
            during(limit.field(), effective.limits()),
            range(limit),
            limit.withinMs());
    return new Watched(
        limit.rule().id(),
        limit.rail(),
        limit.channel().toString(),
        limit.usedValue(),
        limit.unit(),
        limit.withinMs(),
        "probe",
        text);
  }

  private static Phrase range(ProbeLimits.Planned limit) {
    return switch (limit.channel()) {
      case I, J, V -> new Phrase("probe.on." + limit.channel());
      default -> new Phrase("probe.on.rail", limit.rail(), limit.channel());
    };
  }

  /** The acting limit in the unit of the stated one: 0.977 A beside 1 A. */
  private static Quantity actsAt(ProbeLimits.Planned limit, String unit) {
    return unit.equals("A")
        ? new Quantity(limit.usedValue(), unit)
        : Quantity.amps(limit.usedValue(), limit.unit());
  }

  /** When a limit of the supply current acts. */
  private static Object during(String field, JobSheet.Limits limits) {
    return switch (field) {
      case "limits.inrushA" -> new Phrase("probe.until", limits.inrushMs());
      case "limits.runningA", "limits.peakA" -> new Phrase("probe.after", limits.inrushMs());
      default -> "";
    };
  }

  private static Watched byHost(JobSheet sheet, Coverage.Item item) {
    JobSheet.RuleSettings settings = item.rule().settings(sheet);
    RuleDescription goal = RuleDescription.of(sheet, item);
    double withinMs = settings.onDelayMs() + goal.stepMs();
    return new Watched(
        item.rule().id(),
        item.rail(),
        goal.on(),
        goal.limit(),
        goal.unit(),
        withinMs,
        "host",
        CheckWords.say(
            "off".equals(settings.action()) ? "host.switches-off" : "host.raises",
            goal.words(),
            CheckWords.from(sheet, item),
            withinMs));
  }

  /** Name of the input of a rail. */
  static String input(int rail) {
    return rail == 0 ? Channel.V.toString() : Channel.ofRail(rail).toString();
  }
}
