package firstamp.alarm;

import firstamp.model.Look;
import firstamp.model.RuleId;
import firstamp.model.text.Wording.Quantity;

/** What must not happen once the switch is open: a rail that climbs, current that flows on. */
final class AfterOffRules {
  /** Above the converter's noise and the current of a catch path; common practice. */
  private static final double FLOWS_A = 0.005;

  private final RunState run;
  private final AlarmBook book;
  private final AlarmTexts texts;
  private final AlarmCondition[] climbing = new AlarmCondition[4];
  private final double[] lowest = new double[4];
  private final AlarmCondition switchFailed;
  private final OpeningProof proof;
  private final RuleListener listener;

  AfterOffRules(
      RunState run,
      AlarmConditions watches,
      AlarmBook book,
      AlarmTexts texts,
      RuleListener listener) {
    this.run = run;
    this.proof = new OpeningProof(run);
    this.listener = listener;
    this.book = book;
    this.texts = texts;
    for (int input = 1; input <= 3; input++) {
      if (run.sheet().rail(input) != null) {
        climbing[input] = watches.of(RuleId.RAIL_CLIMBING, input);
      }
    }
    this.switchFailed = watches.of(RuleId.SWITCH_FAILED, 0);
  }

  /** A reading with the switch closed. */
  void on(ReadingWindow now) {
    proof.on(now);
  }

  void opened() {
    proof.opened();
    java.util.Arrays.fill(lowest, Double.POSITIVE_INFINITY);
  }

  void judge(ReadingWindow now) {
    for (int input = 1; input <= 3; input++) {
      if (climbing[input] != null) {
        judgeClimbing(now, input);
      }
    }
    if (!judgeProof(now)) {
      judgeSwitch(now);
    }
  }

  /** Whether the opening should have been seen long ago: then the current alone clears nothing. */
  private boolean judgeProof(ReadingWindow now) {
    OpeningProof.Step step = proof.judge(now);
    if (step == OpeningProof.Step.SEEN) {
      listener.onOpeningSeen(now.toMicros());
    } else if (step == OpeningProof.Step.OVERDUE
        && switchFailed != null
        && !switchFailed.stands()) {
      Quantity volts = Quantity.of(now.supplyV(), "V");
      book.raise(
          switchFailed,
          now.toMicros(),
          run.openedMicros(),
          now.supplyV(),
          false,
          null,
          "V",
          texts.text("off-not-seen", true, volts));
    }
    return proof.overdue();
  }

  private void judgeClimbing(ReadingWindow now, int input) {
    AlarmCondition watch = climbing[input];
    if (now.railOpen(input)) {
      watch.unknown();
      return;
    }
    double size = Math.abs(now.railV(input));
    lowest[input] = Math.min(lowest[input], size);
    double rise = size - lowest[input];
    double limit = watch.number("overV");
    switch (watch.step(
        now.fromMicros(), now.toMicros(), rise > limit, rise < limit * (1 - watch.deadband()))) {
      case RAISE ->
          book.raise(
              watch,
              now.toMicros(),
              watch.badSince(),
              rise,
              false,
              limit,
              "V",
              texts.text("rail-climbing", true, watch.name(), size, lowest[input]));
      case CLEAR -> book.clear(watch, now.toMicros());
      case NOTHING -> {}
    }
  }

  private void judgeSwitch(ReadingWindow now) {
    if (switchFailed == null) {
      return;
    }
    double ampere = now.supplyAAgo(0);
    switch (switchFailed.step(
        now.fromMicros(), now.toMicros(), ampere > FLOWS_A, ampere < 0.8 * FLOWS_A)) {
      case RAISE -> failed(now.toMicros(), switchFailed.badSince(), ampere, "switch-failed");
      case CLEAR -> book.clear(switchFailed, now.toMicros());
      case NOTHING -> {}
    }
  }

  /**
   * A look that found the probe's own switch or inputs in doubt.
   *
   * @return whether it did
   */
  boolean looked(Look look) {
    if (!look.result().doubtsTheProbe()) {
      return false;
    }
    if (switchFailed != null && !switchFailed.stands()) {
      failed(look.endMicros(), look.endMicros(), null, look.result().id());
    }
    return true;
  }

  private void failed(long atMicros, long sinceMicros, Double ampere, String key) {
    book.raise(
        switchFailed,
        atMicros,
        sinceMicros,
        ampere,
        false,
        ampere == null ? null : (Double) FLOWS_A,
        ampere == null ? null : "A",
        texts.text(key, true, ampere == null ? "" : Quantity.amps(ampere)));
  }

  /** Whether the run got as far as an opened switch. */
  boolean reached() {
    return run.everClosed() && !run.on();
  }
}
