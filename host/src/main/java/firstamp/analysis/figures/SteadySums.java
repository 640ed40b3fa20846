package firstamp.analysis.figures;

import firstamp.analysis.spectrum.HumCoherence;
import firstamp.analysis.spectrum.HumPair;
import firstamp.analysis.spectrum.LevelPair;
import firstamp.model.samples.Reading;
import firstamp.model.samples.RippleWindow;
import firstamp.model.samples.Scaling;

/**
 * What one stretch of time has brought that is not about switching on: course, ripple, levels, hum.
 * Not thread-safe.
 */
final class SteadySums {
  private final TrendSums course;
  private final LevelSums levels;
  private final RippleSums[] ripple = new RippleSums[4];
  private final HumCoherence[] inStep = new HumCoherence[4];

  private SteadySums(TrendSums course, LevelSums levels) {
    this.course = course;
    this.levels = levels;
  }

  /**
   * Empty sums.
   *
   * @param startReadings how many readings the course keeps one by one
   * @param levels empty sums of levels
   * @param toneHz of the sheet; null = none
   */
  SteadySums(int startReadings, LevelSums levels, Double toneHz) {
    this(new TrendSums(startReadings), levels);
    for (int rail = 1; rail <= 3; rail++) {
      ripple[rail] = new RippleSums();
      inStep[rail] = new HumCoherence(toneHz);
    }
  }

  SteadySums copy() {
    SteadySums copy = new SteadySums(course.copy(), levels.copy());
    for (int rail = 1; rail <= 3; rail++) {
      copy.ripple[rail] = ripple[rail].copy();
      copy.inStep[rail] = inStep[rail].copy();
    }
    return copy;
  }

  void add(int number, Reading reading, Scaling scaling) {
    course.add(number, reading, scaling);
  }

  void add(LevelPair pair) {
    levels.add(pair.window(), pair.detail());
  }

  void add(RippleWindow window) {
    ripple[window.rail()].add(window);
  }

  void add(HumPair pair) {
    inStep[pair.rail()].add(pair.head(), pair.railLines(), pair.headNoise());
  }

  PowerUpTrend course() {
    return course.course();
  }

  LevelSums levels() {
    return levels;
  }

  /** Ripple of a rail, null if none stands out. */
  RippleSums.Ripple ripple(int rail) {
    return ripple[rail].mean();
  }

  HumCoherence inStep(int rail) {
    return inStep[rail];
  }
}
