package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.Numbers;
import java.util.ArrayList;
import java.util.List;

/** What is allowed on a sheet and should be said all the same. */
public final class SheetWarnings {
  private static final double STRAIGHT_SURGE_A = 9;

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
              + Numbers.text(value)
              + " A is above "
              + other
              + " "
              + Numbers.text(bound)
              + " A.");
    }
  }

  /** A supply limit above 9 A lets the surge pass what the switch should see. */
  private static void surge(List<String> warnings, JobSheet sheet) {
    Double capable = sheet.supply().limitA();
    if (capable == null || capable <= STRAIGHT_SURGE_A || sheet.supply().capacitanceUf() == null) {
      return;
    }
    double ohm = sheet.supply().nominalV() / STRAIGHT_SURGE_A;
    double joule =
        0.5e-6
            * sheet.supply().capacitanceUf()
            * sheet.supply().nominalV()
            * sheet.supply().nominalV();
    warnings.add(
        "The surge can pass 9 A. Put "
            + Numbers.text(ohm)
            + " ohm in series that bears "
            + Numbers.text(joule)
            + " J in one pulse (5 W wire-wound does), and bridge it once the set runs.");
  }
}
