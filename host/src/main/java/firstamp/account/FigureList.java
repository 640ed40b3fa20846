package firstamp.account;

import firstamp.analysis.figures.ChargeFit;
import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.PowerUpTrend;
import firstamp.analysis.figures.SupplyCalculation;
import firstamp.analysis.spectrum.Decibels;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.samples.Channel;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The figures of one power-up as one list, with their names and values in words: the command line
 * and the report print them from here.
 *
 * <p>What could not be measured is not in the list.
 *
 * @param figures in the order of the summary
 */
public record FigureList(List<Figure> figures) {
  private static final FigureWords ENGLISH = new FigureWords(Locale.ROOT);

  /** Copies the list. */
  public FigureList {
    figures = List.copyOf(figures);
  }

  /**
   * One figure.
   *
   * @param key as in the summary line; {@code look.} before those of the look
   * @param rail 1 to 3, 0 = none
   * @param railName as the sheet calls it; null = it has none
   * @param value in the unit
   * @param unit SI symbol
   * @param plusMinus expanded uncertainty (k = 2), null = not stated
   * @param bound whether the value is a bound only
   * @param uncalibrated whether it comes from an input whose gain was never measured
   */
  public record Figure(
      String key,
      int rail,
      String railName,
      double value,
      String unit,
      Double plusMinus,
      Bound bound,
      boolean uncalibrated) {
    /** Whether it cannot be told from nothing: smaller than its uncertainty. */
    public boolean unseen() {
      // Zero decibels are a level like any other.
      boolean level = unit.startsWith("dB") || unit.equals("VU");
      return plusMinus != null && bound == Bound.NONE && !level && Math.abs(value) < plusMinus;
    }

    /** Name for people, with its rail. */
    public String name() {
      return ENGLISH.name(this);
    }

    /** The value with its unit. */
    public String text() {
      return ENGLISH.text(this);
    }

    /** The uncertainty with its unit, empty where none is stated. */
    public String plusMinusText() {
      return ENGLISH.plusMinus(this);
    }
  }

  /** What a value is. */
  public enum Bound {
    /** The value itself. */
    NONE,
    /** No more than that. */
    AT_MOST,
    /** No less than that. */
    AT_LEAST
  }

  /** Those of the summary alone. */
  public static FigureList of(Summary summary) {
    Collector collector = new Collector();
    collector.summary(summary.look(), summary.supply(), summary.rails(), summary.levels(), null);
    return new FigureList(collector.figures);
  }

  /** Those of a first look. */
  public static FigureList of(Summary.LookFigures look) {
    Collector collector = new Collector();
    collector.look(look);
    return new FigureList(collector.figures);
  }

  /** All figures, those of the summary first in its order. */
  public static FigureList of(Evidence evidence) {
    Collector collector = new Collector();
    collector.summary(
        evidence.look(), evidence.supply(), evidence.rails(), evidence.levels(), evidence);
    return new FigureList(collector.figures);
  }

  /** The figure of a key and rail, null if it is not there. */
  public Figure find(String key, int rail) {
    return figures.stream()
        .filter(figure -> figure.key().equals(key) && figure.rail() == rail)
        .findFirst()
        .orElse(null);
  }

  /** Name of a figure for people, with its rail. */
  public static String name(String key, int rail, JobSheet sheet) {
    return ENGLISH.name(key, rail, sheet);
  }

  /** A value with its unit; small units that carry no prefix stay as they are. */
  public static String value(double value, String unit) {
    return ENGLISH.value(value, unit);
  }

  /** Where two traces diverge, in words. */
  public static String parting(Comparison.Parting parting, JobSheet sheet) {
    return ENGLISH.parting(parting, sheet);
  }

  private static final class Collector {
    private final List<Figure> figures = new ArrayList<>();
    private final String[] railNames = new String[4];
    private FigureDoubt doubt = FigureDoubt.NOT_KNOWN;

    void summary(
        Summary.LookFigures look,
        Summary.SupplyFigures supply,
        List<Summary.RailFigures> rails,
        Summary.LevelFigures levels,
        Evidence more) {
      doubt = more == null ? doubt : new FigureDoubt(more);
      look(look);
      supply(supply);
      if (more != null) {
        supply(more);
      }
      for (Summary.RailFigures rail : rails == null ? List.<Summary.RailFigures>of() : rails) {
        rail(rail, more == null ? null : more.more(rail.rail()));
      }
      levels(levels, more != null && more.heard().headAtFloor());
      if (more != null && levels != null) {
        heard(more.heard());
      }
    }

    private void look(Summary.LookFigures look) {
      if (look != null) {
        add("look.supplyV", 0, look.supplyV(), "V", null);
        if (look.ohm() != null) {
          bounded("look.ohm", look.ohm(), "ohm", look.atMost() ? Bound.AT_MOST : Bound.NONE);
        }
        add("look.uF", 0, look.uF(), "uF", null);
      }
    }

    private void supply(Summary.SupplyFigures supply) {
      if (supply != null) {
        add("inrushPeakA", 0, supply.inrushPeakA(), "A", doubt.peakA());
        add("inrushI2tA2s", 0, supply.inrushI2tA2s(), "A2s", doubt.inrushI2tA2s());
        add("chargeC", 0, supply.chargeC(), "C", doubt.chargeC());
        add("steadyA", 0, supply.steadyA(), "A", supply.steadyAPlusMinus());
        add("steadyV", 0, supply.steadyV(), "V", supply.steadyVPlusMinus());
      }
    }

    private void supply(Evidence evidence) {
      if (doubt.currentSeen()) {
        add("loadOhm", 0, SupplyCalculation.loadOhm(evidence.supply()), "ohm", null);
      }
      PowerUpTrend course = evidence.course();
      if (course != null) {
        add("energyJ", 0, course.supply().energyJ(), "J", doubt.energyJ());
        add("surgeUf", 0, SupplyCalculation.surgeUf(evidence), "uF", null);
        ChargeFit fit = ChargeFit.of(course);
        if (fit != null) {
          add("chargingMs", 0, fit.tauMs(), "ms", 2 * fit.tauMsError());
          add("restA", 0, fit.restA(), "A", null);
        }
      }
    }

    private void rail(Summary.RailFigures rail, Evidence.RailMore more) {
      int input = rail.rail();
      railNames[input] = rail.name();
      add("finalV", input, rail.finalV(), "V", rail.finalVPlusMinus());
      add("settled1Ms", input, rail.settled1Ms(), "ms", null);
      add("settledMs", input, rail.settledMs(), "ms", null);
      add("settled5Ms", input, rail.settled5Ms(), "ms", null);
      add("settled10Ms", input, rail.settled10Ms(), "ms", null);
      add("tauMs", input, rail.tauMs(), "ms", more == null ? null : more.tauMsPlusMinus());
      add("rippleVrms", input, rail.rippleVrms(), "V", null);
      add("rippleHz", input, rail.rippleHz(), "Hz", null);
      if (more != null) {
        add("overshootV", input, more.overshootV(), "V", null);
        add("droopV", input, more.droopV(), "V", null);
        boolean told = more.filter() != null && !more.filter().atMost();
        add("filterUf", input, told ? (Double) more.filter().uF() : null, "uF", null);
      }
    }

    /**
     * Levels.
     *
     * @param atFloor whether the head shows nothing above its noise: its level is a bound then
     */
    private void levels(Summary.LevelFigures levels, boolean atFloor) {
      if (levels != null) {
        Bound most = atFloor ? Bound.AT_MOST : Bound.NONE;
        add("toneHz", 0, levels.toneHz(), "Hz", null);
        bounded("headDbv", levels.headDbv(), "dBV", most);
        bounded("headUa", levels.headUa(), "uA", most);
        add("meterDbv", 0, levels.meterDbv(), "dBV", doubt.levelDb(Channel.M));
        add("meterDbu", 0, dbu(levels.meterDbv()), "dBu", doubt.levelDb(Channel.M));
        bounded(
            "headBelowMeterDb",
            levels.headBelowMeterDb(),
            "dB",
            atFloor ? Bound.AT_LEAST : Bound.NONE);
        add("expectedDb", 0, levels.expectedDb(), "dB", null);
        add("humDbv", 0, levels.humDbv(), "dBV", doubt.levelDb(Channel.H));
      }
    }

    private void heard(Evidence.Heard heard) {
      add("speechDb", 0, heard.speechDb(), "dB", heard.speechDbPlusMinus());
      add("overExpectedDb", 0, heard.overExpectedDb(), "dB", heard.overExpectedDbPlusMinus());
      add("harmonicsPercent", 0, heard.harmonicsPercent(), "%", null);
      add("noiseDbv", 0, heard.noiseDbv(), "dBV", doubt.levelDb(Channel.H));
      add("needleVu", 0, heard.needleVu(), "VU", null);
      add("needlePercent", 0, heard.needlePercent(), "%", null);
      for (Evidence.InStep one : heard.inStep()) {
        add("humInStepPercent", one.rail(), 100 * one.share(), "%", null);
      }
    }

    private static Double dbu(Double dbv) {
      return dbv == null ? null : (Double) Decibels.dbu(Decibels.voltsOfDbv(dbv));
    }

    private void add(String key, int rail, Double value, String unit, Double plusMinus) {
      if (value != null) {
        figures.add(
            new Figure(
                key, rail, railNames[rail], value, unit, plusMinus, Bound.NONE, doubt.about(key)));
      }
    }

    private void bounded(String key, Double value, String unit, Bound bound) {
      if (value != null) {
        Double plusMinus = bound == Bound.NONE ? doubt.levelDb(key) : null;
        figures.add(new Figure(key, 0, null, value, unit, plusMinus, bound, doubt.about(key)));
      }
    }
  }
}
