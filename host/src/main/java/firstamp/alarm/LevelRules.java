package firstamp.alarm;

import firstamp.model.ClipMove;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.LevelClips;
import firstamp.model.RuleId;
import firstamp.model.samples.LevelWindow;
import firstamp.model.samples.SamplePlan;
import firstamp.model.text.Wording;

/** Head against meter, and hum at the head. */
final class LevelRules {
  private static final double USUAL_SIGNAL_DBV = -30;
  private static final double USUAL_MARGIN_DB = 6;

  /** Share of the meter's power that makes a window a tone. */
  private static final double TONE_SHARE = 0.5;

  /** Head current under which nothing is being recorded; common practice, no source. */
  private static final double SILENT_HEAD_A = 5e-6;

  /** Within 3 dB of the converter's own noise there is no level. */
  private static final double NOISE_FACTOR = 1.41;

  private final RunState run;
  private final AlarmBook book;
  private final AlarmTexts texts;
  private final JobSheet.Levels levels;
  private final AlarmCondition head;
  private final AlarmCondition hum;
  private final double signalDbv;
  private final long fromMicros;
  private Happening.RecordState recording = Happening.RecordState.UNKNOWN;
  private LevelClips clips = LevelClips.JOINED;
  private boolean clipRoved;
  private boolean windows;
  private boolean signalSeen;

  LevelRules(RunState run, AlarmConditions watches, AlarmBook book, AlarmTexts texts) {
    this.run = run;
    this.book = book;
    this.texts = texts;
    this.levels = run.sheet().levels();
    boolean said = levels != null;
    this.head = said ? watches.of(RuleId.HEAD_BELOW_METER, 0) : null;
    AlarmCondition humWatch =
        said && !run.setup().reducedStream() ? watches.of(RuleId.HUM, 0) : null;
    this.hum = humWatch != null && humWatch.has("aboveDbv") ? humWatch : null;
    this.signalDbv =
        said && levels.meterSignalDbv() != null ? levels.meterSignalDbv() : USUAL_SIGNAL_DBV;
    this.fromMicros = RuleId.HEAD_BELOW_METER.restMicros(run.sheet(), 0);
  }

  /** Whether a window came at all. */
  boolean windows() {
    return windows;
  }

  /** Whether the meter ever showed signal. */
  boolean signalSeen() {
    return signalSeen;
  }

  /** Whether the head is watched and never was judged. */
  boolean headWaits() {
    return head != null && !head.judged();
  }

  /** Whether the person has to confirm first that the set records. */
  boolean headWantsRecord() {
    return headWaits() && levels.expectedDb() == null;
  }

  boolean humJudged() {
    return hum == null || hum.judged();
  }

  /** Whether a clip was on its way along the path. */
  boolean clipRoved() {
    return clipRoved;
  }

  /** Whether the latest entry says that the set does not record. */
  boolean recordOff() {
    return recording == Happening.RecordState.OFF;
  }

  /** Record on or off, a clip on its way, clips that the probe has read back. */
  void happened(Happening what) {
    if (what instanceof Happening.Recording told) {
      recording = told.state();
    } else if (what instanceof ClipMove move) {
      clipRoved |= Boolean.TRUE.equals(move.roves());
    } else if (what instanceof Happening.ClipsRead read && !run.everClosed()) {
      // What is read after the end says nothing of what was before.
      clips = read.clips();
    }
  }

  /** Which clips were joined when the switch closed. */
  LevelClips clips() {
    return clips;
  }

  void judge(LevelWindow window) {
    if (!clips.head() || !clips.meter()) {
      return;
    }
    long from = SamplePlan.microsOf(window.firstIndex());
    long to = SamplePlan.microsOf(window.endIndex());
    if (!run.whileOn(from, to) || from - run.closedMicros() < fromMicros) {
      return;
    }
    windows = true;
    boolean tone =
        window.toneShare() >= TONE_SHARE
            && window.meterToneV() != null
            && window.headToneV() != null;
    double meterV = tone ? window.meterToneV() : window.meterRmsV();
    boolean audio =
        dbv(meterV) >= signalDbv && window.meterRmsV() > NOISE_FACTOR * window.meterNoiseFloorV();
    boolean needle = needle(window);
    signalSeen |= audio || needle;
    if (head != null) {
      if (levels.expectedDb() != null) {
        judgeExpected(window, from, to, tone, audio);
      } else {
        judgeSilent(window, from, to, audio || needle);
      }
    }
    if (hum != null) {
      judgeHum(window, from, to, audio && !tone);
    }
  }

  private boolean needle(LevelWindow window) {
    return levels != null
        && levels.meterFullV() != null
        && Math.abs(window.meterDcV()) > Math.abs(levels.meterFullV()) / 2;
  }

  private void judgeExpected(LevelWindow window, long from, long to, boolean tone, boolean audio) {
    if (!audio || recordOff()) {
      head.unknown();
      return;
    }
    double meterV = tone ? window.meterToneV() : window.meterRmsV();
    double headV = tone ? window.headToneV() : window.headRmsV();
    boolean lost = headV <= window.headNoiseFloorV();
    double below = dbv(meterV) - dbv(Math.max(headV, window.headNoiseFloorV()));
    double margin = levels.marginDb() == null ? USUAL_MARGIN_DB : levels.marginDb();
    double limit = levels.expectedDb() + margin;
    double back = head.deadband() * Math.abs(levels.expectedDb());
    switch (head.step(from, to, below > limit, below < limit - back)) {
      case RAISE ->
          book.raise(
              head,
              to,
              head.badSince(),
              below,
              false,
              limit,
              "dB",
              orPlaying(
                  texts.text(
                      lost ? "head-silent-tone" : "head-below-meter",
                      false,
                      below,
                      limit,
                      levels.expectedDb())));
      case CLEAR -> book.clear(head, to);
      case NOTHING -> {
        if (!lost) {
          book.follow(head, below);
        }
      }
    }
  }

  private void judgeSilent(LevelWindow window, long from, long to, boolean signal) {
    if (recording != Happening.RecordState.ON || !signal) {
      head.unknown();
      return;
    }
    Double ohm = levels.headOhm();
    boolean floor = window.headRmsV() <= NOISE_FACTOR * window.headNoiseFloorV();
    boolean faint = ohm != null && window.headRmsV() / ohm < SILENT_HEAD_A;
    Double microampere = ohm == null ? null : (Double) (window.headRmsV() / ohm * 1e6);
    switch (head.step(from, to, floor || faint, !floor && !faint)) {
      case RAISE ->
          book.raise(
              head,
              to,
              head.badSince(),
              microampere,
              floor,
              ohm == null ? null : (Double) (SILENT_HEAD_A * 1e6),
              ohm == null ? null : "uA",
              texts.text("head-silent", false));
      case CLEAR -> book.clear(head, to);
      case NOTHING -> {}
    }
  }

  private void judgeHum(LevelWindow window, long from, long to, boolean speech) {
    if (speech || recordOff()) {
      hum.unknown();
      return;
    }
    double limit = hum.number("aboveDbv");
    double level = dbv(window.headHumV());
    double back = hum.deadband() * Math.abs(limit);
    switch (hum.step(from, to, level > limit, level < limit - back)) {
      case RAISE ->
          book.raise(
              hum,
              to,
              hum.badSince(),
              level,
              false,
              limit,
              "dBV",
              texts.text("hum", false, level, limit, (double) window.humHz()));
      case CLEAR -> book.clear(hum, to);
      case NOTHING -> book.follow(hum, level);
    }
  }

  /** Nobody has said that the set records: then it may be that it plays. */
  private Wording orPlaying(Wording text) {
    return recording == Happening.RecordState.UNKNOWN ? text.and("or-playing") : text;
  }

  private static double dbv(double volts) {
    return 20 * Math.log10(Math.max(volts, 1e-9));
  }
}
