package firstamp.cli.output;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.model.samples.SamplePlan;
import firstamp.model.text.Worded;

/**
 * What of a power-up is in the log although the run could not go on, or could not be kept whole.
 */
public final class Kept {
  private Kept() {}

  /** In a sentence. */
  public static Worded words(BenchLog log, String uuid) {
    try {
      PowerUpReader reader = log.find(uuid);
      long[] extent = reader.extent();
      double seconds = (extent[1] - extent[0]) / (double) SamplePlan.CONVERSIONS_PER_SECOND;
      return Said.of(
          "kept.part", reader.entry().number(), log.file(), SummaryText.text("%.2f", seconds));
    } catch (LogException failed) {
      return Said.of(
          failed.kind() == LogException.Kind.MISSING ? "kept.nothing" : "kept.unreadable");
    }
  }
}
