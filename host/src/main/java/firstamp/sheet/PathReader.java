package firstamp.sheet;

import firstamp.model.JobSheet;
import java.util.ArrayList;
import java.util.List;

/** Reads what the sheet says for thinking: the signal path, and wires of unknown place. */
final class PathReader {
  private PathReader() {}

  static JobSheet.SignalPath path(String file, Fields path) throws SheetException {
    if (path == null) {
      return null;
    }
    List<JobSheet.TestPoint> points = new ArrayList<>();
    for (Node node : path.items("points")) {
      Fields point = named(file, node, Keys.POINT);
      List<JobSheet.ModeLevel> byMode = new ArrayList<>();
      for (Node inner : point.items("byMode")) {
        Fields level = Fields.of(file, inner, Keys.MODE_LEVEL);
        level.needs("mode", "\"mode\":\"record\"");
        level.needs("expectedDbv", "\"expectedDbv\":-30");
        byMode.add(new JobSheet.ModeLevel(level.text("mode"), level.number("expectedDbv")));
      }
      points.add(
          new JobSheet.TestPoint(
              point.text("name"), point.number("expectedDbv"), point.number("effort"), byMode));
    }
    List<JobSheet.Joint> joints = new ArrayList<>();
    for (Node node : path.items("joints")) {
      Fields joint = named(file, node, Keys.JOINT);
      joint.needs("from", "\"from\":\"P1\"");
      joint.needs("to", "\"to\":\"P2\"");
      joints.add(
          new JobSheet.Joint(
              joint.text("name"),
              joint.text("from"),
              joint.text("to"),
              joint.word("kind"),
              joint.texts("modes"),
              joint.number("weight")));
    }
    List<JobSheet.Mode> modes = new ArrayList<>();
    for (Node node : path.items("modes")) {
      Fields mode = named(file, node, Keys.MODE);
      mode.needs("source", "\"source\":\"P1\"");
      modes.add(new JobSheet.Mode(mode.text("name"), mode.text("source")));
    }
    return new JobSheet.SignalPath(points, joints, modes);
  }

  static List<JobSheet.UnknownWire> wires(String file, Fields top) throws SheetException {
    List<JobSheet.UnknownWire> wires = new ArrayList<>();
    for (Node node : top.items("unknownWires")) {
      Fields wire = named(file, node, Keys.WIRE);
      List<JobSheet.Landing> places = new ArrayList<>();
      for (Node place : wire.items("places")) {
        places.add(landing(file, place));
      }
      wires.add(
          new JobSheet.UnknownWire(
              wire.text("name"),
              wire.text("colour"),
              wire.text("build"),
              wire.number("reachMm"),
              wire.text("foundAt"),
              places));
    }
    return wires;
  }

  /** A place: its name alone, or with what is there. */
  private static JobSheet.Landing landing(String file, Node node) throws SheetException {
    if (!node.isObject()) {
      return new JobSheet.Landing(Fields.text(file, node), null, null);
    }
    Fields place = named(file, node, Keys.LANDING);
    return new JobSheet.Landing(place.text("name"), place.word("kind"), place.text("ifWrong"));
  }

  private static Fields named(String file, Node node, java.util.Map<String, Object> keys)
      throws SheetException {
    Fields fields = Fields.of(file, node, keys);
    fields.needs("name", "\"name\":\"P1\"");
    return fields;
  }
}
