package firstamp.cli.output;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.model.samples.SamplePlan;

/**
 * What of a power-up is in the log although the run could not go on, or could not be kept whole.
 */
public final class Kept {
  private Kept() {}

  /** In a sentence. */
  public static String words(BenchLog log, String uuid) {
    try {
      PowerUpReader reader = log.find(uuid);
      long[] extent = reader.extent();
      return SummaryText.text(
          "Kept: power-up %d in %s, %.2f s of readings; `firstamp show %d` works out its figures.",
          reader.entry().number(),
          log.file(),
          (extent[1] - extent[0]) / (double) SamplePlan.CONVERSIONS_PER_SECOND,
          reader.entry().number());
    } catch (LogException failed) {
      return failed.kind() == LogException.Kind.MISSING
          ? "Nothing of this power-up was kept."
          : "What was kept of this power-up cannot be read at present.";
    }
  }
}
