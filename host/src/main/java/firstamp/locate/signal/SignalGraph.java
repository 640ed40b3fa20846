package firstamp.locate.signal;

import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.model.text.UnfitValue;
import firstamp.model.text.Worded;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A signal path: points that can be measured, joints between them, and the modes of its switches.
 *
 * @param name of the path
 * @param modes at least one; the first is the usual one
 * @param points at least two
 * @param joints directed the way the signal runs
 */
public record SignalGraph(
    String name, List<Mode> modes, List<PathPoint> points, List<PathJoint> joints) {

  /** Checks names and ends. */
  public SignalGraph {
    modes = List.copyOf(modes);
    points = List.copyOf(points);
    joints = List.copyOf(joints);
    if (modes.isEmpty() || points.size() < 2 || joints.isEmpty()) {
      throw PathWords.refusal("path", name);
    }
    Set<String> pointNames = new HashSet<>();
    for (PathPoint point : points) {
      if (!pointNames.add(point.name())) {
        throw PathWords.refusal("two-points", point.name());
      }
    }
    Set<String> modeNames = new HashSet<>();
    for (Mode mode : modes) {
      modeNames.add(mode.name());
      mustBeKnown(pointNames, mode.source(), PathWords.of("refused.source-of-mode", mode.name()));
    }
    Set<String> jointNames = new HashSet<>();
    for (PathJoint joint : joints) {
      if (!jointNames.add(joint.name())) {
        throw PathWords.refusal("two-joints", joint.name());
      }
      mustBeKnown(pointNames, joint.from(), PathWords.of("refused.from-of-joint", joint.name()));
      mustBeKnown(pointNames, joint.to(), PathWords.of("refused.to-of-joint", joint.name()));
      for (String mode : joint.modes()) {
        mustBeKnown(modeNames, mode, PathWords.of("refused.mode-of-joint", joint.name()));
      }
    }
  }

  private static void mustBeKnown(Set<String> known, String name, Worded where) {
    if (!known.contains(name)) {
      throw PathWords.refusal("name", where, name, String.join(", ", known));
    }
  }

  /**
   * A position of the switches.
   *
   * @param name for example record
   * @param source the point that is driven in it
   */
  public record Mode(String name, String source) {}

  /**
   * A point that can be measured.
   *
   * @param name as the person calls it
   * @param expectedDbv level when all is well, null = not known: only "there" or "gone" can be said
   * @param expectedByMode the same where it differs between modes
   * @param effort 1 = a clip reaches it; more = harder (3 = the board must come out)
   */
  public record PathPoint(
      String name, Double expectedDbv, Map<String, Double> expectedByMode, double effort) {
    /** Checks the effort. */
    public PathPoint {
      expectedByMode = Map.copyOf(expectedByMode);
      if (!(effort >= 1 && effort <= 100)) {
        throw PathWords.refusal("effort", name, effort);
      }
    }

    /** A point that a clip reaches. */
    public PathPoint(String name, Double expectedDbv) {
      this(name, expectedDbv, Map.of(), 1);
    }

    /** Level in a mode when all is well, null = not known. */
    public Double expectedDbv(String mode) {
      return expectedByMode.getOrDefault(mode, expectedDbv);
    }
  }

  /**
   * What joins two points.
   *
   * @param name as the person calls it
   * @param from nearer the source
   * @param to further away
   * @param kind of joint
   * @param modes in which it carries the signal, empty = always
   * @param weight before anything is measured; usually the kind's
   */
  public record PathJoint(
      String name, String from, String to, JointKind kind, Set<String> modes, double weight) {
    /** Checks the weight. */
    public PathJoint {
      modes = Set.copyOf(modes);
      if (!(weight > 0 && weight <= 1000)) {
        throw PathWords.refusal("weight", name, weight);
      }
    }

    /** A joint with the weight of its kind that carries the signal always. */
    public PathJoint(String name, String from, String to, JointKind kind) {
      this(name, from, to, kind, Set.of(), kind.weight());
    }

    /** Whether it carries the signal in a mode. */
    public boolean carries(String mode) {
      return modes.isEmpty() || modes.contains(mode);
    }
  }

  /** The mode of a name; null = the usual one. */
  public Mode mode(String wanted) {
    if (wanted == null) {
      return modes.get(0);
    }
    return modes.stream()
        .filter(mode -> mode.name().equals(wanted))
        .findFirst()
        .orElseThrow(() -> unknown("mode", wanted, modes.stream().map(Mode::name).toList()));
  }

  /** Whether a move of the clip is about points, contacts and modes of this path. */
  public boolean knows(ClipMove move) {
    boolean named =
        switch (move.act()) {
          case HELD, THERE, GONE, TYPED ->
              points.stream().anyMatch(point -> point.name().equals(move.name()));
          case STROKE, RESTING, MENDED ->
              joints.stream().anyMatch(joint -> joint.name().equals(move.name()));
          case TOUCHED, LEFT, OFF, BACK -> true;
        };
    return named
        && (move.mode() == null || modes.stream().anyMatch(m -> m.name().equals(move.mode())));
  }

  /** The input that looks at a point or behind a contact, where the move does not say which. */
  public ClipInput inputOf(ClipMove move) {
    if (move.input() != null) {
      return move.input();
    }
    return move.act() == ClipMove.Act.HELD
        ? ClipInput.forLevel(
            points.get(pointIndex(move.name())).expectedDbv(mode(move.mode()).name()))
        : ClipInput.METER;
  }

  /** Index of a point. */
  public int pointIndex(String wanted) {
    for (int at = 0; at < points.size(); at++) {
      if (points.get(at).name().equals(wanted)) {
        return at;
      }
    }
    throw unknown("point", wanted, points.stream().map(PathPoint::name).toList());
  }

  /** Index of a joint. */
  public int jointIndex(String wanted) {
    for (int at = 0; at < joints.size(); at++) {
      if (joints.get(at).name().equals(wanted)) {
        return at;
      }
    }
    throw unknown("joint", wanted, joints.stream().map(PathJoint::name).toList());
  }

  /** Indexes by name, for loops. */
  Map<String, Integer> pointIndexes() {
    Map<String, Integer> indexes = new HashMap<>();
    for (int at = 0; at < points.size(); at++) {
      indexes.put(points.get(at).name(), at);
    }
    return indexes;
  }

  private UnfitValue unknown(String what, String wanted, List<String> known) {
    return PathWords.refusal("no-" + what, name, wanted, String.join(", ", known));
  }
}
