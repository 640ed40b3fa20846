package firstamp.analysis;

import firstamp.model.JobSheet;
import firstamp.model.Summary;
import java.util.Locale;

/** Sentences about the rails: where they ended, how they came up, their filters. */
final class RailVerdict {
  private static final double OVERSHOOT_SHARE = 0.05;
  private static final double DROOP_SHARE = 0.05;

  private final JobSheet sheet;
  private final Evidence evidence;
  private final Verdict.Writer writer;

  RailVerdict(JobSheet sheet, Evidence evidence, Verdict.Writer writer) {
    this.sheet = sheet;
    this.evidence = evidence;
    this.writer = writer;
  }

  void judge() {
    for (JobSheet.Rail rail : sheet.rails()) {
      Summary.RailFigures figures = evidence.rail(rail.input());
      if (figures != null && figures.finalV() != null) {
        end(rail, figures);
        late(rail, figures);
        swing(rail, figures.finalV());
      }
      Evidence.RailRipple ripple = evidence.ripple(rail.input());
      if (ripple != null) {
        ripple(rail, figures, ripple);
      }
    }
  }

  private void end(JobSheet.Rail rail, Summary.RailFigures figures) {
    if (rail.nominalV() == null) {
      return;
    }
    double percent = rail.tolerancePercent() == null ? 10 : rail.tolerancePercent();
    double distance = Math.abs(figures.finalV() - rail.nominalV());
    double allowed = percent / 100 * Math.abs(rail.nominalV());
    GuardBand band = GuardBand.below(distance, figures.finalVPlusMinus(), allowed);
    String name = rail.name();
    String end = FigureText.volts(figures.finalV());
    String nominal = FigureText.volts(rail.nominalV());
    String within = FigureText.digits(percent) + " %";
    switch (band) {
      case OUTSIDE, LIKELY_OUTSIDE ->
          writer.say(3, "rail.outside", rail.input(), name, end, nominal, within);
      case LIKELY_INSIDE -> {
        // A probe that was never calibrated could never say "inside": only the edge is worth words.
        if (distance > 0.8 * allowed) {
          String unsure = FigureText.volts(figures.finalVPlusMinus());
          writer.say(7, "rail.edge", rail.input(), name, end, nominal, within, unsure);
        }
      }
      default -> {
        // Where it should be.
      }
    }
  }

  private void late(JobSheet.Rail rail, Summary.RailFigures figures) {
    if (rail.settleMs() != null
        && figures.settledMs() != null
        && figures.settledMs() > rail.settleMs()) {
      writer.say(
          6,
          "rail.late",
          rail.input(),
          rail.name(),
          FigureText.millis(figures.settledMs()),
          FigureText.millis(rail.settleMs()));
    }
  }

  private void swing(JobSheet.Rail rail, double finalV) {
    double highest = 0;
    for (PowerUpCourse.Point point : evidence.course().start()) {
      highest = Math.max(highest, signed(point.railV().get(rail.input() - 1), finalV));
    }
    if (highest > (1 + OVERSHOOT_SHARE) * Math.abs(finalV)) {
      writer.say(
          7,
          "rail.overshoot",
          rail.input(),
          rail.name(),
          FigureText.volts(Math.copySign(highest, finalV)),
          FigureText.volts(finalV));
    }
    PowerUpCourse.SecondMean lowest = null;
    for (PowerUpCourse.SecondMean mean : evidence.course().seconds()) {
      double settleMs = rail.settleMs() == null ? 500 : rail.settleMs();
      boolean counts = mean.second() * 1000.0 >= Math.max(1000, settleMs);
      double volts = signed(mean.railV().get(rail.input() - 1), finalV);
      if (counts
          && (lowest == null || volts < signed(lowest.railV().get(rail.input() - 1), finalV))) {
        lowest = mean;
      }
    }
    if (lowest != null
        && signed(lowest.railV().get(rail.input() - 1), finalV)
            < (1 - DROOP_SHARE) * Math.abs(finalV)) {
      writer.say(
          6,
          "rail.droop",
          rail.input(),
          rail.name(),
          FigureText.volts(lowest.railV().get(rail.input() - 1)),
          FigureText.millis(1000.0 * lowest.second()),
          FigureText.volts(finalV));
    }
  }

  private static double signed(double volts, double like) {
    return like < 0 ? -volts : volts;
  }

  private void ripple(JobSheet.Rail rail, Summary.RailFigures figures, Evidence.RailRipple ripple) {
    String rectifier = rail.rectifier() == null ? "none" : rail.rectifier();
    double expectedHz = ripple.mainsHz() * (rectifier.equals("full") ? 2.0 : 1.0);
    String rms = FigureText.volts(Math.hypot(ripple.rms1V(), ripple.rms2V()));
    String atHz = hertz(ripple.toneHz());
    if (rectifier.equals("none")) {
      writer.say(7, "ripple.seen", rail.input(), rail.name(), rms, atHz);
    } else if (ripple.toneHz() != expectedHz) {
      String key = rectifier.equals("full") ? "ripple.half" : "ripple.full";
      writer.say(3, key, rail.input(), rail.name(), atHz, hertz(expectedHz), rms);
    } else {
      filter(rail, figures, ripple, rms, atHz);
    }
  }

  private void filter(
      JobSheet.Rail rail,
      Summary.RailFigures figures,
      Evidence.RailRipple ripple,
      String rms,
      String atHz) {
    Double amps = evidence.supply().steadyA();
    if (rail.capacitanceUf() == null
        || amps == null
        || figures == null
        || figures.finalV() == null) {
      return;
    }
    double uF = 1e6 * FilterCapacitance.fromTone(amps, ripple.toneHz(), ripple.toneVrms());
    boolean tired = uF < FilterCapacitance.TIRED_SHARE * rail.capacitanceUf();
    // Beyond its range the formula reads high: then tired is still tired, and nothing else is sure.
    boolean valid = FilterCapacitance.valid(ripple.toneVrms(), figures.finalV());
    if (!valid && !tired) {
      return;
    }
    SupplyShape shape = SupplyShape.of(evidence.course(), evidence.supply());
    boolean leaks =
        shape.kind() == SupplyShape.Kind.FORMING || shape.kind() == SupplyShape.Kind.CREEP;
    writer.say(
        tired ? 3 : 8,
        !tired ? "filter.holds" : leaks ? "filter.leaky" : "filter.dry",
        rail.input(),
        rail.name(),
        (valid ? "" : "at most ") + FigureText.microfarads(uF),
        FigureText.microfarads(rail.capacitanceUf()),
        rms,
        atHz,
        FigureText.amps(amps));
  }

  private static String hertz(double hz) {
    return String.format(Locale.ROOT, "%.0f Hz", hz);
  }
}
