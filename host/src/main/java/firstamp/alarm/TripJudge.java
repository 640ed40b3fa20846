package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.Trip;
import firstamp.model.TripCause;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;
import firstamp.model.text.Wording;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;

/** What a trip of the probe means: alarms raised at the probe's own times. */
final class TripJudge {
  private static final int HIGHEST_COUNTS = 1023;
  private static final long I_INTERVAL_MICROS = 250;

  /** A load that comes on so soon after closing came on with it. */
  private static final long CLOSING_MICROS = 5_000;

  /** A motor is up to speed, or stalls, within this time: common practice, no source. */
  private static final long MOTOR_START_MICROS = 1_000_000;

  /** Without its capture a trip is judged this long after it: all three reports are in by then. */
  private static final long CAPTURE_WAIT_MICROS = 500_000;

  private final RunState run;
  private final AlarmConditions watches;
  private final AlarmBook book;
  private final AlarmTexts texts;
  private final VoltsTrace trace = new VoltsTrace();
  private final LoadStep load = new LoadStep();
  private Reading lastOn;
  private Trip pending;
  private Capture capture;
  private boolean motorWaits;
  private int lastNumber;

  TripJudge(RunState run, AlarmConditions watches, AlarmBook book, AlarmTexts texts) {
    this.run = run;
    this.watches = watches;
    this.book = book;
    this.texts = texts;
  }

  void conversions(ConversionBlock block) {
    trace.take(block, pending == null ? Long.MAX_VALUE : pending.openedMicros());
    JobSheet.Limits limits = run.sheet().limits();
    if (limits != null && limits.runningA() != null) {
      load.take(block, counts(limits.runningA() / 2));
    }
  }

  void reading(Reading reading) {
    if (run.whileOn(reading.startMicros(), reading.endMicros())) {
      lastOn = reading;
    }
    if (pending != null && capture != null && reading.endMicros() > pending.openedMicros()) {
      judgeShort();
    }
    time(reading.startMicros());
  }

  private void time(long micros) {
    if (pending == null || micros < pending.openedMicros()) {
      return;
    }
    if (micros - pending.openedMicros() >= CAPTURE_WAIT_MICROS) {
      judgeShort();
    }
  }

  /** The stream is over: what was waited for does not come. */
  void finish() {
    if (pending != null) {
      judgeShort();
    }
  }

  void captured(Capture taken) {
    if (pending == null || taken.tripNumber() != pending.number()) {
      return;
    }
    capture = taken;
    if (trace.endMicros() > pending.openedMicros()) {
      judgeShort();
    }
  }

  /** The switch closes: what the last trip or look raised is over. */
  void closed(long micros) {
    finish();
    for (AlarmCondition watch : watches.all()) {
      if (watch.stands() && watch.rule() == RuleId.OVER_CURRENT) {
        book.clear(watch, micros);
      }
    }
    lastOn = null;
  }

  void tripped(Trip trip) {
    if (trip.number() == lastNumber) {
      return;
    }
    lastNumber = trip.number();
    if (trip.cause() == TripCause.OVER_VOLTAGE) {
      overVoltage(trip);
    } else if (trip.cause().overCurrent()) {
      // A short is no motor: which of them it was is known once the current's record is in.
      motorWaits = motorMayHaveStarted(trip);
      if (!motorWaits) {
        overCurrent(trip, false);
      }
      pending = trip;
      capture = null;
    }
  }

  private void overCurrent(Trip trip, boolean motor) {
    AlarmCondition watch = watches.of(RuleId.OVER_CURRENT, 0);
    if (watch == null) {
      return;
    }
    CurrentTrip seen = CurrentTrip.of(trip, run);
    Object limit = AlarmTexts.limit(seen.stated(), seen.acting(), seen.unit());
    book.raise(
        watch,
        trip.openedMicros(),
        trip.crossedMicros(),
        seen.value(),
        false,
        heldBelow(trip, seen) ? null : (Double) seen.stated(),
        seen.unit(),
        motor
            ? texts.text(
                seen.key() + "-motor", true, Quantity.amps(seen.value()), limit, when(trip))
            : sentence(trip, seen, limit));
  }

  /** What the limiter holds falls with the volts across it: then no level says what it was. */
  private static boolean heldBelow(Trip trip, CurrentTrip seen) {
    return trip.cause() == TripCause.HARD_SHORT && seen.value() < seen.stated();
  }

  private Wording sentence(Trip trip, CurrentTrip seen, Object limit) {
    Object value = inUnit(seen.value(), seen.unit());
    if (trip.cause() != TripCause.HARD_SHORT || trip.limitedMs() == null) {
      return texts.text(seen.key(), true, value, limit);
    }
    Object held = trip.value() >= HIGHEST_COUNTS ? new Phrase("at.least", value) : value;
    return texts.text(seen.key(), true, held, trip.limitedMs());
  }

  private double counts(double ampere) {
    double none = run.scaling().value(Channel.I, 0);
    return (ampere - none) / (run.scaling().value(Channel.I, 1) - none);
  }

  private boolean motorMayHaveStarted(Trip trip) {
    return trip.cause() == TripCause.RUNNING
        && Boolean.TRUE.equals(run.sheet().set().motor())
        && load.roseMicros() != RunState.NEVER
        && load.roseMicros() <= trip.crossedMicros()
        && trip.crossedMicros() - load.roseMicros() <= MOTOR_START_MICROS;
  }

  /** A rise with the closing itself is the closing. */
  private Phrase when(Trip trip) {
    long closed = run.closedMicros();
    boolean atClosing = load.roseMicros() - closed < CLOSING_MICROS;
    long from = atClosing ? closed : load.roseMicros();
    return new Phrase(
        atClosing ? "after.closing" : "after.load", (trip.crossedMicros() - from) / 1000.0);
  }

  /** A current with its unit; the rest gets its unit from the sentence. */
  private static Object inUnit(double value, String unit) {
    return unit.equals("A") ? Quantity.amps(value) : (Object) value;
  }

  private static double or(Double said, double used) {
    return said == null ? used : said;
  }

  private void overVoltage(Trip trip) {
    int rail = trip.channelNumber() - Channel.R1.ordinal() + 1;
    boolean ofRail = rail >= 1 && rail <= 3;
    AlarmCondition watch = watches.of(RuleId.OVER_VOLTAGE, ofRail ? rail : 0);
    if (watch == null) {
      return;
    }
    if (watch.stands()) {
      return;
    }
    Scaling scaling = run.scaling();
    Channel channel = ofRail ? Channel.ofRail(rail) : Channel.V;
    double value = scaling.value(channel, trip.value());
    JobSheet.Rail said = ofRail ? run.sheet().rail(rail) : null;
    Double limit = ofRail ? said == null ? null : said.overV() : run.sheet().supply().maxV();
    double acting = Math.abs(scaling.value(channel, trip.limit()));
    double used = or(limit, acting);
    Object shown = AlarmTexts.limit(used, acting, "V");
    boolean end = trip.value() >= HIGHEST_COUNTS;
    String key = !ofRail ? "over-voltage-supply" : end ? "over-voltage-clip" : "over-voltage";
    book.raise(
        watch,
        trip.openedMicros(),
        trip.crossedMicros(),
        value,
        false,
        Math.copySign(used, value),
        "V",
        ofRail
            ? texts.text(key, true, watch.name(), value, shown)
            : texts.text(key, true, value, shown));
  }

  /** Now it can be told whether it was a short; what waited for that is raised before it. */
  private void judgeShort() {
    Trip trip = pending;
    Resistance found = resistance(trip, capture);
    boolean waited = motorWaits;
    pending = null;
    capture = null;
    motorWaits = false;
    AlarmCondition watch = watches.of(RuleId.SHORT, 0);
    boolean judged = watch != null && !watch.stands() && found != null;
    double below = judged ? watch.number("belowOhm") : 0;
    boolean shorted = judged && (trip.cause() == TripCause.HARD_SHORT || found.ohm() < below);
    if (waited) {
      overCurrent(trip, !shorted);
    }
    if (shorted) {
      book.raise(
          watch,
          trip.openedMicros(),
          trip.crossedMicros(),
          found.ohm(),
          found.atMost(),
          below,
          "ohm",
          texts.text(
              found.atMost() ? "short-trip-at-most" : "short-trip", true, found.ohm(), below));
    }
  }

  /** Ohms of the set at the trip, or what they are at most. */
  private record Resistance(double ohm, boolean atMost) {}

  /** Volts over amps at the trip; null where one of them is not known. */
  private Resistance resistance(Trip trip, Capture taken) {
    boolean hard = trip.cause() == TripCause.HARD_SHORT;
    int place = trace.lastWithin(trip.crossedMicros(), trip.openedMicros());
    boolean paired = place >= 0;
    if (!paired) {
      place = trace.lastWithin(run.closedMicros(), trip.openedMicros());
    }
    Double volts = null;
    if (place >= 0) {
      volts = run.scaling().value(Channel.V, trace.counts(place));
    } else if (lastOn != null) {
      volts = run.scaling().supplyV(lastOn);
    }
    int counts =
        paired ? currentCounts(trip, taken, trace.micros(place)) : highestCounts(trip, taken);
    boolean clipped = counts >= HIGHEST_COUNTS;
    double ampere = run.scaling().value(Channel.I, counts);
    if (hard && (!paired || ampere <= 0)) {
      return new Resistance(run.supplyVolts() / run.setup().hardShortA(), true);
    }
    return volts == null || ampere <= 0
        ? null
        : new Resistance(Math.max(0, volts) / ampere, !paired || clipped);
  }

  /**
   * The highest I between crossing and decision. Volts only fall while the limit is crossed, so the
   * last volts before it over any current within it are an upper bound of the ohms; over the
   * highest they are the closest one.
   */
  private int highestCounts(Trip trip, Capture taken) {
    if (taken == null) {
      return currentCounts(trip, null, trip.decidedMicros());
    }
    int highest = 0;
    for (int at = place(taken, trip.crossedMicros()); at <= Capture.DECIDING; at++) {
      highest = Math.max(highest, taken.counts(at));
    }
    return highest;
  }

  private static int place(Capture taken, long micros) {
    long steps = Math.floorDiv(micros - taken.decidedMicros(), I_INTERVAL_MICROS);
    return (int) Math.max(taken.missing(), Math.min(255, Capture.DECIDING + steps));
  }

  /** I at a time: from the capture, else from the trip's own record. */
  private int currentCounts(Trip trip, Capture taken, long micros) {
    if (taken != null) {
      return taken.counts(place(taken, micros));
    }
    if (trip.channelNumber() == Channel.I.ordinal() && trip.cause() != TripCause.MEAN) {
      return trip.value();
    }
    return lastOn == null ? 0 : lastOn.highest(Channel.I);
  }
}
