package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.Look;
import firstamp.model.LookOhm;
import firstamp.model.RuleId;
import firstamp.model.limits.Through;

/** What the look found that keeps the switch open: alarms raised at the look's own times. */
final class LookJudge {
  private final RunState run;
  private final AlarmConditions watches;
  private final AlarmBook book;
  private final AlarmTexts texts;

  LookJudge(RunState run, AlarmConditions watches, AlarmBook book, AlarmTexts texts) {
    this.run = run;
    this.watches = watches;
    this.book = book;
    this.texts = texts;
  }

  /** Raises what there is to say. */
  void looked(Look look) {
    long at = look.endMicros();
    long since = look.startMicros();
    JobSheet.Supply supply = run.sheet().supply();
    switch (look.result()) {
      case SHORT -> {
        AlarmCondition watch = watches.of(RuleId.SHORT, 0);
        if (watch != null) {
          LookOhm found = LookOhm.of(run.lookVolts(), run.lookAmpere(), run.voltsStep());
          boolean atMost = found != null && found.atMost();
          double told = found == null ? 0 : found.ohm();
          double below = Math.max(3, watch.number("belowOhm"));
          book.raise(
              watch,
              at,
              since,
              told,
              atMost,
              below,
              "ohm",
              texts.text(atMost ? "look-short-at-most" : "look-short", true, told, below));
        }
      }
      case REVERSED -> {
        AlarmCondition watch = watches.of(RuleId.WRONG_POLARITY, 0);
        if (watch != null) {
          book.raise(watch, at, since, null, false, null, null, texts.text("look-reversed", true));
        }
      }
      case TOO_MUCH_CHARGE -> {
        AlarmCondition watch = watches.of(RuleId.OVER_CURRENT, 0);
        if (watch != null) {
          book.raise(watch, at, since, null, false, null, null, texts.text("look-charge", true));
        }
      }
      case TOO_HIGH -> {
        AlarmCondition watch = watches.of(RuleId.OVER_VOLTAGE, 0);
        if (watch != null) {
          double limit = 1.15 * supply.nominalV();
          book.raise(
              watch,
              at,
              since,
              run.supplyVolts(),
              false,
              limit,
              "V",
              texts.text("look-too-high", true, run.supplyVolts(), limit));
        }
      }
      case NO_SUPPLY -> {
        AlarmCondition watch = watches.of(RuleId.NO_DRAW, 0);
        if (watch != null) {
          Through through = Through.of(run.sheet());
          double limit = through.lookFromV(supply.nominalV());
          book.raise(
              watch,
              at,
              since,
              run.supplyVolts(),
              false,
              limit,
              "V",
              texts.text(
                  through == Through.HAND_TURNED ? "look-not-yet" : "look-no-supply",
                  false,
                  run.supplyVolts(),
                  limit));
        }
      }
      default -> {}
    }
  }
}
