package firstamp.account;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.FigureText;
import firstamp.analysis.figures.FilterCapacitance;
import firstamp.analysis.figures.RailCalculation;
import firstamp.analysis.figures.SupplyShape;
import firstamp.analysis.statistics.GuardBand;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.text.Wording.Phrase;
import java.util.Locale;

/** Sentences about the rails: where they ended, how they came up, their filters. */
final class RailVerdict {
  /**
   * This far above the known idle current: something draws current that did not before (common
   * practice).
   */
  private static final double LEAKY_CURRENT = 1.25;

  private final JobSheet sheet;
  private final Evidence evidence;
  private final VerdictWriter writer;

  RailVerdict(JobSheet sheet, Evidence evidence, VerdictWriter writer) {
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
        // Without calibration nothing is surely in range: only a value at the edge is mentioned.
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

  /** Late is judged by the sheet's own tolerance, never more strictly than the alarm does. */
  private void late(JobSheet.Rail rail, Summary.RailFigures figures) {
    double percent = rail.tolerancePercent() == null ? 10 : rail.tolerancePercent();
    int share = percent <= 1 ? 1 : percent <= 2 ? 2 : percent <= 5 ? 5 : 10;
    Double settledMs =
        switch (share) {
          case 1 -> figures.settled1Ms();
          case 2 -> figures.settledMs();
          case 5 -> figures.settled5Ms();
          default -> figures.settled10Ms();
        };
    if (percent <= share
        && rail.settleMs() != null
        && settledMs != null
        && settledMs > rail.settleMs()) {
      writer.say(
          6,
          "rail.late",
          rail.input(),
          rail.name(),
          share + " %",
          FigureText.millis(settledMs),
          FigureText.millis(rail.settleMs()));
    }
  }

  /** Behind a rectifier a rail follows half waves, which are no single step. */
  private boolean comesUpAtOnce() {
    return !(sheet.supply() != null && "mains-transformer".equals(sheet.supply().kind()))
        && sheet.rails().stream()
            .allMatch(one -> one.rectifier() == null || one.rectifier().equals("none"));
  }

  private void swing(JobSheet.Rail rail, double finalV) {
    Evidence.RailMore more = evidence.more(rail.input());
    if (more.overshootV() != null) {
      writer.say(
          7,
          "rail.overshoot",
          rail.input(),
          rail.name(),
          FigureText.volts(more.overshootV()),
          FigureText.volts(finalV));
    }
    if (more.droopV() != null) {
      writer.say(
          6,
          "rail.droop",
          rail.input(),
          rail.name(),
          FigureText.volts(more.droopV()),
          FigureText.millis(more.droopMs()),
          FigureText.volts(finalV));
    }
    if (more.misfit() != null && comesUpAtOnce() && evidence.rail(rail.input()).tauMs() == null) {
      String misfit = FigureText.digits(100 * more.misfit()) + " %";
      writer.say(8, "rail.not-first-order", rail.input(), rail.name(), misfit);
    }
  }

  private void ripple(JobSheet.Rail rail, Summary.RailFigures figures, Evidence.RailRipple ripple) {
    Double expectedHz = RailCalculation.expectedHz(rail, ripple.mainsHz());
    String rms = FigureText.volts(Math.hypot(ripple.rms1V(), ripple.rms2V()));
    String atHz = hertz(ripple.toneHz());
    if (expectedHz == null) {
      writer.say(7, "ripple.seen", rail.input(), rail.name(), rms, atHz);
    } else if (ripple.toneHz() != expectedHz) {
      String key = rail.rectifier().equals("full") ? "ripple.half" : "ripple.full";
      writer.say(3, key, rail.input(), rail.name(), atHz, hertz(expectedHz), rms);
    } else {
      filter(rail, figures, rms, atHz);
    }
  }

  private void filter(JobSheet.Rail rail, Summary.RailFigures figures, String rms, String atHz) {
    Evidence.Filter filter = evidence.more(rail.input()).filter();
    if (rail.capacitanceUf() == null || filter == null) {
      return;
    }
    boolean tired = filter.uF() < FilterCapacitance.TIRED_SHARE * rail.capacitanceUf();
    // Beyond its range the formula reads high: all that is sure then is a worn capacitor.
    if (filter.atMost() && !tired) {
      return;
    }
    double amps = evidence.supply().steadyA();
    Double idleA = sheet.supply() == null ? null : sheet.supply().idleA();
    String key = !tired ? "filter.holds" : leaky(amps, idleA) ? "filter.leaky" : "filter.dry";
    if (key.equals("filter.dry") && idleA != null && amps < LEAKY_CURRENT * idleA) {
      key = "filter.dry-same";
    }
    writer.say(
        tired ? 3 : 8,
        key,
        rail.input(),
        rail.name(),
        filter.atMost()
            ? new Phrase("at.most", FigureText.microfarads(filter.uF()))
            : FigureText.microfarads(filter.uF()),
        FigureText.microfarads(rail.capacitanceUf()),
        rms,
        atHz,
        FigureText.amps(amps),
        idleA == null ? "" : FigureText.amps(idleA));
  }

  /**
   * Leaky, not dry: ripple up and supply current up with it; dry: ripple up, current unchanged
   * (common practice, no source).
   */
  private boolean leaky(double amps, Double idleA) {
    SupplyShape.Kind shape = SupplyShape.of(evidence.course(), evidence.supply()).kind();
    return shape == SupplyShape.Kind.FORMING
        || shape == SupplyShape.Kind.CREEP
        || idleA != null && amps > LEAKY_CURRENT * idleA;
  }

  private static String hertz(double hz) {
    return String.format(Locale.ROOT, "%.0f Hz", hz);
  }
}
