package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.samples.Channel;
import firstamp.model.text.Wording;

/** Inputs off scale, and the watch on a loudspeaker output. */
final class InputRules {
  private static final int HIGHEST_COUNTS = 1023;

  private final RunState run;
  private final AlarmBook book;
  private final AlarmTexts texts;
  private final AlarmCondition clipped;
  private final AlarmCondition offset;
  private final int offsetInput;
  private final long audioFromMicros;
  private String which = "";
  private boolean offsetSeen;

  InputRules(RunState run, AlarmConditions watches, AlarmBook book, AlarmTexts texts) {
    this.run = run;
    this.book = book;
    this.texts = texts;
    this.clipped = watches.of(RuleId.INPUT_CLIPPED, 0);
    JobSheet.RuleSettings said = RuleId.OUTPUT_OFFSET.settings(run.sheet());
    Double input = said.numbers().get("input");
    this.offsetInput = input == null ? 0 : (int) Math.round(input);
    this.offset = offsetInput == 0 ? null : watches.of(RuleId.OUTPUT_OFFSET, offsetInput);
    this.audioFromMicros = RuleId.OUTPUT_OFFSET.restMicros(run.sheet(), 0);
  }

  /** Input of the output that is watched, 0 = none. */
  int offsetInput() {
    return offset == null ? 0 : offsetInput;
  }

  /** Whether an output should be watched and nothing was ever clipped to it. */
  boolean offsetClipMissing() {
    return offset != null && !offsetSeen;
  }

  void judge(ReadingWindow now) {
    if (clipped != null) {
      judgeClipped(now);
    }
    if (offset != null) {
      judgeOffset(now);
    }
  }

  private void judgeClipped(ReadingWindow now) {
    String found = null;
    if (now.reading().highest(Channel.I) >= HIGHEST_COUNTS) {
      found = "clipped.current";
    } else if (now.reading().highest(Channel.V) >= HIGHEST_COUNTS) {
      found = "clipped.volts";
    } else if (now.fromMicros() - run.closedMicros() >= audioFromMicros
        && run.sheet().levels() != null) {
      found =
          now.reading().clipped(Channel.H)
              ? "clipped.head"
              : now.reading().clipped(Channel.M) ? "clipped.meter" : null;
    }
    which = found == null ? which : found;
    switch (clipped.step(now.fromMicros(), now.toMicros(), found != null, found == null)) {
      case RAISE ->
          book.raise(
              clipped,
              now.toMicros(),
              clipped.badSince(),
              null,
              false,
              null,
              null,
              texts.text("input-clipped", false, new Wording.Phrase(which)));
      case CLEAR -> book.clear(clipped, now.toMicros());
      case NOTHING -> {}
    }
  }

  private void judgeOffset(ReadingWindow now) {
    offsetSeen |= !now.railOpen(offsetInput);
    // A charging coupling capacitor puts dc there at every start.
    if (now.railOpen(offsetInput) || now.fromMicros() - run.closedMicros() < audioFromMicros) {
      offset.unknown();
      return;
    }
    double volts = now.railV(offsetInput);
    double limit = offset.number("overV");
    switch (offset.step(
        now.fromMicros(),
        now.toMicros(),
        Math.abs(volts) > limit,
        Math.abs(volts) < limit * (1 - offset.deadband()))) {
      case RAISE ->
          book.raise(
              offset,
              now.toMicros(),
              offset.badSince(),
              volts,
              false,
              Math.copySign(limit, volts),
              "V",
              texts.text("output-offset", offset.settings().action().equals("off"), volts, limit));
      case CLEAR -> book.clear(offset, now.toMicros());
      case NOTHING -> {}
    }
  }
}
