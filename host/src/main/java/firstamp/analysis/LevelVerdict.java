package firstamp.analysis;

import firstamp.model.JobSheet;
import firstamp.model.Summary;

/** Sentences about head, meter and hum. */
final class LevelVerdict {
  private static final int LEAST_SPEECH_WINDOWS = 5;
  private static final double SAME_HUM_DB = 6;
  private static final double HUM_DBV = -75;
  private static final double CLEARLY = 0.8;

  private final JobSheet sheet;
  private final Evidence evidence;
  private final Verdict.Writer writer;

  LevelVerdict(JobSheet sheet, Evidence evidence, Verdict.Writer writer) {
    this.sheet = sheet;
    this.evidence = evidence;
    this.writer = writer;
  }

  void judge() {
    Summary.LevelFigures levels = evidence.levels();
    if (levels == null) {
      return;
    }
    if (levels.meterDbv() == null) {
      writer.say(5, "meter.silent", 0);
    } else {
      head(levels);
    }
    if (levels.humDbv() != null) {
      hum(levels.humDbv());
    }
  }

  private void head(Summary.LevelFigures levels) {
    double belowDb = levels.headBelowMeterDb();
    double marginDb = sheet.levels().marginDb() == null ? 6 : sheet.levels().marginDb();
    String below = FigureText.decibels(belowDb, "dB");
    if (evidence.extras().headAtFloor()) {
      String most =
          levels.headUa() == null
              ? FigureText.decibels(levels.headDbv(), "dBV")
              : FigureText.of(levels.headUa() * 1e-6, "A");
      writer.say(2, "head.floor", 0, most, FigureText.decibels(levels.meterDbv(), "dBV"));
    } else if (levels.expectedDb() != null && belowDb > levels.expectedDb() + marginDb) {
      writer.say(2, "head.low", 0, below, FigureText.decibels(levels.expectedDb(), "dB"));
    } else if (levels.expectedDb() == null) {
      writer.say(8, "head.keep", 0, below);
    }
    Evidence.Extras extras = evidence.extras();
    if (extras.speechDbPlusMinus() != null && extras.speechWindows() >= LEAST_SPEECH_WINDOWS) {
      writer.say(
          8,
          "head.speech",
          0,
          FigureText.decibels(extras.speechDb(), "dB"),
          FigureText.decibels(extras.speechDbPlusMinus(), "dB"),
          FigureText.millis(200.0 * extras.speechWindows()));
    }
  }

  private void hum(double humDbv) {
    Double before = evidence.extras().humBeforeDbv();
    String level = FigureText.decibels(humDbv, "dBV");
    if (before != null && before > humDbv - SAME_HUM_DB) {
      writer.say(5, "hum.before", 0, FigureText.decibels(before, "dBV"));
      return;
    }
    int importance = humDbv > HUM_DBV ? 5 : 8;
    String mains = evidence.extras().headHumHz() + " Hz";
    Evidence.RailRipple strongest = null;
    for (Evidence.RailRipple ripple : evidence.ripples()) {
      if (ripple.mainsHz() == evidence.extras().headHumHz()
          && (strongest == null || ripple.toneVrms() > strongest.toneVrms())) {
        strongest = ripple;
      }
    }
    if (strongest != null) {
      String name = sheet.rail(strongest.rail()).name();
      String at = FigureText.digits(strongest.toneHz()) + " Hz";
      writer.say(importance, "hum.with-ripple", strongest.rail(), level, mains, name, at);
      return;
    }
    Double even = evidence.extras().humEvenShare();
    String twice = 2 * evidence.extras().headHumHz() + " Hz";
    if (even != null && even > CLEARLY) {
      writer.say(importance, "hum.twice", 0, level, twice);
    } else if (even != null && even < 1 - CLEARLY) {
      writer.say(importance, "hum.mains", 0, level, mains);
    } else {
      writer.say(importance, "hum.seen", 0, level, mains);
    }
  }
}
