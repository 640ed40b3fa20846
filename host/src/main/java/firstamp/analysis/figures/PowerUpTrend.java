package firstamp.analysis.figures;

import firstamp.analysis.statistics.SupplyIntegral;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * How one power-up went, in values that fit in memory however long it was.
 *
 * @param start supply and rails of the first ten seconds, readings of 10 ms in order; shorter if a
 *     reading is missing or the switch opened
 * @param seconds means of whole seconds since closing, those with too many readings missing left
 *     out
 * @param secondsApart distance of the seconds kept: 1 up to eight hours, then 2, 4, ...
 * @param steps sudden changes of the supply current later than a second after closing, the first
 *     sixteen
 * @param supply charge and energy into the set since closing
 */
public record PowerUpTrend(
    List<Point> start,
    List<SecondMean> seconds,
    int secondsApart,
    List<CurrentStep> steps,
    SupplyIntegral supply) {

  /** Copies the lists. */
  public PowerUpTrend {
    start = List.copyOf(start);
    seconds = List.copyOf(seconds);
    steps = List.copyOf(steps);
  }

  /**
   * One reading.
   *
   * @param amps supply current
   * @param volts set side of the switch
   * @param railV rails 1 to 3 at places 0 to 2
   */
  public record Point(double amps, double volts, List<Double> railV) {}

  /**
   * Means of one second.
   *
   * @param second 0 = the first after closing
   * @param amps supply current
   * @param volts set side of the switch
   * @param railV rails 1 to 3 at places 0 to 2
   */
  public record SecondMean(int second, double amps, double volts, List<Double> railV) {}

  /**
   * A sudden rise of the supply current and how it ended.
   *
   * @param atMs since closing
   * @param beforeA mean of the 200 ms before
   * @param peakA highest reading within 2 s after
   * @param afterA mean of the last 200 ms of these 2 s
   */
  public record CurrentStep(double atMs, double beforeA, double peakA, double afterA) {
    /** Fell back to under 0.6 of its rise: what a motor does when it starts. */
    public boolean fellBack() {
      return afterA - beforeA < 0.6 * (peakA - beforeA);
    }
  }

  /** Supply current of the whole seconds from one on. */
  public double[] ampsFrom(int second) {
    return seconds.stream()
        .filter(mean -> mean.second() >= second)
        .mapToDouble(SecondMean::amps)
        .toArray();
  }

  /** A quantity over the seconds that count as steady. */
  public double[] steady(ToDoubleFunction<SecondMean> of) {
    int from = steadyFrom();
    return seconds.stream().filter(mean -> mean.second() >= from).mapToDouble(of).toArray();
  }

  /** The second from which on a power-up counts as steady here: its second half, not the first. */
  public int steadyFrom() {
    return seconds.isEmpty() ? 0 : Math.max(1, (seconds.get(seconds.size() - 1).second() + 1) / 2);
  }
}
