package firstamp.analysis.figures;

import firstamp.analysis.statistics.SupplySums;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Collects the course of a power-up from its readings. Not thread-safe. */
final class TrendSums {
  private static final int MOST_SECONDS = 28_800;
  private static final int LEAST_READINGS = 80;

  private final int startReadings;
  private final List<PowerUpTrend.Point> start = new ArrayList<>();
  private final List<PowerUpTrend.SecondMean> seconds = new ArrayList<>();
  private final double[] sums = new double[5];
  private final StepWatch steps = new StepWatch();
  private int second;
  private int inSecond;
  private int secondsApart = 1;
  private SupplySums supply = new SupplySums();

  /**
   * An empty course.
   *
   * @param startReadings how many readings are kept one by one
   */
  TrendSums(int startReadings) {
    this.startReadings = startReadings;
  }

  TrendSums copy() {
    TrendSums copy = new TrendSums(startReadings);
    copy.start.addAll(start);
    copy.seconds.addAll(seconds);
    System.arraycopy(sums, 0, copy.sums, 0, sums.length);
    copy.steps.take(steps);
    copy.second = second;
    copy.inSecond = inSecond;
    copy.secondsApart = secondsApart;
    copy.supply = supply.copy();
    return copy;
  }

  void add(int number, Reading reading, Scaling scaling) {
    double amps = scaling.supplyA(reading);
    double volts = scaling.supplyV(reading);
    double[] rails = new double[3];
    for (int rail = 1; rail <= 3; rail++) {
      rails[rail - 1] = scaling.railV(reading, rail);
    }
    supply.add(reading, scaling);
    if (number == start.size() && number < startReadings) {
      start.add(new PowerUpTrend.Point(amps, volts, List.of(rails[0], rails[1], rails[2])));
    }
    if (number / 100 != second) {
      closeSecond();
      second = number / 100;
    }
    inSecond++;
    sums[0] += amps;
    sums[1] += volts;
    for (int rail = 0; rail < 3; rail++) {
      sums[2 + rail] += rails[rail];
    }
    steps.add(number, amps);
  }

  PowerUpTrend course() {
    TrendSums end = copy();
    end.closeSecond();
    return new PowerUpTrend(
        end.start, end.seconds, end.secondsApart, end.steps.found(), end.supply.integral());
  }

  private void closeSecond() {
    if (inSecond >= LEAST_READINGS && second % secondsApart == 0) {
      seconds.add(
          new PowerUpTrend.SecondMean(
              second,
              sums[0] / inSecond,
              sums[1] / inSecond,
              List.of(sums[2] / inSecond, sums[3] / inSecond, sums[4] / inSecond)));
    }
    if (seconds.size() > MOST_SECONDS) {
      secondsApart *= 2;
      seconds.removeIf(mean -> mean.second() % secondsApart != 0);
    }
    Arrays.fill(sums, 0);
    inSecond = 0;
  }

  /** Finds sudden rises of the supply current. */
  private static final class StepWatch {
    private static final int BEFORE = 20;
    private static final int AFTER = 200;
    private static final int FROM = 100;
    private static final int MOST = 16;
    private static final double LEAST_A = 0.02;

    private final double[] last = new double[BEFORE];
    private int lastCount;

    /** Mean of {@code last} but for rounding, which even in years comes to no microampere. */
    private double roughMean;

    private final List<PowerUpTrend.CurrentStep> found = new ArrayList<>();
    private int next = Integer.MIN_VALUE;
    private int stepAt = -1;
    private double beforeA;
    private double peakA;
    private double tailSum;

    void take(StepWatch other) {
      System.arraycopy(other.last, 0, last, 0, BEFORE);
      lastCount = other.lastCount;
      roughMean = other.roughMean;
      found.addAll(other.found);
      next = other.next;
      stepAt = other.stepAt;
      beforeA = other.beforeA;
      peakA = other.peakA;
      tailSum = other.tailSum;
    }

    List<PowerUpTrend.CurrentStep> found() {
      return found;
    }

    void add(int number, double amps) {
      if (number != next) {
        lastCount = 0;
        stepAt = -1;
      }
      next = number + 1;
      if (stepAt >= 0) {
        follow(number, amps);
        return;
      }
      boolean near = amps - roughMean > LEAST_A / 2;
      if (near && lastCount >= BEFORE && number >= FROM && found.size() < MOST) {
        double mean = mean();
        if (amps - mean > Math.max(LEAST_A, 0.25 * mean)) {
          stepAt = number;
          beforeA = mean;
          peakA = amps;
          tailSum = 0;
          lastCount = 0;
          return;
        }
      }
      int place = lastCount % BEFORE;
      roughMean += (amps - last[place]) / BEFORE;
      last[place] = amps;
      lastCount++;
    }

    private double mean() {
      double sum = 0;
      for (double amps : last) {
        sum += amps;
      }
      return sum / BEFORE;
    }

    private void follow(int number, double amps) {
      peakA = Math.max(peakA, amps);
      int since = number - stepAt;
      if (since >= AFTER - BEFORE) {
        tailSum += amps;
      }
      if (since == AFTER - 1) {
        found.add(new PowerUpTrend.CurrentStep(stepAt * 10.0, beforeA, peakA, tailSum / BEFORE));
        stepAt = -1;
      }
    }
  }
}
