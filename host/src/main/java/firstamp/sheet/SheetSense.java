package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;
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
          new Phrase("under", new Quantity(supply.nominalV(), "V")),
          new Phrase("smaller", "minV"));
    }
    if (supply.maxV() != null && supply.maxV() <= supply.nominalV()) {
      throw Fields.problem(
          file,
          node.members().get("maxV"),
          new Phrase("over", new Quantity(supply.nominalV(), "V")),
          new Phrase("larger", "maxV"));
    }
  }

  private void rail(JobSheet.Rail rail, Node node) throws SheetException {
    if (rail.nominalV() != null && Math.abs(rail.nominalV()) < 0.1) {
      throw Fields.problem(
          file, node.members().get("nominalV"), new Phrase("zero"), new Phrase("chassis"));
    }
    if (rail.overV() != null
        && rail.nominalV() != null
        && rail.overV() <= Math.abs(rail.nominalV())) {
      throw Fields.problem(
          file,
          node.members().get("overV"),
          new Phrase("over", new Quantity(Math.abs(rail.nominalV()), "V")),
          new Phrase("larger", "overV"));
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
          new Phrase(what),
          names.isEmpty()
              ? new Phrase(what + ".add")
              : new Phrase("meant", SpellingSuggestion.to((String) node.value(), names)));
    }
  }
}
