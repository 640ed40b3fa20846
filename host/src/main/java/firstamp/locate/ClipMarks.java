package firstamp.locate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Understands the marks that can be made about one path. Immutable, safe to share. */
public final class ClipMarks {
  private final Map<String, ClipMark> known = new HashMap<>();

  /** Marks about the points and joints of a path. */
  public ClipMarks(SignalGraph graph) {
    for (ClipMark.Act act :
        List.of(ClipMark.Act.OFF, ClipMark.Act.TOUCHED, ClipMark.Act.LEFT, ClipMark.Act.BACK)) {
      add(ClipMark.of(act));
    }
    List<String> modes = new ArrayList<>();
    graph.modes().forEach(mode -> modes.add(mode.name()));
    modes.add(null);
    for (SignalGraph.PathPoint point : graph.points()) {
      for (String mode : modes) {
        add(new ClipMark(ClipMark.Act.THERE, point.name(), mode, null));
        add(new ClipMark(ClipMark.Act.GONE, point.name(), mode, null));
        add(new ClipMark(ClipMark.Act.TYPED, point.name(), mode, null));
        for (ClipInput input : ClipInput.values()) {
          add(new ClipMark(ClipMark.Act.HELD, point.name(), mode, input));
        }
      }
    }
    for (SignalGraph.PathJoint joint : graph.joints()) {
      add(new ClipMark(ClipMark.Act.MENDED, joint.name(), null, null));
      for (ClipInput input : ClipInput.values()) {
        add(new ClipMark(ClipMark.Act.STROKE, joint.name(), null, input));
        add(new ClipMark(ClipMark.Act.RESTING, joint.name(), null, input));
      }
    }
  }

  private void add(ClipMark mark) {
    known.put(mark.text(), mark);
  }

  /** The mark of a text; null if it is about something else. A typed level is read without it. */
  public ClipMark read(String text) {
    int figure = text.lastIndexOf(ClipMark.TYPED_SEPARATOR);
    ClipMark mark = known.get(figure < 0 ? text : text.substring(0, figure));
    boolean typed = mark != null && mark.act() == ClipMark.Act.TYPED;
    return typed == (figure >= 0) ? mark : null;
  }
}
