package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.limits.Through;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;
import java.util.ArrayList;
import java.util.List;

/** Warnings about entries that are allowed on a sheet. */
public final class SheetWarnings {
  /** Behind the plateau of a supply that limits the last of the charge comes more slowly. */
  private static final double WITH_THE_REST = 1.25;

  private SheetWarnings() {}

  /** Warnings about a sheet as it is stated, in plain words; empty = none. */
  public static List<Worded> of(JobSheet stated) {
    List<Worded> warnings = new ArrayList<>();
    JobSheet effective = Defaults.fill(stated);
    JobSheet.Supply supply = effective.supply();
    JobSheet.Limits limits = effective.limits();
    above(warnings, "limits.runningA", limits.runningA(), "supply.limitA", supply.limitA());
    above(warnings, "limits.runningA", limits.runningA(), "supply.fuseA", supply.fuseA());
    above(warnings, "limits.runningA", limits.runningA(), "limits.inrushA", limits.inrushA());
    melting(warnings, effective);
    surge(warnings, effective);
    shortened(warnings, stated);
    charging(warnings, effective);
    loose(warnings, stated);
    if (supply.fuseA() == null) {
      warnings.add(CheckWords.say("warn.fuse"));
    }
    if (Boolean.TRUE.equals(effective.set().valveRectifier())) {
      warnings.add(CheckWords.say("warn.valve-rectifier"));
    }
    if (Through.of(effective) == Through.HAND_TURNED) {
      warnings.add(CheckWords.say("warn.variable-transformer"));
    }
    return List.copyOf(warnings);
  }

  /**
   * Quick-acting fuses of 5 x 20 mm melt at about half their rating squared, time-lag ones at 1.1
   * to 4 times (IEC 60127-2 sheets 2 and 3, typical figures of data sheets, from memory).
   */
  private static void melting(List<Worded> warnings, JobSheet sheet) {
    Double fuse = sheet.supply().fuseA();
    double squares = sheet.limits().i2tA2s();
    if (fuse != null && squares > 0.5 * fuse * fuse) {
      warnings.add(CheckWords.say("warn.melting", "limits.i2tA2s", squares, Quantity.amps(fuse)));
    }
  }

  /** A longer time than capacitors need is not given. */
  private static void shortened(List<Worded> warnings, JobSheet stated) {
    Double said = stated.limits() == null ? null : stated.limits().inrushMs();
    if (said != null && said > Defaults.LONGEST_INRUSH_MS) {
      warnings.add(
          CheckWords.say("warn.shortened", "limits.inrushMs", said, Defaults.LONGEST_INRUSH_MS));
    }
  }

  /** A running limit that follows from nothing. */
  private static void loose(List<Worded> warnings, JobSheet stated) {
    boolean said = stated.limits() != null && stated.limits().runningA() != null;
    RunningLimit running = RunningLimit.of(stated);
    if (!said && running.loose()) {
      warnings.add(CheckWords.say("warn.loose", Quantity.amps(running.ampere())));
    }
  }

  private static void above(
      List<Worded> warnings, String field, Double value, String other, Double bound) {
    if (value != null && bound != null && value > bound) {
      warnings.add(
          CheckWords.say("warn.above", field, Quantity.amps(value), other, Quantity.amps(bound)));
    }
  }

  private static void surge(List<Worded> warnings, JobSheet sheet) {
    Worded warning = Surge.warning(sheet);
    if (warning != null) {
      warnings.add(warning);
    }
  }

  /** A surge limit that ends before the capacitors can be full. */
  private static void charging(List<Worded> warnings, JobSheet sheet) {
    JobSheet.Limits limits = sheet.limits();
    JobSheet.Supply supply = sheet.supply();
    Double limit = supply.limitA() != null ? supply.limitA() : limits.inrushA();
    if (limit == null || limits.inrushMs() == null || limits.runningA() == null) {
      return;
    }
    double farad = Surge.farad(sheet);
    if (farad == 0) {
      unknownCapacitors(warnings, sheet);
      return;
    }
    // What the set draws meanwhile does not charge: two thirds of its running limit, or half.
    double load = Math.min(limits.runningA() * 2 / 3, limit / 2);
    double needed = WITH_THE_REST * farad * supply.nominalV() / (limit - load) * 1000;
    if (limits.inrushMs() < needed && limits.runningA() <= limit) {
      boolean longest = limits.inrushMs() >= Defaults.LONGEST_INRUSH_MS;
      warnings.add(
          CheckWords.say(
              "warn.charging",
              limits.inrushMs(),
              needed,
              Quantity.amps(limit),
              longest
                  ? new Phrase("warn.charging.supply")
                  : new Phrase("warn.charging.time", Defaults.LONGEST_INRUSH_MS)));
    }
  }

  /** A supply set so low that usual capacitors are not full when the surge limit ends. */
  private static void unknownCapacitors(List<Worded> warnings, JobSheet sheet) {
    Double limit = sheet.supply().limitA();
    JobSheet.Limits limits = sheet.limits();
    if (limit == null || limits.runningA() > limit) {
      return;
    }
    double largestUf =
        limit * limits.inrushMs() / (2 * WITH_THE_REST) * 1000 / sheet.supply().nominalV();
    if (largestUf < SurgeForecast.usualFarad(sheet) * 1e6) {
      warnings.add(
          CheckWords.say("warn.capacitors", Quantity.amps(limit), largestUf, limits.inrushMs()));
    }
  }
}
