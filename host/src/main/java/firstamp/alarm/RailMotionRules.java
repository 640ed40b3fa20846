package firstamp.alarm;

import firstamp.alarm.trail.Extremes;
import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.samples.Channel;
import firstamp.model.samples.SamplePlan;

/**
 * How one rail moves: unsteady, not following the supply, gone with its clip, at the range's end.
 */
final class RailMotionRules {
  private static final int BEFORE = 2;

  private final int input;
  private final String name;
  private final double nominal;
  private final long settleMicros;
  private final RunState run;
  private final AlarmBook book;
  private final AlarmTexts texts;
  private final AlarmCondition unsteady;
  private final AlarmCondition notFollowing;
  private final AlarmCondition clipOff;
  private final AlarmCondition clipped;
  private final double unsteadyLimit;
  private final double notFollowingLimit;
  private Extremes railVolts;
  private Extremes supplyVolts;
  private boolean clipGone;

  RailMotionRules(
      JobSheet.Rail rail,
      String name,
      long settleMicros,
      RunState run,
      AlarmConditions watches,
      AlarmBook book,
      AlarmTexts texts) {
    this.input = rail.input();
    this.name = name;
    this.nominal = rail.nominalV() == null ? 0 : rail.nominalV();
    this.settleMicros = settleMicros;
    this.run = run;
    this.book = book;
    this.texts = texts;
    boolean known = nominal != 0;
    this.unsteady = known ? watches.of(RuleId.RAIL_UNSTEADY, input) : null;
    this.unsteadyLimit =
        unsteady == null ? 0 : unsteady.number("percent") / 100 * Math.abs(nominal);
    this.notFollowing = known ? watches.of(RuleId.RAIL_NOT_FOLLOWING, input) : null;
    this.notFollowingLimit =
        notFollowing == null ? 0 : notFollowing.number("percent") / 100 * Math.abs(nominal);
    this.clipOff = known ? watches.of(RuleId.CLIP_OFF, input) : null;
    this.clipped = watches.of(RuleId.INPUT_CLIPPED, input);
  }

  void closed() {
    clipGone = false;
  }

  void rest() {
    for (AlarmCondition watch : new AlarmCondition[] {unsteady, notFollowing, clipped}) {
      if (watch != null) {
        watch.unknown();
      }
    }
  }

  /** Gone from one reading to the next (one reading may straddle it) while the current stays. */
  void judgeClip(ReadingWindow now, boolean open) {
    if (clipOff == null || now.held() <= BEFORE) {
      return;
    }
    double size = Math.abs(now.railV(input));
    boolean there = !open && size > 0.5 * Math.abs(nominal);
    boolean was = Math.abs(now.railVAgo(input, BEFORE)) > 0.5 * Math.abs(nominal);
    boolean nothing = open || size < 0.1 * Math.abs(nominal);
    double before = now.supplyAAgo(BEFORE);
    boolean sameCurrent = Math.abs(now.supplyAAgo(0) - before) <= 0.1 * before + 0.002;
    if (there) {
      clipGone = false;
    } else if (nothing && was && sameCurrent) {
      clipGone = true;
    }
    switch (clipOff.step(now.fromMicros(), now.toMicros(), clipGone, there)) {
      case RAISE ->
          book.raise(
              clipOff,
              now.toMicros(),
              clipOff.badSince(),
              null,
              false,
              null,
              null,
              texts.text("clip-off", false, name, input));
      case CLEAR -> book.clear(clipOff, now.toMicros());
      case NOTHING -> {}
    }
  }

  void judgeMotion(ReadingWindow now) {
    long settled = (now.toMicros() - run.closedMicros() - settleMicros) / 10_000;
    int held = (int) Math.min(now.held(), settled);
    if (held < 1) {
      rest();
      return;
    }
    if (unsteady == null && notFollowing == null) {
      return;
    }
    follow(now, held);
    judgeUnsteady(now, swing(now, held));
    if (clipGone) {
      // A clip touching the chassis reads nothing: the rail need not have moved.
      if (notFollowing != null) {
        notFollowing.unknown();
      }
      return;
    }
    double sign = Math.signum(nominal);
    double furthest = Math.max(0, sign > 0 ? railVolts.highest() : -railVolts.lowest());
    double fell = furthest - now.railV(input) * sign;
    double highestV = supplyVolts.highest();
    judgeNotFollowing(now, fell, furthest, highestV - supplyVolts.lowest() < 0.03 * highestV);
  }

  private void follow(ReadingWindow now, int held) {
    if (railVolts == null) {
      railVolts = new Extremes(now.railTrail(input));
      supplyVolts = new Extremes(now.supplyTrail());
    }
    railVolts.over(held);
    supplyVolts.over(held);
  }

  /**
   * The smaller of the largest fall and the largest rise; where no value lies far enough from any
   * other to matter, their distance, which is no less.
   */
  private double swing(ReadingWindow now, int held) {
    double apart = railVolts.highest() - railVolts.lowest();
    if (unsteady == null || apart < unsteadyLimit * (1 - unsteady.deadband())) {
      return apart;
    }
    double lowest = now.railV(input);
    double highest = lowest;
    double fall = 0;
    double rise = 0;
    for (int k = 0; k < held; k++) {
      double volts = now.railVAgo(input, k);
      // Backwards in time: what was higher before is a fall since then.
      lowest = Math.min(lowest, volts);
      highest = Math.max(highest, volts);
      fall = Math.max(fall, volts - lowest);
      rise = Math.max(rise, highest - volts);
    }
    return Math.min(fall, rise);
  }

  /** Up and down again: one step in one direction is for the other rules. */
  private void judgeUnsteady(ReadingWindow now, double swing) {
    if (unsteady == null) {
      return;
    }
    double limit = unsteadyLimit;
    switch (unsteady.step(
        now.fromMicros(),
        now.toMicros(),
        swing > limit,
        swing < limit * (1 - unsteady.deadband()))) {
      case RAISE ->
          book.raise(
              unsteady,
              now.toMicros(),
              unsteady.badSince(),
              swing,
              false,
              limit,
              "V",
              texts.text("rail-unsteady", false, name, swing, limit));
      case CLEAR -> book.clear(unsteady, now.toMicros());
      case NOTHING -> book.follow(unsteady, swing);
    }
  }

  /** End of the last reading that was as far from the chassis as any, but for a little noise. */
  private long fallBegan(ReadingWindow now, double furthest) {
    double nearly = furthest - 0.1 * notFollowing.number("percent") / 100 * Math.abs(nominal);
    int ago = 0;
    while (ago < now.held() - 1 && now.railVAgo(input, ago) * Math.signum(nominal) < nearly) {
      ago++;
    }
    return now.toMicros() - ago * SamplePlan.READING_MICROS;
  }

  private void judgeNotFollowing(
      ReadingWindow now, double fell, double furthest, boolean supplyStill) {
    if (notFollowing == null) {
      return;
    }
    double limit = notFollowingLimit;
    switch (notFollowing.step(
        now.fromMicros(),
        now.toMicros(),
        fell >= limit && supplyStill,
        fell < limit * (1 - notFollowing.deadband()))) {
      case RAISE ->
          book.raise(
              notFollowing,
              now.toMicros(),
              fallBegan(now, furthest),
              fell,
              false,
              limit,
              "V",
              texts.text("rail-not-following", false, name, fell, limit));
      case CLEAR -> book.clear(notFollowing, now.toMicros());
      case NOTHING -> {}
    }
  }

  void judgeClipped(ReadingWindow now) {
    if (clipped == null) {
      return;
    }
    boolean atEnd = now.reading().clipped(Channel.ofRail(input));
    switch (clipped.step(now.fromMicros(), now.toMicros(), atEnd, !atEnd)) {
      case RAISE ->
          book.raise(
              clipped,
              now.toMicros(),
              clipped.badSince(),
              now.railV(input),
              false,
              null,
              "V",
              texts.text("input-clipped", false, name));
      case CLEAR -> book.clear(clipped, now.toMicros());
      case NOTHING -> {}
    }
  }
}
