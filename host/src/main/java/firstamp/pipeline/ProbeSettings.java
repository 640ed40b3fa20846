package firstamp.pipeline;

import firstamp.model.JobSheet;
import firstamp.model.ProbeHello;
import firstamp.model.limits.LimitException;
import firstamp.model.limits.ProbeLimits;
import firstamp.model.text.Worded;
import firstamp.protocol.values.LookParameters;
import firstamp.sheet.Surge;
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
          limits.counts(),
          look(ProbeLimits.look(effective, hello.calibration(), hello.lookOhm())),
          limits.planned());
    } catch (LimitException unfit) {
      throw new RunRefused(RunRefused.Kind.SHEET, unfit.words());
    }
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
