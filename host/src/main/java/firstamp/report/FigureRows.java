package firstamp.report;

import firstamp.analysis.Comparison;
import firstamp.analysis.FigureText;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;

/** Figures of the summary as rows of a table; what could not be measured has none. */
final class FigureRows {
  private final ResourceBundle words;
  private final List<List<String>> rows = new ArrayList<>();

  FigureRows(ResourceBundle words) {
    this.words = words;
  }

  List<List<String>> of(ReportInput input) {
    Summary summary = input.summary();
    Summary.LookFigures look = summary.look();
    if (look != null) {
      row("look.supplyV", 0, null, look.supplyV(), "V", null);
      row("look.ohm", 0, null, look.ohm(), "ohm", null);
      row("look.uF", 0, null, look.uF(), "uF", null);
    }
    Summary.SupplyFigures supply = summary.supply();
    if (supply != null) {
      row("inrushPeakA", 0, null, supply.inrushPeakA(), "A", null);
      row("inrushI2tA2s", 0, null, supply.inrushI2tA2s(), "A2s", null);
      row("chargeC", 0, null, supply.chargeC(), "C", null);
      row("steadyA", 0, null, supply.steadyA(), "A", supply.steadyAPlusMinus());
      row("steadyV", 0, null, supply.steadyV(), "V", supply.steadyVPlusMinus());
    }
    if (input.evidence().course() != null) {
      row("energyJ", 0, null, input.evidence().course().energyJ(), "J", null);
    }
    for (Summary.RailFigures rail :
        summary.rails() == null ? List.<Summary.RailFigures>of() : summary.rails()) {
      rail(rail, input.sheet());
    }
    if (summary.levels() != null) {
      levels(summary.levels());
    }
    return rows;
  }

  private void rail(Summary.RailFigures rail, JobSheet sheet) {
    int input = rail.rail();
    row("finalV", input, sheet, rail.finalV(), "V", rail.finalVPlusMinus());
    row("settled1Ms", input, sheet, rail.settled1Ms(), "ms", null);
    row("settledMs", input, sheet, rail.settledMs(), "ms", null);
    row("settled5Ms", input, sheet, rail.settled5Ms(), "ms", null);
    row("settled10Ms", input, sheet, rail.settled10Ms(), "ms", null);
    row("tauMs", input, sheet, rail.tauMs(), "ms", null);
    row("rippleVrms", input, sheet, rail.rippleVrms(), "V", null);
    row("rippleHz", input, sheet, rail.rippleHz(), "Hz", null);
  }

  private void levels(Summary.LevelFigures levels) {
    row("toneHz", 0, null, levels.toneHz(), "Hz", null);
    row("headDbv", 0, null, levels.headDbv(), "dBV", null);
    row("headUa", 0, null, levels.headUa(), "uA", null);
    row("meterDbv", 0, null, levels.meterDbv(), "dBV", null);
    row("headBelowMeterDb", 0, null, levels.headBelowMeterDb(), "dB", null);
    row("expectedDb", 0, null, levels.expectedDb(), "dB", null);
    row("humDbv", 0, null, levels.humDbv(), "dBV", null);
  }

  private void row(
      String figure, int rail, JobSheet sheet, Double value, String unit, Double plusMinus) {
    if (value != null) {
      String uncertainty = plusMinus == null ? "" : value(plusMinus, unit);
      rows.add(List.of(name(figure, rail, sheet), value(value, unit), uncertainty));
    }
  }

  /** Name of a figure as people read it, with its rail. */
  String name(String figure, int rail, JobSheet sheet) {
    String name = words.getString("figure." + figure);
    return rail == 0 ? name : sheet.rail(rail).name() + ": " + name;
  }

  /** A value with its unit; small units that carry no prefix stay as they are. */
  String value(double value, String unit) {
    return switch (unit) {
      case "ms" -> value < 0 ? "-" + FigureText.millis(-value) : FigureText.millis(value);
      case "uF" -> FigureText.microfarads(value);
      case "dB", "dBV" -> FigureText.decibels(value, unit);
      case "Hz" -> String.format(Locale.ROOT, "%.0f Hz", value);
      case "uA" -> FigureText.of(value * 1e-6, "A");
      // No prefix: "mA2s" would read as the square of milliamperes.
      case "A2s" -> String.format(Locale.ROOT, "%.2g A\u00b2s", value);
      default -> FigureText.of(value, unit);
    };
  }

  String parting(Comparison.Parting parting, JobSheet sheet) {
    String what = parting.rail() == 0 ? parting.what() : sheet.rail(parting.rail()).name();
    String unit = parting.what().equals("supply current") ? "A" : "V";
    return what + " " + value(parting.before(), unit) + " / " + value(parting.after(), unit);
  }
}
