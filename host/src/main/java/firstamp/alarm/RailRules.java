package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.limits.Through;
import firstamp.model.samples.Channel;
import firstamp.model.samples.RippleWindow;
import firstamp.model.samples.SamplePlan;

/** Rules about one rail while the switch is closed. */
final class RailRules {
  private static final double WRONG_SIDE_V = 0.5;

  private final RunState run;
  private final AlarmBook book;
  private final AlarmTexts texts;
  private final int input;
  private final String name;
  private final double nominal;
  private final double low;
  private final double high;
  private final long settleMicros;
  private final AlarmCondition window;
  private final AlarmCondition late;
  private final AlarmCondition overVoltage;
  private final AlarmCondition polarity;
  private final RailMotionRules motion;
  private final RailRippleRules ripple;
  private final boolean handTurned;
  private long fed = RunState.NEVER;
  private boolean seen;
  private boolean everInWindow;
  private boolean isLate;
  private long highSince = RunState.NEVER;

  RailRules(
      JobSheet.Rail rail, RunState run, AlarmConditions watches, AlarmBook book, AlarmTexts texts) {
    this.run = run;
    this.book = book;
    this.texts = texts;
    this.input = rail.input();
    this.name = rail.name() == null ? "rail " + input : rail.name();
    boolean known = rail.nominalV() != null;
    this.nominal = known ? rail.nominalV() : 0;
    double tolerance =
        Math.abs(nominal) * (rail.tolerancePercent() == null ? 10 : rail.tolerancePercent()) / 100;
    this.low = nominal - tolerance;
    this.high = nominal + tolerance;
    this.settleMicros = RuleId.RAIL_LATE.restMicros(run.sheet(), input);
    Through through = Through.of(run.sheet());
    boolean lamp = through == Through.LAMP;
    this.handTurned = through == Through.HAND_TURNED;
    this.window = known && !lamp ? watches.of(RuleId.RAIL_WINDOW, input) : null;
    this.late = known && !lamp ? watches.of(RuleId.RAIL_LATE, input) : null;
    this.overVoltage = rail.overV() != null ? watches.of(RuleId.OVER_VOLTAGE, input) : null;
    this.polarity = known ? watches.of(RuleId.WRONG_POLARITY, input) : null;
    this.motion = new RailMotionRules(rail, name, settleMicros, run, watches, book, texts);
    this.ripple = new RailRippleRules(rail, name, high, run, watches, book, texts);
  }

  int input() {
    return input;
  }

  /** Whether something was clipped to the input at some time. */
  boolean seen() {
    return seen;
  }

  void closed() {
    everInWindow = false;
    isLate = false;
    highSince = RunState.NEVER;
    fed = RunState.NEVER;
    motion.closed();
  }

  /**
   * Judges a reading.
   *
   * @param awaitsDraw whether nothing flows and it is not yet decided that the set draws nothing:
   *     no rail can be expected then
   */
  void judge(ReadingWindow now, boolean awaitsDraw) {
    boolean open = now.railOpen(input);
    seen |= !open;
    motion.judgeClip(now, open);
    if (open) {
      rest();
      return;
    }
    double volts = now.railV(input);
    boolean inside = volts >= low && volts <= high;
    everInWindow |= inside;
    long since = now.fromMicros() - run.closedMicros();
    fed = fedSince(now);
    if (awaitsDraw) {
      restUndrawn();
    } else if (since >= settleMicros) {
      if (fed == RunState.NEVER) {
        restWindow();
      } else if (now.fromMicros() - fed >= settleMicros) {
        judgeLate(now, volts, inside);
        judgeWindow(now, volts);
      }
      motion.judgeMotion(now);
    }
    judgeOverVoltage(now, volts);
    judgePolarity(now, volts);
    motion.judgeClipped(now);
  }

  /** Nothing is clipped to the input: nothing can be said. */
  private void rest() {
    for (AlarmCondition watch : new AlarmCondition[] {overVoltage, polarity}) {
      if (watch != null) {
        watch.unknown();
      }
    }
    restUndrawn();
  }

  /** Since when the supply has stood where the rail can be expected; NEVER = it does not. */
  private long fedSince(ReadingWindow now) {
    if (!handTurned) {
      return run.closedMicros();
    }
    if (now.supplyV() < run.sheet().supply().minV()) {
      return RunState.NEVER;
    }
    return fed == RunState.NEVER ? now.fromMicros() : fed;
  }

  private void restUndrawn() {
    restWindow();
    motion.rest();
  }

  private void restWindow() {
    for (AlarmCondition watch : new AlarmCondition[] {window, late}) {
      if (watch != null) {
        watch.unknown();
      }
    }
  }

  void judgeRipple(RippleWindow found, double supplyA) {
    long from = SamplePlan.microsOf(found.firstIndex());
    if (from - run.closedMicros() >= settleMicros) {
      ripple.judge(found, supplyA);
    }
  }

  private void judgeLate(ReadingWindow now, double volts, boolean inside) {
    if (late == null) {
      return;
    }
    double sign = Math.signum(nominal);
    if (!everInWindow && volts * sign < Math.min(low * sign, high * sign)) {
      isLate = true;
    }
    long from = isLate && !late.stands() ? fed + settleMicros : now.fromMicros();
    switch (late.step(from, now.toMicros(), isLate && !everInWindow, inside)) {
      case RAISE -> {
        double needed = sign > 0 ? low : high;
        book.raise(
            late,
            now.toMicros(),
            late.badSince(),
            volts,
            false,
            needed,
            "V",
            texts.text("rail-late", false, name, written(volts), needed, settleMicros / 1000.0));
      }
      case CLEAR -> book.clear(late, now.toMicros());
      case NOTHING -> {}
    }
  }

  /**
   * Volts as a sentence writes them: a rail's count is 39 mV, a hundredth is all that it carries.
   */
  private static double written(double volts) {
    return Math.rint(volts * 100) / 100;
  }

  /** What never got there is not late but too low. */
  void finish() {
    if (window != null && late != null && !everInWindow) {
      book.lead(window, late);
    }
  }

  private void judgeWindow(ReadingWindow now, double volts) {
    if (window == null) {
      return;
    }
    double back = Math.min(window.deadband() * Math.abs(nominal), (high - low) / 4);
    boolean below = volts < low;
    boolean above = volts > high;
    boolean far = nominal > 0 ? above : below;
    if (far && highSince == RunState.NEVER) {
      highSince = now.fromMicros();
    } else if (!far) {
      highSince = RunState.NEVER;
    }
    boolean alarmOnly = "alarm".equals(window.settings().action());
    if (far && alarmOnly && ripple.mayExplain(highSince, now.toMicros())) {
      window.unknown();
      return;
    }
    switch (window.step(
        now.fromMicros(),
        now.toMicros(),
        below || above,
        volts > low + back && volts < high - back)) {
      case RAISE -> {
        // "Low" is nearer to the chassis, whichever side the rail is on.
        boolean weak = nominal > 0 == below;
        double limit = below ? low : high;
        book.raise(
            window,
            now.toMicros(),
            window.badSince(),
            volts,
            false,
            limit,
            "V",
            texts.text(weak ? "rail-low" : "rail-high", false, name, written(volts), limit));
      }
      case CLEAR -> book.clear(window, now.toMicros());
      case NOTHING -> book.follow(window, volts);
    }
  }

  private void judgeOverVoltage(ReadingWindow now, double volts) {
    if (overVoltage == null) {
      return;
    }
    // From the current sheet: the person may have moved the limit.
    double overV = run.sheet().rail(input).overV();
    double size = Math.abs(volts);
    switch (overVoltage.step(
        now.fromMicros(),
        now.toMicros(),
        size > overV,
        size < overV * (1 - overVoltage.deadband()))) {
      case RAISE ->
          book.raise(
              overVoltage,
              now.toMicros(),
              overVoltage.badSince(),
              volts,
              false,
              Math.copySign(overV, volts),
              "V",
              texts.text(
                  "over-voltage",
                  overVoltage.settings().action().equals("off"),
                  name,
                  volts,
                  overV));
      case CLEAR -> book.clear(overVoltage, now.toMicros());
      case NOTHING -> book.follow(overVoltage, volts);
    }
  }

  private void judgePolarity(ReadingWindow now, double volts) {
    if (polarity == null || now.reading().clipped(Channel.ofRail(input))) {
      return;
    }
    double forward = volts * Math.signum(nominal);
    double back = WRONG_SIDE_V * (1 - polarity.deadband());
    switch (polarity.step(
        now.fromMicros(), now.toMicros(), forward < -WRONG_SIDE_V, forward > -back)) {
      case RAISE ->
          book.raise(
              polarity,
              now.toMicros(),
              polarity.badSince(),
              volts,
              false,
              -WRONG_SIDE_V * Math.signum(nominal),
              "V",
              texts.text(
                  "wrong-polarity",
                  polarity.settings().action().equals("off"),
                  name,
                  volts,
                  nominal));
      case CLEAR -> book.clear(polarity, now.toMicros());
      case NOTHING -> {}
    }
  }
}
