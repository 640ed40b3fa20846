package firstamp.pipeline;

import firstamp.model.JobSheet;
import firstamp.model.ProbeHello;
import firstamp.model.limits.LimitException;
import firstamp.model.limits.ProbeLimits;
import firstamp.model.text.Worded;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.TripLimits;
import firstamp.sheet.Surge;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Limits and look of a sheet in the messages of the wire format. */
public final class ProbeSettings implements SettingsPlan {
  private final JobSheet effective;

  /** For a sheet whose defaults are filled in. */
  public ProbeSettings(JobSheet effective) {
    this.effective = effective;
  }

  @Override
  public PlannedSettings plan(ProbeHello hello, Set<Integer> openRails) throws RunRefused {
    Worded tooMuch = Surge.refusal(effective);
    if (tooMuch != null) {
      throw new RunRefused(RunRefused.Kind.ARMING, tooMuch);
    }
    try {
      ProbeLimits limits = ProbeLimits.plan(effective, hello.calibration());
      for (int rail : openRails) {
        limits = limits.withoutRail(rail);
      }
      return new PlannedSettings(
          limits(limits),
          look(ProbeLimits.look(effective, hello.calibration(), hello.lookOhm())),
          limits.planned());
    } catch (LimitException unfit) {
      throw new RunRefused(RunRefused.Kind.SHEET, unfit.words());
    }
  }

  private static TripLimits limits(ProbeLimits plan) {
    List<RailWindow> rails = new ArrayList<>();
    for (int rail = 0; rail < 3; rail++) {
      rails.add(new RailWindow(plan.railLow().get(rail), plan.railHigh().get(rail)));
    }
    return new TripLimits(
        plan.inrushMs(),
        plan.inrushI(),
        plan.runningI(),
        plan.runningJ(),
        plan.peakI(),
        plan.meanI(),
        plan.meanJ(),
        plan.confirmI(),
        plan.confirmJ(),
        plan.confirmRail(),
        plan.confirmV(),
        plan.i2tBudget(),
        plan.i2tRunning(),
        rails,
        plan.overV(),
        plan.silenceMs(),
        plan.lookOverJ(),
        plan.startI(),
        plan.startMs());
  }

  private static LookParameters look(ProbeLimits.LookParameters look) {
    return new LookParameters(
        look.skip(),
        look.maxMs(),
        look.voltsPerFine(),
        look.shortVoltsPerFine(),
        look.lowVoltsPerFine(),
        look.supplyLowest(),
        look.supplyHighest(),
        look.chargeLimit());
  }
}
