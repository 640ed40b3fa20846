package firstamp.analysis.figures;

import firstamp.analysis.spectrum.HumCoherence;
import firstamp.model.JobSheet;
import java.util.ArrayList;
import java.util.List;

/** What steady sums say of ripple and hum: the same for a whole power-up and for a part of one. */
final class SteadyEvidence {
  private SteadyEvidence() {}

  static List<Evidence.RailRipple> ripples(SteadySums sums, JobSheet sheet) {
    List<Evidence.RailRipple> ripples = new ArrayList<>();
    for (JobSheet.Rail rail : sheet.rails()) {
      RippleSums.Ripple ripple = sums.ripple(rail.input());
      if (ripple != null) {
        ripples.add(
            new Evidence.RailRipple(
                rail.input(),
                ripple.mainsHz(),
                ripple.rms1V(),
                ripple.rms2V(),
                ripple.toneVrms(),
                ripple.strongestHz()));
      }
    }
    return ripples;
  }

  static Evidence.Heard heard(SteadySums sums, JobSheet sheet, LevelSums before) {
    List<Evidence.InStep> inStep = new ArrayList<>();
    Integer mainsHz = sums.levels().humHz();
    for (JobSheet.Rail rail : sheet.rails()) {
      HumCoherence coherence = sums.inStep(rail.input());
      boolean ripples = sums.ripple(rail.input()) != null;
      Double share = mainsHz == null || !ripples ? null : coherence.share(mainsHz);
      if (share != null) {
        inStep.add(new Evidence.InStep(rail.input(), share, coherence.windows()));
      }
    }
    return LevelCalculation.heard(sums.levels(), sheet, before, inStep);
  }
}
