package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.text.Numbers;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Numbers that are each allowed but contradict each other. */
final class SheetSense {
  private final String file;
  private final Fields top;

  SheetSense(String file, Fields top) {
    this.file = file;
    this.top = top;
  }

  void check(JobSheet sheet) throws SheetException {
    supply(sheet.supply());
    List<Node> rails = top.items("rails");
    for (int k = 0; k < rails.size(); k++) {
      rail(sheet.rails().get(k), rails.get(k));
    }
    path(sheet.path());
  }

  private void supply(JobSheet.Supply supply) throws SheetException {
    Node node = top.at("supply");
    if (supply.minV() != null && supply.minV() >= supply.nominalV()) {
      throw Fields.problem(
          file,
          node.members().get("minV"),
          "under nominalV " + Numbers.text(supply.nominalV()) + " V",
          "Write a smaller minV.");
    }
    if (supply.maxV() != null && supply.maxV() <= supply.nominalV()) {
      throw Fields.problem(
          file,
          node.members().get("maxV"),
          "over nominalV " + Numbers.text(supply.nominalV()) + " V",
          "Write a larger maxV.");
    }
  }

  private void rail(JobSheet.Rail rail, Node node) throws SheetException {
    if (rail.nominalV() != null && Math.abs(rail.nominalV()) < 0.1) {
      throw Fields.problem(
          file,
          node.members().get("nominalV"),
          "at least 0.1 V on one side of the chassis",
          "Leave the rail out if it is the chassis.");
    }
    if (rail.overV() != null
        && rail.nominalV() != null
        && rail.overV() <= Math.abs(rail.nominalV())) {
      throw Fields.problem(
          file,
          node.members().get("overV"),
          "over nominalV " + Numbers.text(Math.abs(rail.nominalV())) + " V",
          "Write a larger overV.");
    }
  }

  private void path(JobSheet.SignalPath path) throws SheetException {
    if (path == null) {
      return;
    }
    Set<String> names = new HashSet<>();
    path.points().forEach(point -> names.add(point.name()));
    Set<String> modes = new HashSet<>();
    path.modes().forEach(mode -> modes.add(mode.name()));
    Fields fields = Fields.of(file, top.at("path"), Keys.PATH);
    for (Node joint : fields.items("joints")) {
      known(joint.members().get("from"), names, "point");
      known(joint.members().get("to"), names, "point");
      Node carries = joint.members().get("modes");
      for (Node mode : carries == null ? List.<Node>of() : carries.items()) {
        known(mode, modes, "mode");
      }
    }
    for (Node mode : fields.items("modes")) {
      known(mode.members().get("source"), names, "point");
    }
    for (Node point : fields.items("points")) {
      Node levels = point.members().get("byMode");
      for (Node level : levels == null ? List.<Node>of() : levels.items()) {
        known(level.members().get("mode"), modes, "mode");
      }
    }
  }

  private void known(Node node, Set<String> names, String what) throws SheetException {
    if (!names.contains(node.value())) {
      throw Fields.problem(
          file,
          node,
          "the name of a " + what + " of the path",
          names.isEmpty()
              ? "Add the " + what + " first."
              : "Did you mean \"" + Nearest.to((String) node.value(), names) + "\"?");
    }
  }
}
