package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.Numbers;
import java.util.ArrayList;
import java.util.List;

/** What is allowed on a sheet and should be said all the same. */
public final class SheetWarnings {
  private SheetWarnings() {}

  /** Warnings about a filled sheet, in plain words; empty = none. */
  public static List<String> of(JobSheet effective) {
    List<String> warnings = new ArrayList<>();
    JobSheet.Supply supply = effective.supply();
    JobSheet.Limits limits = effective.limits();
    if (limits != null) {
      above(warnings, "limits.runningA", limits.runningA(), "supply.limitA", supply.limitA());
      above(warnings, "limits.inrushA", limits.inrushA(), "supply.limitA", supply.limitA());
      above(warnings, "limits.runningA", limits.runningA(), "supply.fuseA", supply.fuseA());
      above(warnings, "limits.inrushA", limits.inrushA(), "supply.fuseA", supply.fuseA());
      above(warnings, "limits.peakA", limits.peakA(), "supply.fuseA", supply.fuseA());
      above(warnings, "limits.runningA", limits.runningA(), "limits.inrushA", limits.inrushA());
      surge(warnings, effective);
      charging(warnings, effective);
    }
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
    Surge surge = Surge.of(sheet);
    if (surge != null) {
      warnings.add(
          "The surge can reach "
              + Numbers.amps(surge.ampere())
              + "; from 9 A on the probe takes it for a short. Before you switch on, put a wire-wound"
              + " resistor of "
              + Numbers.text(surge.ohm())
              + " ohm, "
              + Numbers.text(surge.watt())
              + " W in series (it takes "
              + Numbers.text(surge.joule())
              + " J in one pulse), and bridge it once the set runs. A supply set to limit at 9 A or"
              + " less does as well: write it as limitA.");
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
    double needed = Surge.farad(sheet) * supply.nominalV() / limit * 1000;
    if (limits.inrushMs() < needed && limits.runningA() < limit) {
      warnings.add(
          "limits.inrushMs "
              + Numbers.text(limits.inrushMs())
              + " ms is shorter than the "
              + Numbers.text(needed)
              + " ms that the capacitors need to charge at "
              + Numbers.amps(limit)
              + ": a healthy set may be switched off. Write three times as much.");
    }
  }
}
