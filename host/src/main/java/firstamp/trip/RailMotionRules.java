package firstamp.trip;

import firstamp.model.Channel;
import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.SamplePlan;

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
  private final Watch unsteady;
  private final Watch notFollowing;
  private final Watch clipOff;
  private final Watch clipped;
  private boolean clipGone;

  RailMotionRules(
      JobSheet.Rail rail,
      String name,
      long settleMicros,
      RunState run,
      Watches watches,
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
    this.notFollowing = known ? watches.of(RuleId.RAIL_NOT_FOLLOWING, input) : null;
    this.clipOff = known ? watches.of(RuleId.CLIP_OFF, input) : null;
    this.clipped = watches.of(RuleId.INPUT_CLIPPED, input);
  }

  void closed() {
    clipGone = false;
  }

  void rest() {
    for (Watch watch : new Watch[] {unsteady, notFollowing, clipped}) {
      if (watch != null) {
        watch.unknown();
      }
    }
  }

  /** Gone from one reading to the next (one reading may straddle it) while the current stays. */
  void judgeClip(Moment now, boolean open) {
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

  void judgeMotion(Moment now) {
    long settled = (now.toMicros() - run.closedMicros() - settleMicros) / 10_000;
    int held = (int) Math.min(now.held(), settled);
    if (held < 1) {
      rest();
      return;
    }
    double lowest = now.railV(input);
    double highest = lowest;
    double fall = 0;
    double rise = 0;
    double furthest = 0;
    double lowestV = now.supplyV();
    double highestV = lowestV;
    for (int k = 0; k < held; k++) {
      double volts = now.railVAgo(input, k);
      // Backwards in time: what was higher before is a fall since then.
      lowest = Math.min(lowest, volts);
      highest = Math.max(highest, volts);
      fall = Math.max(fall, volts - lowest);
      rise = Math.max(rise, highest - volts);
      furthest = Math.max(furthest, volts * Math.signum(nominal));
      lowestV = Math.min(lowestV, now.supplyVAgo(k));
      highestV = Math.max(highestV, now.supplyVAgo(k));
    }
    judgeUnsteady(now, Math.min(fall, rise));
    if (clipGone) {
      // A clip that hangs on the chassis reads nothing: the rail need not have moved.
      if (notFollowing != null) {
        notFollowing.unknown();
      }
      return;
    }
    double fell = furthest - now.railV(input) * Math.signum(nominal);
    judgeNotFollowing(now, fell, fallBegan(now, furthest), (highestV - lowestV) < 0.03 * highestV);
  }

  /** Up and down again: one step in one direction is for the other rules. */
  private void judgeUnsteady(Moment now, double swing) {
    if (unsteady == null) {
      return;
    }
    double limit = unsteady.number("percent") / 100 * Math.abs(nominal);
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
      case NOTHING -> {}
    }
  }

  /** End of the last reading that was as far from the chassis as any, but for a little noise. */
  private long fallBegan(Moment now, double furthest) {
    if (notFollowing == null) {
      return now.fromMicros();
    }
    double nearly = furthest - 0.1 * notFollowing.number("percent") / 100 * Math.abs(nominal);
    int ago = 0;
    while (ago < now.held() - 1 && now.railVAgo(input, ago) * Math.signum(nominal) < nearly) {
      ago++;
    }
    return now.toMicros() - ago * SamplePlan.READING_MICROS;
  }

  private void judgeNotFollowing(Moment now, double fell, long began, boolean supplyStill) {
    if (notFollowing == null) {
      return;
    }
    double limit = notFollowing.number("percent") / 100 * Math.abs(nominal);
    switch (notFollowing.step(
        now.fromMicros(),
        now.toMicros(),
        fell >= limit && supplyStill,
        fell < limit * (1 - notFollowing.deadband()))) {
      case RAISE ->
          book.raise(
              notFollowing,
              now.toMicros(),
              began,
              fell,
              false,
              limit,
              "V",
              texts.text("rail-not-following", false, name, fell, limit));
      case CLEAR -> book.clear(notFollowing, now.toMicros());
      case NOTHING -> {}
    }
  }

  void judgeClipped(Moment now) {
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
