package firstamp.account;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.FigureText;
import firstamp.analysis.statistics.Uncertainty;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.text.Wording.Phrase;

/**
 * Sentences about head and meter; hum has its own in {@link HumVerdict}.
 *
 * <p>A margin of 6 dB and 3 % of harmonics (the usual reference of tape levels, from memory) as
 * "look at it": common practice, no source.
 */
final class LevelVerdict {
  /** Before the alarm that such a clip has raised. */
  private static final int CLIP = 0;

  private static final int LEAST_SPEECH_WINDOWS = 5;
  private static final double USUAL_MARGIN_DB = 6;
  private static final double MUCH_DISTORTION_PERCENT = 3;

  private final JobSheet sheet;
  private final Evidence evidence;
  private final VerdictWriter writer;

  LevelVerdict(JobSheet sheet, Evidence evidence, VerdictWriter writer) {
    this.sheet = sheet;
    this.evidence = evidence;
    this.writer = writer;
  }

  void judge() {
    clips(evidence.clips());
    Summary.LevelFigures levels = evidence.levels();
    if (levels == null || !evidence.clips().before().meter()) {
      return;
    }
    Evidence.Heard heard = evidence.heard();
    if (levels.meterDbv() == null && heard.needlePercent() == null) {
      writer.say(5, "meter.silent", 0);
    } else if (levels.meterDbv() != null) {
      head(levels);
      speech(heard);
      distortion(heard);
      calibration();
    }
    new HumVerdict(sheet, evidence, writer).judge(levels);
  }

  /** Our own clips come first: without them nothing is known of the set. */
  private void clips(Evidence.Clips clips) {
    if (sheet.levels() == null || evidence.onMs() == null) {
      return;
    }
    if (!clips.before().head()) {
      writer.say(CLIP, "head.clip-off", 0);
    } else if (!clips.after().head()) {
      writer.say(CLIP, "head.clip-fell-off", 0);
    }
    if (!clips.before().meter()) {
      writer.say(CLIP, "meter.clip-off", 0);
    } else if (!clips.after().meter()) {
      writer.say(CLIP, "meter.clip-fell-off", 0);
    }
  }

  private void head(Summary.LevelFigures levels) {
    if (levels.headBelowMeterDb() == null) {
      return;
    }
    double belowDb = levels.headBelowMeterDb();
    String below = FigureText.decibels(belowDb, "dB");
    boolean tone = levels.toneHz() != null;
    // On speech the curve decides, not one number: see below.
    boolean oneNumber =
        levels.expectedDb() != null && (tone || sheet.levels().expectedCurve().isEmpty());
    if (evidence.heard().headAtFloor()) {
      String most =
          levels.headUa() == null
              ? FigureText.decibels(levels.headDbv(), "dBV")
              : FigureText.of(levels.headUa() * 1e-6, "A");
      writer.say(2, "head.floor", 0, most, FigureText.decibels(levels.meterDbv(), "dBV"));
    } else if (oneNumber && belowDb > levels.expectedDb() + marginDb()) {
      writer.say(2, "head.low", 0, below, FigureText.decibels(levels.expectedDb(), "dB"));
    } else if (levels.expectedDb() == null && sheet.levels().expectedCurve().isEmpty()) {
      writer.say(8, "head.keep", 0, below);
    }
  }

  private void calibration() {
    Calibration calibration = evidence.calibration();
    if (calibration.calibrated(Channel.H) && calibration.calibrated(Channel.M)) {
      return;
    }
    Uncertainty uncertainty = new Uncertainty(calibration);
    double worstDb = Math.max(uncertainty.levelDb(Channel.H), uncertainty.levelDb(Channel.M));
    writer.say(9, "levels.uncalibrated", 0, FigureText.decibels(worstDb, "dB"));
  }

  private double marginDb() {
    return sheet.levels().marginDb() == null ? USUAL_MARGIN_DB : sheet.levels().marginDb();
  }

  private void speech(Evidence.Heard heard) {
    if (heard.speechDbPlusMinus() == null || heard.speechWindows() < LEAST_SPEECH_WINDOWS) {
      return;
    }
    writer.say(
        8,
        "head.speech",
        0,
        FigureText.decibels(heard.speechDb(), "dB"),
        FigureText.decibels(heard.speechDbPlusMinus(), "dB"),
        FigureText.millis(200.0 * heard.speechWindows()));
    Double over = heard.overExpectedDb();
    if (over == null || heard.overExpectedDbPlusMinus() == null || heard.headAtFloor()) {
      return;
    }
    String sure = FigureText.decibels(heard.overExpectedDbPlusMinus(), "dB");
    if (over - heard.overExpectedDbPlusMinus() > marginDb()) {
      writer.say(2, "head.low-on-speech", 0, FigureText.decibels(over, "dB"), sure);
    } else {
      Phrase way = new Phrase(over < 0 ? "way.above" : "way.below");
      writer.say(8, "head.as-expected", 0, FigureText.decibels(Math.abs(over), "dB"), way, sure);
    }
  }

  private void distortion(Evidence.Heard heard) {
    if (heard.harmonicsPercent() != null && heard.harmonicsPercent() > MUCH_DISTORTION_PERCENT) {
      String percent = FigureText.digits(heard.harmonicsPercent()) + " %";
      writer.say(6, "head.distorts", 0, percent);
    }
  }
}
