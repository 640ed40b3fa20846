package firstamp.account;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.FigureText;
import firstamp.analysis.figures.InrushExpected;
import firstamp.analysis.figures.PowerUpTrend;
import firstamp.analysis.figures.SupplyCalculation;
import firstamp.analysis.figures.SupplyShape;
import firstamp.model.JobSheet;
import firstamp.model.Summary;

/** Sentences about supply current: surge, shape, motors, the end. */
final class SupplyVerdict {
  /**
   * A first look is accurate to a few percent; an inrush this far above its prediction is reported.
   */
  private static final double BEYOND = 1.1;

  /**
   * An inrush charge this far from the sheet's total capacitance is reported (trade practice: 30
   * %).
   */
  private static final double SURGE_SHARE = 0.3;

  private static final double STALL_RISE_A = 0.1;

  private final JobSheet sheet;
  private final Evidence evidence;
  private final VerdictWriter writer;

  SupplyVerdict(JobSheet sheet, Evidence evidence, VerdictWriter writer) {
    this.sheet = sheet;
    this.evidence = evidence;
    this.writer = writer;
  }

  void judge() {
    shape();
    surge();
    beyond();
    motors();
    end();
  }

  private void shape() {
    SupplyShape shape = SupplyShape.of(evidence.course(), evidence.supply());
    String from = FigureText.amps(shape.fromA());
    String to = FigureText.amps(shape.toA());
    switch (shape.kind()) {
      case CREEP -> writer.say(3, "shape.creep", 0, from, to);
      case FORMING -> writer.say(6, "shape.forming", 0, from, to);
      case MOVING -> writer.say(7, "shape.moving", 0, from, to);
      default -> {
        // Flat, or not on long enough to judge.
      }
    }
  }

  /** Charge can be counted only where the probe passes dc and no rectifier follows it. */
  private boolean countsCharge() {
    JobSheet.Supply supply = sheet.supply();
    boolean dc =
        supply != null
            && !"mains-transformer".equals(supply.kind())
            && (supply.probeSits() == null
                || supply.probeSits().equals("supply-lead")
                || supply.probeSits().equals("reservoir-fed"));
    return dc
        && sheet.rails().stream()
            .allMatch(rail -> rail.rectifier() == null || rail.rectifier().equals("none"));
  }

  private void surge() {
    if (!countsCharge()) {
      return;
    }
    Double surgeUf = SupplyCalculation.surgeUf(evidence);
    Double lookUf = evidence.look() == null ? null : evidence.look().uF();
    Double sheetUf = SupplyCalculation.sheetUf(sheet);
    // The look has charged the capacitors in part: the inrush holds only the remainder.
    Double uF = lookUf != null ? lookUf : surgeUf;
    if (uF == null || sheetUf == null) {
      return;
    }
    String found = FigureText.microfarads(uF);
    String marked = FigureText.microfarads(sheetUf);
    if (uF < (1 - SURGE_SHARE) * sheetUf) {
      writer.say(4, "surge.missing", 0, found, marked);
    } else if (uF > (1 + SURGE_SHARE) * sheetUf) {
      writer.say(8, "surge.more", 0, found, marked);
    } else {
      writer.say(8, "surge.agrees", 0, found, marked);
    }
  }

  /** The first look predicts the highest inrush; anything above it has another cause. */
  private void beyond() {
    InrushExpected expected = InrushExpected.of(sheet, evidence.look(), null);
    Double peakA = evidence.supply().inrushPeakA();
    if (expected != null && peakA != null && peakA > BEYOND * expected.peakA()) {
      writer.say(
          6,
          "surge.beyond",
          0,
          FigureText.amps(peakA),
          FigureText.amps(expected.peakA()),
          FigureText.microfarads(evidence.look().uF()));
    }
  }

  private void motors() {
    for (PowerUpTrend.CurrentStep step : evidence.course().steps()) {
      boolean stays = !step.fellBack() && step.peakA() - step.beforeA() > STALL_RISE_A;
      if (!step.fellBack() && !stays) {
        continue;
      }
      writer.say(
          stays ? 4 : 8,
          stays ? "motor.stays" : "motor.started",
          0,
          FigureText.millis(step.atMs()),
          FigureText.amps(step.peakA()),
          FigureText.amps(step.afterA()),
          FigureText.amps(step.beforeA()));
    }
  }

  private void end() {
    Summary.SupplyFigures supply = evidence.supply();
    if (supply.steadyA() == null || supply.steadyV() == null || supply.inrushPeakA() == null) {
      return;
    }
    writer.say(
        8,
        evidence.peakClipped() ? "settled.atleast" : "settled",
        0,
        FigureText.amps(supply.steadyA()),
        FigureText.volts(supply.steadyV()),
        FigureText.of(supply.steadyA() * supply.steadyV(), "W"),
        FigureText.amps(supply.inrushPeakA()));
  }
}
