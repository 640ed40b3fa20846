package firstamp.alarm;

import firstamp.model.RuleId;
import firstamp.model.text.Wording.Quantity;

/**
 * The current climbs slowly: each fifth of the time looked at is higher than the one before, no
 * single step holds more than half of the rise, and the rise is more than the scatter of the
 * current itself (speech, a motor) would bring.
 */
final class CreepRule {
  private static final int FIFTHS = 5;
  private static final int PARTS = 25;

  /** Slack and decision interval in standard deviations: the usual pair of {@link Cusum}. */
  private static final double SLACK = 0.5;

  private static final double DECISION = 5;

  /** Mean distance of two neighbours over their standard deviation, 2 / sqrt(pi). */
  private static final double NEIGHBOURS = 1.128;

  /** What the fine current range can tell apart over one part. */
  private static final double FINEST_A = 2e-5;

  private final RunState run;
  private final AlarmCondition watch;
  private final AlarmBook book;
  private final AlarmTexts texts;
  private final double[] parts = new double[PARTS];
  private final double[] fifths = new double[FIFTHS];
  private long partMicros;
  private long fromMicros;
  private int filled;
  private long partBegin;
  private double sum;
  private int readings;

  CreepRule(RunState run, AlarmCondition watch, AlarmBook book, AlarmTexts texts) {
    this.run = run;
    this.watch = watch;
    this.book = book;
    this.texts = texts;
  }

  /** Whether the sheet asks for it. */
  static boolean asked(AlarmCondition watch) {
    return watch != null && watch.has("overAPerMin");
  }

  void closed() {
    if (!asked(watch)) {
      return;
    }
    partMicros = Math.round(watch.number("forMs") * 1000 / PARTS);
    fromMicros = run.closedMicros() + RuleId.CURRENT_CREEP.restMicros(run.sheet(), 0);
    filled = 0;
    readings = 0;
    sum = 0;
    partBegin = fromMicros;
  }

  void judge(ReadingWindow now) {
    if (!asked(watch) || now.fromMicros() < fromMicros) {
      return;
    }
    sum += now.supplyA();
    readings++;
    if (now.toMicros() - partBegin < partMicros) {
      return;
    }
    if (filled == PARTS) {
      System.arraycopy(parts, 1, parts, 0, PARTS - 1);
      filled--;
    }
    parts[filled++] = sum / readings;
    partBegin = now.toMicros();
    sum = 0;
    readings = 0;
    if (filled == PARTS) {
      decide(now);
    }
  }

  /** Scatter is taken from neighbours, which a slow climb hardly touches. */
  private boolean beyondScatter() {
    double apart = 0;
    for (int k = 1; k < PARTS; k++) {
      apart += Math.abs(parts[k] - parts[k - 1]);
    }
    double deviation = Math.max(FINEST_A, apart / (PARTS - 1) / NEIGHBOURS);
    Cusum sums = new Cusum(SLACK, DECISION);
    for (double part : parts) {
      sums.take((part - fifths[0]) / deviation);
    }
    return sums.above();
  }

  private void decide(ReadingWindow now) {
    for (int k = 0; k < FIFTHS; k++) {
      double total = 0;
      for (int part = 0; part < PARTS / FIFTHS; part++) {
        total += parts[k * (PARTS / FIFTHS) + part];
      }
      fifths[k] = total / (PARTS / FIFTHS);
    }
    double rise = fifths[FIFTHS - 1] - fifths[0];
    boolean climbs = rise > 0;
    for (int k = 1; k < FIFTHS && climbs; k++) {
      double step = fifths[k] - fifths[k - 1];
      climbs = step > 0 && step <= rise / 2;
    }
    climbs = climbs && beyondScatter();
    double minutes = watch.number("forMs") / 60_000 * (FIFTHS - 1) / FIFTHS;
    double slope = rise / minutes;
    // Nobody would see the set get warm: half as much is allowed.
    double limit = watch.number("overAPerMin") * (run.soaks() ? 0.5 : 1);
    long begin = now.toMicros() - PARTS * partMicros;
    switch (watch.step(
        begin, now.toMicros(), climbs && slope > limit, slope < limit * (1 - watch.deadband()))) {
      case RAISE ->
          book.raise(
              watch,
              now.toMicros(),
              watch.badSince(),
              slope,
              false,
              limit,
              "A/min",
              texts.text(
                  RuleId.CURRENT_CREEP.id(),
                  watch.settings().action().equals("off"),
                  Quantity.amps(slope),
                  Quantity.amps(limit),
                  Quantity.amps(now.supplyA())));
      case CLEAR -> book.clear(watch, now.toMicros());
      case NOTHING -> {}
    }
  }
}
