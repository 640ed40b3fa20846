package firstamp.run;

import firstamp.analysis.figures.LeakageAcceptance;
import firstamp.model.JobSheet;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;
import firstamp.pipeline.SlopeFit;

/**
 * One step of a staged bring-up, fed with readings: waits for the volts, then until the current has
 * settled, and stops when too much flows, the volts are too high, or the leakage rises.
 *
 * <p>Leakage is what is left of the current after the charging of the capacitors, {@code C dV/dt},
 * is taken off; where C is not known it is judged only while the volts stand still. Pure: asks no
 * clock. Its limits (rises by a twentieth, 0.25 W warm, 0.5 W hot) are common practice, no source.
 */
final class StepWatch {
  private static final double SECOND_MS = 1000;
  private static final double LEAST_CHARGE_MS = 300;
  private static final double STEADY_V_PER_S = 0.02;
  private static final double RISES = 1.05;
  private static final double LEAST_RISE_A = 0.00005;
  private static final int RISING_SECONDS = 5;
  private static final double WARM_W = 0.25;
  private static final double HOT_W = 0.5;

  private final JobSheet.Step step;
  private final double farad;
  private final double chargeMs;
  private final SlopeFit slope;
  private double beganMs = Double.NaN;
  private double reachedMs = Double.NaN;
  private double overSinceMs = Double.NaN;
  private double secondMs = Double.NaN;
  private double sumA;
  private double sumV;
  private int readings;
  private double beforeV = Double.NaN;
  private double meanA;
  private double meanV;
  private double leakA = Double.NaN;
  private double lowestLeakA = Double.POSITIVE_INFINITY;
  private int rising;
  private boolean warmSaid;

  /** What comes of a reading. */
  enum Next {
    /** Nothing yet. */
    WAIT,
    /** Something to say. */
    SAY,
    /** The step is over. */
    GO_ON,
    /** Switch off. */
    STOP
  }

  private Worded words;

  /**
   * A step that begins with the first reading.
   *
   * @param step from the sheet, filled
   * @param farad all filter capacitors together, 0 = not known
   */
  StepWatch(JobSheet.Step step, double farad) {
    this.step = step;
    this.farad = farad;
    this.chargeMs = Math.max(LEAST_CHARGE_MS, 3 * farad * step.supplyV() / step.limitA() * 1000);
    double windowS = Math.max(10, Math.min(30, step.dwellMs() / SECOND_MS));
    this.slope = new SlopeFit((int) windowS);
  }

  /** What the last answer means, for the person. */
  Worded words() {
    return words;
  }

  double volts() {
    return meanV;
  }

  double ampere() {
    return meanA;
  }

  /** Leakage, ampere; NaN = not known yet. */
  double leakA() {
    return leakA;
  }

  /** A reading of 10 ms. */
  Next reading(double atMs, double volts, double ampere) {
    if (Double.isNaN(beganMs)) {
      beganMs = atMs;
      secondMs = atMs;
    }
    Next stop = limits(atMs, volts, ampere);
    if (stop != Next.WAIT) {
      return stop;
    }
    sumA += ampere;
    sumV += volts;
    readings++;
    if (atMs - secondMs < SECOND_MS - 10) {
      return Next.WAIT;
    }
    meanA = sumA / readings;
    meanV = sumV / readings;
    double seconds = Math.max(0.1, (atMs + 10 - secondMs) / SECOND_MS);
    secondMs = atMs + 10;
    sumA = 0;
    sumV = 0;
    readings = 0;
    return second(atMs, seconds);
  }

  /** Too high, or too much for longer than charging takes. */
  private Next limits(double atMs, double volts, double ampere) {
    if (volts > 1.15 * step.supplyV() + 0.3) {
      return say(
          Next.STOP, "over-volts", new Quantity(volts, "V"), new Quantity(step.supplyV(), "V"));
    }
    if (ampere <= step.limitA()) {
      overSinceMs = Double.NaN;
    } else if (Double.isNaN(overSinceMs)) {
      overSinceMs = atMs;
    } else if (atMs - overSinceMs >= chargeMs) {
      return say(
          Next.STOP,
          "over-amps",
          Quantity.amps(ampere),
          new Quantity(volts, "V"),
          Quantity.amps(step.limitA()));
    }
    return Next.WAIT;
  }

  private Next second(double atMs, double seconds) {
    double perSecond = Double.isNaN(beforeV) ? Double.NaN : (meanV - beforeV) / seconds;
    beforeV = meanV;
    boolean there = Math.abs(meanV - step.supplyV()) <= Math.max(0.15, 0.03 * step.supplyV());
    if (!there) {
      reachedMs = Double.NaN;
      slope.clear();
      return timedOut(atMs, new Phrase("no-volts", new Quantity(step.supplyV(), "V")));
    }
    if (Double.isNaN(reachedMs)) {
      reachedMs = atMs;
    }
    slope.add(meanA);
    Next leak = leakage(perSecond);
    if (leak != Next.WAIT) {
      return leak;
    }
    boolean dwelt = atMs - reachedMs >= step.dwellMs();
    double allowed = Math.max(0.00005, step.settledPercentPerMin() / 100 * Math.abs(meanA));
    boolean settled = slope.full() && Math.abs(slope.perMinute()) <= allowed;
    boolean low = meanA <= step.belowA();
    if (dwelt && settled && low) {
      words = leakWords(StepWords.said(meanV, meanA));
      return Next.GO_ON;
    }
    return timedOut(
        atMs,
        !low && settled
            ? new Phrase("still-draws", Quantity.amps(meanA), Quantity.amps(step.belowA()))
            : new Phrase("no-settling"));
  }

  private Next leakage(double perSecond) {
    boolean known = farad > 0 || Math.abs(perSecond) < STEADY_V_PER_S;
    if (!step.forming() || Double.isNaN(perSecond) || !known) {
      return Next.WAIT;
    }
    leakA = meanA - farad * perSecond;
    double heat = meanV * Math.max(0, leakA);
    if (heat >= HOT_W) {
      return say(Next.STOP, "hot", new Quantity(heat, "W"), Quantity.amps(leakA));
    }
    if (leakA > RISES * lowestLeakA && leakA > lowestLeakA + LEAST_RISE_A) {
      rising++;
    } else {
      rising = 0;
    }
    lowestLeakA = Math.min(lowestLeakA, Math.max(0, leakA));
    if (rising >= RISING_SECONDS) {
      return say(Next.STOP, "leak-rises", Quantity.amps(leakA), Quantity.amps(lowestLeakA));
    }
    if (heat >= WARM_W && !warmSaid) {
      warmSaid = true;
      return say(Next.SAY, "warm", new Quantity(heat, "W"));
    }
    return Next.WAIT;
  }

  /** What the leakage means, where the capacitance is known; the volts of the step as rated. */
  private Worded leakWords(Worded said) {
    double old = LeakageAcceptance.oldCanA(farad, step.supplyV());
    if (!step.forming() || farad <= 0 || Double.isNaN(leakA) || Double.isNaN(old)) {
      return said;
    }
    return StepWords.of(
        "leaks",
        said,
        Quantity.amps(Math.max(0, leakA)),
        Quantity.amps(LeakageAcceptance.newPartA(farad, step.supplyV())),
        Quantity.amps(old));
  }

  private Next timedOut(double atMs, Phrase why) {
    if (atMs - beganMs < step.timeoutMs()) {
      return Next.WAIT;
    }
    return say(Next.STOP, "time-over", why, new Quantity(step.timeoutMs() / 1000, "s"));
  }

  private Next say(Next next, String key, Object... values) {
    words = StepWords.of(key, values);
    return next;
  }
}
