package firstamp.analysis;

import firstamp.model.JobSheet;
import firstamp.model.Summary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;

/**
 * The figures of one power-up as one list, with their names and values in words: the command line
 * and the report print them from here.
 *
 * <p>What could not be measured is not in the list.
 *
 * @param figures in the order of the summary
 */
public record FigureList(List<Figure> figures) {
  private static final ResourceBundle NAMES =
      ResourceBundle.getBundle("firstamp.analysis.figures", Locale.ROOT);

  /** Copies the list. */
  public FigureList {
    figures = List.copyOf(figures);
  }

  /**
   * One figure.
   *
   * @param key as in the summary line; {@code look.} before those of the look
   * @param rail 1 to 3, 0 = none
   * @param value in the unit
   * @param unit SI symbol
   * @param plusMinus expanded uncertainty (k = 2), null = not stated
   */
  public record Figure(String key, int rail, double value, String unit, Double plusMinus) {}

  /**
   * All figures.
   *
   * @param summary of the power-up
   * @param course of it, null = the switch never closed
   */
  public static FigureList of(Summary summary, PowerUpCourse course) {
    Collector collector = new Collector();
    collector.look(summary.look());
    collector.supply(summary.supply());
    if (course != null) {
      collector.add("energyJ", 0, course.energyJ(), "J", null);
    }
    if (summary.rails() != null) {
      summary.rails().forEach(collector::rail);
    }
    collector.levels(summary.levels());
    return new FigureList(collector.figures);
  }

  /** The figure of a key and rail, null if it is not there. */
  public Figure find(String key, int rail) {
    return figures.stream()
        .filter(figure -> figure.key().equals(key) && figure.rail() == rail)
        .findFirst()
        .orElse(null);
  }

  /** Name of a figure as people read it, with its rail. */
  public static String name(String key, int rail, JobSheet sheet) {
    String name = NAMES.getString(key);
    return rail == 0 ? name : railName(rail, sheet) + ": " + name;
  }

  /** A value with its unit; small units that carry no prefix stay as they are. */
  public static String value(double value, String unit) {
    return switch (unit) {
      case "ms" -> value < 0 ? "-" + FigureText.millis(-value) : FigureText.millis(value);
      case "uF" -> FigureText.microfarads(value);
      case "dB", "dBV" -> FigureText.decibels(value, unit);
      case "dBu" -> FigureText.decibels(value, "dBu");
      case "Hz" -> String.format(Locale.ROOT, "%.0f Hz", value);
      case "uA" -> FigureText.of(value * 1e-6, "A");
      // No prefix: "mA2s" would read as the square of milliamperes.
      case "A2s" -> String.format(Locale.ROOT, "%.2g A\u00b2s", value);
      default -> FigureText.of(value, unit);
    };
  }

  /** Where two courses part, in words. */
  public static String parting(Comparison.Parting parting, JobSheet sheet) {
    String what =
        parting.rail() == 0
            ? NAMES.getString("parting." + parting.what())
            : railName(parting.rail(), sheet);
    String unit = parting.what().equals("supply current") ? "A" : "V";
    return what + " " + value(parting.before(), unit) + " / " + value(parting.after(), unit);
  }

  /** Name of a rail, or its clip where the sheet has no name. */
  private static String railName(int rail, JobSheet sheet) {
    JobSheet.Rail entry = sheet.rail(rail);
    return entry == null || entry.name() == null
        ? NAMES.getString("parting.rail") + " " + rail
        : entry.name();
  }

  private static final class Collector {
    private final List<Figure> figures = new ArrayList<>();

    void look(Summary.LookFigures look) {
      if (look != null) {
        add("look.supplyV", 0, look.supplyV(), "V", null);
        add("look.ohm", 0, look.ohm(), "ohm", null);
        add("look.uF", 0, look.uF(), "uF", null);
      }
    }

    void supply(Summary.SupplyFigures supply) {
      if (supply != null) {
        add("inrushPeakA", 0, supply.inrushPeakA(), "A", null);
        add("inrushI2tA2s", 0, supply.inrushI2tA2s(), "A2s", null);
        add("chargeC", 0, supply.chargeC(), "C", null);
        add("steadyA", 0, supply.steadyA(), "A", supply.steadyAPlusMinus());
        add("steadyV", 0, supply.steadyV(), "V", supply.steadyVPlusMinus());
      }
    }

    void rail(Summary.RailFigures rail) {
      int input = rail.rail();
      add("finalV", input, rail.finalV(), "V", rail.finalVPlusMinus());
      add("settled1Ms", input, rail.settled1Ms(), "ms", null);
      add("settledMs", input, rail.settledMs(), "ms", null);
      add("settled5Ms", input, rail.settled5Ms(), "ms", null);
      add("settled10Ms", input, rail.settled10Ms(), "ms", null);
      add("tauMs", input, rail.tauMs(), "ms", null);
      add("rippleVrms", input, rail.rippleVrms(), "V", null);
      add("rippleHz", input, rail.rippleHz(), "Hz", null);
    }

    void levels(Summary.LevelFigures levels) {
      if (levels != null) {
        add("toneHz", 0, levels.toneHz(), "Hz", null);
        add("headDbv", 0, levels.headDbv(), "dBV", null);
        add("headUa", 0, levels.headUa(), "uA", null);
        add("meterDbv", 0, levels.meterDbv(), "dBV", null);
        add("meterDbu", 0, dbu(levels.meterDbv()), "dBu", null);
        add("headBelowMeterDb", 0, levels.headBelowMeterDb(), "dB", null);
        add("expectedDb", 0, levels.expectedDb(), "dB", null);
        add("humDbv", 0, levels.humDbv(), "dBV", null);
      }
    }

    private static Double dbu(Double dbv) {
      return dbv == null ? null : (Double) Decibels.dbu(Decibels.voltsOfDbv(dbv));
    }

    void add(String key, int rail, Double value, String unit, Double plusMinus) {
      if (value != null) {
        figures.add(new Figure(key, rail, value, unit, plusMinus));
      }
    }
  }
}
