package firstamp.analysis.figures;

import firstamp.model.JobSheet;
import java.util.List;

/**
 * How far the head lies below the meter when all is well, over frequency: a record equaliser lifts
 * the lows and the highs (common practice), so one number holds at one frequency alone.
 *
 * <p>Between the points straight lines over the logarithm of the frequency, outside them the last
 * point.
 */
public final class ExpectedDistance {
  private final List<JobSheet.LevelPoint> points;

  private ExpectedDistance(List<JobSheet.LevelPoint> points) {
    this.points = points;
  }

  /** What the sheet expects; null if it says nothing. */
  public static ExpectedDistance of(JobSheet.Levels levels) {
    if (levels == null) {
      return null;
    }
    if (!levels.expectedCurve().isEmpty()) {
      return new ExpectedDistance(levels.expectedCurve());
    }
    return levels.expectedDb() == null
        ? null
        : new ExpectedDistance(List.of(new JobSheet.LevelPoint(1000.0, levels.expectedDb())));
  }

  /** Decibel at a frequency. */
  public double db(double hz) {
    return JobSheet.LevelPoint.between(points, hz);
  }
}
