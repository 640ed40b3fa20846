package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.Rest;
import firstamp.model.RuleId;
import firstamp.model.limits.Through;
import firstamp.model.samples.SamplePlan;
import firstamp.model.text.Wording;
import firstamp.model.text.Wording.Quantity;

/** Rules about supply current and supply volts while the switch is closed. */
final class SupplyRules {
  /** Volts over less than this current say nothing about a resistance. */
  private static final double LEAST_A = 0.005;

  private static final int PLATEAU_READINGS = 10;

  private final RunState run;
  private final AlarmBook book;
  private final AlarmTexts texts;
  private final JobSheet.Supply supply;
  private final Through through;
  private final AlarmCondition shorted;
  private final AlarmCondition noDraw;
  private final AlarmCondition window;
  private final AlarmCondition overVoltage;
  private final CreepRule creep;
  private final long noDrawFromMicros;
  private final long windowFromMicros;
  private long restMicros;
  private long nothingSince = RunState.NEVER;
  private double reachedV;

  SupplyRules(RunState run, AlarmConditions watches, AlarmBook book, AlarmTexts texts) {
    this.run = run;
    this.book = book;
    this.texts = texts;
    this.supply = run.sheet().supply();
    this.through = Through.of(run.sheet());
    this.shorted = watches.of(RuleId.SHORT, 0);
    this.noDraw = watches.of(RuleId.NO_DRAW, 0);
    this.window = watches.of(RuleId.RAIL_WINDOW, 0);
    this.overVoltage = watches.of(RuleId.OVER_VOLTAGE, 0);
    this.noDrawFromMicros = noDraw == null ? 0 : RuleId.NO_DRAW.restMicros(run.sheet(), 0);
    this.windowFromMicros = RuleId.RAIL_WINDOW.restMicros(run.sheet(), 0);
    this.creep = new CreepRule(run, watches.of(RuleId.CURRENT_CREEP, 0), book, texts);
  }

  /** The switch closed: works out how long charging may look like a short. */
  void closed() {
    restMicros = Math.round(Rest.chargedMs(run.sheet(), run.lookFarad()) * 1000);
    nothingSince = RunState.NEVER;
    reachedV = 0;
    creep.closed();
  }

  /** Something was done to the set. */
  void happened(ProbeEvent.Happened event) {
    if (!event.what().parts()) {
      return;
    }
    long micros = event.micros();
    if (run.on()) {
      creep.changed(micros);
    }
  }

  void judge(ReadingWindow now) {
    long since = now.fromMicros() - run.closedMicros();
    if (now.currentKnown()) {
      if (shorted != null && since >= restMicros) {
        judgeShort(now);
      }
      judgeNoDraw(now, since);
      creep.judge(now);
    }
    if (window != null && since >= windowFromMicros) {
      judgeWindow(now);
    }
    judgeOverVoltage(now);
  }

  private void judgeShort(ReadingWindow now) {
    double ampere = now.supplyA();
    double volts = now.supplyV();
    double below = shorted.number("belowOhm");
    boolean flows = ampere >= LEAST_A;
    boolean low = flows && volts < below * ampere;
    boolean limiting = flows && limiting(now, ampere, volts);
    boolean good = !limiting && (!flows || volts > below * (1 + shorted.deadband()) * ampere);
    // A plateau is seen at its end: it began a tenth of a second ago, and so did the condition.
    long from =
        limiting && !low
            ? Math.max(
                run.closedMicros() + restMicros,
                now.toMicros() - PLATEAU_READINGS * SamplePlan.READING_MICROS)
            : now.fromMicros();
    switch (shorted.step(from, now.toMicros(), low || limiting, good)) {
      case RAISE -> {
        double ohm = Math.max(0, volts) / ampere;
        Wording text =
            low
                ? texts.text("short", shorted.settings().action().equals("off"), ohm, below)
                : texts.text(
                    motor() ? "limiting-motor" : "limiting",
                    shorted.settings().action().equals("off"),
                    volts,
                    supply.nominalV(),
                    Quantity.amps(ampere));
        book.raise(
            shorted,
            now.toMicros(),
            shorted.badSince(),
            ohm,
            false,
            low ? below : null,
            "ohm",
            text);
      }
      case CLEAR -> book.clear(shorted, now.toMicros());
      case NOTHING -> {
        if (flows) {
          book.follow(shorted, Math.max(0, volts) / ampere);
        }
      }
    }
  }

  private boolean motor() {
    return Boolean.TRUE.equals(run.sheet().set().motor());
  }

  /**
   * Volts collapse while the current sits on a plateau. A lamp in line does that when all is well;
   * where a hand turns the volts they collapse from where it had turned them, and only at the
   * supply's own limit: turned down they fall too.
   */
  private boolean limiting(ReadingWindow now, double ampere, double volts) {
    Double limit = supply.limitA();
    boolean turned = through == Through.HAND_TURNED;
    reachedV = Math.max(reachedV, volts);
    if (through == Through.LAMP || now.held() < PLATEAU_READINGS || turned && limit == null) {
      return false;
    }
    double expectedV = turned ? reachedV : supply.nominalV();
    double collapse = limit == null ? 0.5 : 0.7;
    if (volts >= collapse * expectedV || limit != null && ampere < 0.8 * limit) {
      return false;
    }
    double lowest = ampere;
    double highest = ampere;
    for (int k = 0; k < PLATEAU_READINGS; k++) {
      lowest = Math.min(lowest, now.supplyAAgo(k));
      highest = Math.max(highest, now.supplyAAgo(k));
    }
    return highest - lowest <= 0.05 * highest + 0.002;
  }

  /** Whether nothing flows and the rule about that still waits: nothing else can be expected. */
  boolean awaitsDraw() {
    return noDraw != null && nothingSince != RunState.NEVER && !noDraw.stands();
  }

  private void judgeNoDraw(ReadingWindow now, long since) {
    if (noDraw == null) {
      return;
    }
    double below = noDraw.number("belowA");
    double ampere = now.supplyA();
    if (ampere >= below) {
      nothingSince = RunState.NEVER;
    } else if (nothingSince == RunState.NEVER) {
      nothingSince = now.fromMicros();
    }
    if (since < noDrawFromMicros) {
      return;
    }
    if (through == Through.HAND_TURNED && now.supplyV() < through.lookFromV(supply.nominalV())) {
      noDraw.unknown();
      return;
    }
    switch (noDraw.step(
        now.fromMicros(),
        now.toMicros(),
        ampere < below,
        ampere > below * (1 + noDraw.deadband()))) {
      case RAISE ->
          book.raise(
              noDraw,
              now.toMicros(),
              nothingSince,
              ampere,
              false,
              below,
              "A",
              texts.text(
                  "no-draw", false, Quantity.amps(Math.max(0, ampere)), Quantity.amps(below)));
      case CLEAR -> book.clear(noDraw, now.toMicros());
      case NOTHING -> {}
    }
  }

  private void judgeWindow(ReadingWindow now) {
    double volts = now.supplyV();
    double low = supply.minV();
    double high = run.sheet().supply().maxV();
    double back = Math.min(window.deadband() * supply.nominalV(), (high - low) / 4);
    boolean below = volts < low && !through.belowNominal();
    switch (window.step(
        now.fromMicros(),
        now.toMicros(),
        below || volts > high,
        (through.belowNominal() || volts > low + back) && volts < high - back)) {
      case RAISE ->
          book.raise(
              window,
              now.toMicros(),
              window.badSince(),
              volts,
              false,
              below ? low : high,
              "V",
              texts.text(below ? "supply-low" : "supply-high", false, volts, below ? low : high));
      case CLEAR -> book.clear(window, now.toMicros());
      case NOTHING -> book.follow(window, volts);
    }
  }

  private void judgeOverVoltage(ReadingWindow now) {
    if (overVoltage == null || supply.maxV() == null) {
      return;
    }
    // From the current sheet: the person may have moved the limit.
    double limit = run.sheet().supply().maxV();
    double volts = now.supplyV();
    switch (overVoltage.step(
        now.fromMicros(),
        now.toMicros(),
        volts > limit,
        volts < limit * (1 - overVoltage.deadband()))) {
      case RAISE ->
          book.raise(
              overVoltage,
              now.toMicros(),
              overVoltage.badSince(),
              volts,
              false,
              limit,
              "V",
              texts.text(
                  "over-voltage-supply",
                  overVoltage.settings().action().equals("off"),
                  volts,
                  limit));
      case CLEAR -> book.clear(overVoltage, now.toMicros());
      case NOTHING -> book.follow(overVoltage, volts);
    }
  }
}
