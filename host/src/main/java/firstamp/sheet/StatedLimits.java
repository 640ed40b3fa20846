package firstamp.sheet;

import firstamp.model.JobSheet;

/** Which limits of the probe somebody wrote on the sheet; the others follow from it. */
final class StatedLimits {
  private StatedLimits() {}

  /** Whether a field that the probe watches is stated; rails have no default. */
  static boolean has(JobSheet stated, String field) {
    JobSheet.Limits limits = stated.limits();
    return switch (field) {
      case "limits.inrushA" -> limits != null && limits.inrushA() != null;
      case "limits.runningA" -> limits != null && limits.runningA() != null;
      case "limits.i2tA2s" -> limits != null && limits.i2tA2s() != null;
      case "limits.peakA" -> limits != null && limits.peakA() != null;
      case "limits.startA" -> limits != null && limits.startA() != null;
      case "supply.maxV" -> stated.supply().maxV() != null;
      default -> true;
    };
  }
}
