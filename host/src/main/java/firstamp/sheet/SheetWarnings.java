package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.text.Numbers;
import firstamp.model.text.Worded;
import java.util.ArrayList;
import java.util.List;

/** Warnings about entries that are allowed on a sheet. */
public final class SheetWarnings {
  /** Behind the plateau of a supply that limits the last of the charge comes more slowly. */
  private static final double WITH_THE_REST = 1.25;

  private SheetWarnings() {}

  /** Warnings about a sheet as it is stated, in plain words; empty = none. */
  public static List<String> of(JobSheet stated) {
    List<String> warnings = new ArrayList<>();
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
      warnings.add("There is no fuse on the sheet. Put one in, and write its rating as fuseA.");
    }
    if (Boolean.TRUE.equals(effective.set().valveRectifier())) {
      warnings.add(
          "With a valve rectifier nothing reaches the capacitors at low volts, then it comes"
              + " quickly: the low steps form nothing.");
    }
    if ("variable-transformer".equals(supply.through())) {
      warnings.add("A variable transformer limits no current. Use a lamp in line as well.");
    }
    return List.copyOf(warnings);
  }

  /**
   * Quick-acting fuses of 5 x 20 mm melt at about half their rating squared, time-lag ones at 1.1
   * to 4 times (IEC 60127-2 sheets 2 and 3, typical figures of data sheets, from memory).
   */
  private static void melting(List<String> warnings, JobSheet sheet) {
    Double fuse = sheet.supply().fuseA();
    double squares = sheet.limits().i2tA2s();
    if (fuse != null && squares > 0.5 * fuse * fuse) {
      warnings.add(
          "limits.i2tA2s "
              + Numbers.text(squares)
              + " A2s is more than a quick-acting fuse of "
              + Numbers.amps(fuse)
              + " withstands: it may blow before the probe switches off.");
    }
  }

  /** A longer time than capacitors need is not given. */
  private static void shortened(List<String> warnings, JobSheet stated) {
    Double said = stated.limits() == null ? null : stated.limits().inrushMs();
    if (said != null && said > Defaults.LONGEST_INRUSH_MS) {
      warnings.add(
          "limits.inrushMs is "
              + Numbers.text(said)
              + " ms on the sheet and acts for "
              + Numbers.text(Defaults.LONGEST_INRUSH_MS)
              + " ms: it is the time for charging capacitors, not for starting a motor. After it"
              + " the running limit acts.");
    }
  }

  /** A running limit that follows from nothing. */
  private static void loose(List<String> warnings, JobSheet stated) {
    boolean said = stated.limits() != null && stated.limits().runningA() != null;
    RunningLimit running = RunningLimit.of(stated);
    if (!said && running.loose()) {
      warnings.add(
          "The running limit of "
              + Numbers.amps(running.ampere())
              + " is loose: nothing on the sheet shows what the set draws. Write its fuse, the"
              + " watts on its label or its known current.");
    }
  }

  private static void above(
      List<String> warnings, String field, Double value, String other, Double bound) {
    if (value != null && bound != null && value > bound) {
      warnings.add(
          field
              + " "
              + Numbers.amps(value)
              + " is above "
              + other
              + " "
              + Numbers.amps(bound)
              + ".");
    }
  }

  private static void surge(List<String> warnings, JobSheet sheet) {
    Worded warning = Surge.warning(sheet);
    if (warning != null) {
      warnings.add(warning.english());
    }
  }

  /** A surge limit that ends before the capacitors can be full. */
  private static void charging(List<String> warnings, JobSheet sheet) {
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
          "limits.inrushMs "
              + Numbers.text(limits.inrushMs())
              + " ms is shorter than the "
              + Numbers.text(needed)
              + " ms that the capacitors need to charge at "
              + Numbers.amps(limit)
              + " with what the set draws: a healthy set may be switched off. "
              + (longest
                  ? "Raise the limit of the supply, or charge them through a lamp or a resistor"
                      + " first."
                  : "Write three times as much, at most "
                      + Numbers.text(Defaults.LONGEST_INRUSH_MS)
                      + " ms."));
    }
  }

  /** A supply set so low that usual capacitors are not full when the surge limit ends. */
  private static void unknownCapacitors(List<String> warnings, JobSheet sheet) {
    Double limit = sheet.supply().limitA();
    JobSheet.Limits limits = sheet.limits();
    if (limit == null || limits.runningA() > limit) {
      return;
    }
    double largestUf =
        limit * limits.inrushMs() / (2 * WITH_THE_REST) * 1000 / sheet.supply().nominalV();
    if (largestUf < SurgeForecast.usualFarad(sheet) * 1e6) {
      warnings.add(
          "At "
              + Numbers.amps(limit)
              + " capacitors of more than "
              + Numbers.text(largestUf)
              + " uF need longer than "
              + Numbers.text(limits.inrushMs())
              + " ms to charge: a healthy set may be switched off. Write capacitanceUf, or raise"
              + " the limit of the supply.");
    }
  }
}
