package firstamp.alarm;

import firstamp.model.RuleId;
import firstamp.model.text.Wording;
import firstamp.model.text.Wording.Quantity;

/**
 * The current climbs slowly ({@link SlowClimb}), or has come to three times what the settled set
 * drew ({@link GrownCurrent}).
 */
final class CreepRule {
  /** Where the sheet states no limit: this share of the settled current, and this, a minute. */
  private static final double SHARE_PER_MIN = 0.25;

  private static final double LEAST_A_PER_MIN = 0.005;

  private static final int READINGS_PER_MEAN = 10;
  private static final long MEAN_MICROS = 100_000;
  private static final long CHARGED_MICROS = 500_000;
  private static final int FIFTHS = 5;
  private static final int DECISIONS = 25;

  private final RunState run;
  private final AlarmCondition watch;
  private final AlarmBook book;
  private final AlarmTexts texts;
  private final GrownCurrent grown = new GrownCurrent();
  private final SlowClimb climb;
  private final int means;
  private long settlingUntil;
  private long climbFrom;
  private double sumA;
  private double sumV;
  private int readings;
  private long counted;

  CreepRule(RunState run, AlarmCondition watch, AlarmBook book, AlarmTexts texts) {
    this.run = run;
    this.watch = watch;
    this.book = book;
    this.texts = texts;
    long whole = watch == null ? 0 : Math.round(watch.number("forMs") * 1000 / MEAN_MICROS);
    this.means = (int) Math.max(2 * FIFTHS, whole / FIFTHS * FIFTHS);
    this.climb = new SlowClimb(means);
  }

  void closed() {
    if (watch != null) {
      climbFrom = run.closedMicros() + RuleId.CURRENT_CREEP.restMicros(run.sheet(), 0);
      changed(run.closedMicros());
    }
  }

  /** Something was done to the set: what it drew before says nothing about what it draws now. */
  void changed(long micros) {
    settlingUntil = micros + CHARGED_MICROS;
    grown.forget();
    climb.forget();
    startMean();
    counted = 0;
  }

  private void startMean() {
    sumA = 0;
    sumV = 0;
    readings = 0;
  }

  void judge(ReadingWindow now) {
    if (watch == null || now.fromMicros() < settlingUntil) {
      return;
    }
    if (now.held() == 1) {
      startMean();
    }
    sumA += now.supplyA();
    sumV += now.supplyV();
    readings++;
    if (readings == READINGS_PER_MEAN) {
      take(now, sumA / readings, sumV / readings);
      startMean();
    }
  }

  private void take(ReadingWindow now, double ampere, double volts) {
    grown.take(ampere);
    if (now.toMicros() - climbFrom < MEAN_MICROS) {
      return;
    }
    climb.take(ampere, volts);
    counted++;
    if (climb.full() && counted % Math.max(1, means / DECISIONS) == 0) {
      decide(now);
    }
  }

  private void decide(ReadingWindow now) {
    if (climb.voltsClimb() || !grown.known()) {
      watch.unknown();
      return;
    }
    boolean climbs = climb.climbs();
    boolean threefold = grown.grown();
    double minutes = means * MEAN_MICROS / 60e6 * (FIFTHS - 1) / FIFTHS;
    double slope = climb.rise() / minutes;
    double limit = limit();
    switch (watch.step(
        now.toMicros() - means * MEAN_MICROS,
        now.toMicros(),
        climbs && slope > limit || threefold,
        slope < limit * (1 - watch.deadband()))) {
      case RAISE -> {
        boolean faster = climbs && slope > limit;
        Quantity at = Quantity.amps(now.supplyA());
        boolean off = watch.settings().action().equals("off");
        Wording text =
            faster
                ? texts.text(
                    RuleId.CURRENT_CREEP.id(), off, Quantity.amps(slope), Quantity.amps(limit), at)
                : texts.text("current-grown", off, at, Quantity.amps(grown.settledA()));
        book.raise(
            watch,
            now.toMicros(),
            watch.badSince(),
            faster ? slope : grown.lowestA(),
            false,
            faster ? limit : grown.limitA(),
            faster ? "A/min" : "A",
            text);
      }
      case CLEAR -> book.clear(watch, now.toMicros());
      case NOTHING -> {}
    }
  }

  private double limit() {
    double usual =
        watch.has("overAPerMin")
            ? watch.number("overAPerMin")
            : SHARE_PER_MIN * grown.settledA() + LEAST_A_PER_MIN;
    // Nobody would see the set get warm: half as much is allowed.
    return usual * (run.soaks() ? 0.5 : 1);
  }
}
