package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.samples.RippleWindow;
import firstamp.model.samples.SamplePlan;

/** Ripple of one rail: too much, or hardly any while the rail is high. */
final class RailRippleRules {
  private static final long WINDOW_MICROS = 200_000;

  private final String name;
  private final double high;
  private final double nominal;
  private final Double highest;
  private final Double farad;
  private final int pulsesPerPeriod;
  private final AlarmBook book;
  private final AlarmTexts texts;
  private final AlarmCondition ripple;
  private final AlarmCondition tooLow;
  private long judgedFrom = RunState.NEVER;
  private boolean low;

  RailRippleRules(
      JobSheet.Rail rail,
      String name,
      double high,
      RunState run,
      AlarmConditions watches,
      AlarmBook book,
      AlarmTexts texts) {
    this.name = name;
    this.nominal = rail.nominalV() == null ? 0 : rail.nominalV();
    double tolerance = Math.abs(high - nominal);
    this.high = Math.abs(nominal) + tolerance;
    this.highest = rail.rippleMaxVrms();
    this.farad = rail.capacitanceUf() == null ? null : rail.capacitanceUf() * 1e-6;
    this.pulsesPerPeriod = "full".equals(rail.rectifier()) ? 2 : 1;
    this.book = book;
    this.texts = texts;
    boolean raw = !run.setup().reducedStream();
    this.ripple = raw && highest != null ? watches.of(RuleId.RIPPLE, rail.input()) : null;
    boolean rectified = "half".equals(rail.rectifier()) || "full".equals(rail.rectifier());
    this.tooLow =
        raw && rectified && farad != null && nominal != 0
            ? watches.of(RuleId.RIPPLE_TOO_LOW, rail.input())
            : null;
  }

  /**
   * Whether a high rail may still turn out to have lost its load: that tells more than that it is
   * high, and is reported first.
   *
   * @param highSince when the rail went above its window
   */
  boolean mayExplain(long highSince, long nowMicros) {
    if (tooLow == null || tooLow.stands() || judgedFrom >= highSince && !low) {
      return false;
    }
    long longest = Math.round(tooLow.settings().onDelayMs() * 1000) + 2 * WINDOW_MICROS;
    return nowMicros - highSince <= longest;
  }

  void judge(RippleWindow found, double supplyA) {
    long from = SamplePlan.microsOf(found.firstIndex());
    long to = SamplePlan.microsOf(found.endIndex());
    if (ripple != null) {
      judgeRipple(found, from, to);
    }
    if (tooLow != null) {
      judgeTooLow(found, supplyA, from, to);
    }
  }

  private void judgeRipple(RippleWindow found, long from, long to) {
    switch (ripple.step(
        from, to, found.rmsV() > highest, found.rmsV() < highest * (1 - ripple.deadband()))) {
      case RAISE ->
          book.raise(
              ripple,
              to,
              ripple.badSince(),
              found.rmsV(),
              false,
              highest,
              "V",
              texts.text(
                  "ripple",
                  false,
                  name,
                  found.rmsV() * 1000,
                  highest * 1000,
                  (double) (found.rms2V() >= found.rms1V() ? 2 : 1) * found.mainsHz()));
      case CLEAR -> book.clear(ripple, to);
      case NOTHING -> book.follow(ripple, found.rmsV());
    }
  }

  /** A reservoir that feeds I shows I / (pi f C sqrt 2) rms at its ripple frequency f. */
  private void judgeTooLow(RippleWindow found, double supplyA, long from, long to) {
    double hertz = pulsesPerPeriod * (double) found.mainsHz();
    double due = Math.max(0, supplyA) / (Math.PI * hertz * farad * Math.sqrt(2));
    double limit = tooLow.number("belowShare") * due;
    boolean railHigh = Math.abs(found.meanV()) > high;
    // Under the noise floor, ripple cannot be told from none.
    boolean telling = limit > found.noiseFloorV();
    boolean bad = telling && railHigh && found.rmsV() < limit;
    boolean good = !railHigh || found.rmsV() > limit * (1 + tooLow.deadband());
    judgedFrom = from;
    low = bad;
    switch (tooLow.step(from, to, bad, good)) {
      case RAISE ->
          book.raise(
              tooLow,
              to,
              tooLow.badSince(),
              found.rmsV(),
              false,
              limit,
              "V",
              texts.text(
                  "ripple-too-low", false, name, found.meanV(), found.rmsV() * 1000, due * 1000));
      case CLEAR -> book.clear(tooLow, to);
      case NOTHING -> {}
    }
  }
}
