package firstamp.locate;

import firstamp.locate.signal.JointKind;
import firstamp.locate.signal.SignalGraph;
import firstamp.locate.wire.LandingPlace;
import firstamp.locate.wire.LooseWire;
import firstamp.locate.wire.PlaceKind;
import firstamp.locate.wire.SetFacts;
import firstamp.locate.wire.WireCase;
import firstamp.model.JobSheet;
import firstamp.model.text.UnfitValue;
import firstamp.model.text.Worded;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The signal path and the unknown wires that a job sheet names. */
public final class SheetPath {
  private static final String USUAL_MODE = "usual";

  private SheetPath() {}

  /** Whether the sheet says enough to look for a lost signal. */
  public static boolean hasPath(JobSheet sheet) {
    return sheet.path() != null
        && sheet.path().points().size() >= 2
        && !sheet.path().joints().isEmpty();
  }

  /**
   * The path of a sheet.
   *
   * @throws IllegalArgumentException there is none, or it makes no path
   */
  public static SignalGraph graph(JobSheet sheet) {
    if (!hasPath(sheet)) {
      throw new UnfitValue(
          Worded.of("firstamp.locate.path", "refused.sheet.no-path", sheet.set().name()));
    }
    JobSheet.SignalPath path = sheet.path();
    List<SignalGraph.Mode> modes = new ArrayList<>();
    path.modes().forEach(mode -> modes.add(new SignalGraph.Mode(mode.name(), mode.source())));
    if (modes.isEmpty()) {
      modes.add(new SignalGraph.Mode(USUAL_MODE, path.points().get(0).name()));
    }
    List<SignalGraph.PathPoint> points = new ArrayList<>();
    for (JobSheet.TestPoint point : path.points()) {
      Map<String, Double> byMode = new HashMap<>();
      point.byMode().forEach(level -> byMode.put(level.mode(), level.expectedDbv()));
      points.add(
          new SignalGraph.PathPoint(
              point.name(),
              point.expectedDbv(),
              byMode,
              point.effort() == null ? 1 : point.effort()));
    }
    List<SignalGraph.PathJoint> joints = new ArrayList<>();
    for (JobSheet.Joint joint : path.joints()) {
      JointKind kind = joint.kind() == null ? JointKind.STAGE : JointKind.of(joint.kind());
      joints.add(
          new SignalGraph.PathJoint(
              joint.name(),
              joint.from(),
              joint.to(),
              kind,
              Set.copyOf(joint.modes()),
              joint.weight() == null ? kind.weight() : joint.weight()));
    }
    return new SignalGraph(sheet.set().name(), modes, points, joints);
  }

  /**
   * The unknown wires of a sheet with their places.
   *
   * @param effective with defaults filled in
   * @throws IllegalArgumentException there is none
   */
  public static WireCase wires(JobSheet effective) {
    if (effective.unknownWires().isEmpty()) {
      throw new UnfitValue(
          Worded.of("firstamp.locate.path", "refused.sheet.no-wires", effective.set().name()));
    }
    List<LooseWire> wires = new ArrayList<>();
    Map<String, LandingPlace> places = new java.util.LinkedHashMap<>();
    for (JobSheet.UnknownWire wire : effective.unknownWires()) {
      wires.add(
          new LooseWire(
              wire.name(),
              wire.colour(),
              wire.build(),
              wire.reachMm(),
              wire.foundAt(),
              wire.places().stream().map(JobSheet.Landing::name).toList()));
      for (JobSheet.Landing landing : wire.places()) {
        PlaceKind kind = kind(effective, landing);
        LandingPlace place = new LandingPlace(landing.name(), kind, landing.ifWrong());
        places.merge(landing.name(), place, SheetPath::richer);
      }
    }
    return new WireCase(facts(effective), wires, List.copyOf(places.values()), List.of());
  }

  private static LandingPlace richer(LandingPlace one, LandingPlace other) {
    PlaceKind kind = one.kind() == PlaceKind.NOT_SAID ? other.kind() : one.kind();
    return new LandingPlace(
        one.name(), kind, one.ifWrong() == null ? other.ifWrong() : one.ifWrong());
  }

  /** What is there: as said, else as the rest of the sheet knows the name. */
  private static PlaceKind kind(JobSheet sheet, JobSheet.Landing landing) {
    if (landing.kind() != null) {
      return PlaceKind.of(landing.kind());
    }
    if (landing.name().equals("chassis")) {
      return PlaceKind.CHASSIS;
    }
    if (sheet.rails().stream().anyMatch(rail -> landing.name().equals(rail.name()))) {
      return PlaceKind.RAIL;
    }
    boolean point =
        hasPath(sheet)
            && sheet.path().points().stream().anyMatch(one -> one.name().equals(landing.name()));
    return point ? PlaceKind.SIGNAL : PlaceKind.NOT_SAID;
  }

  private static SetFacts facts(JobSheet sheet) {
    JobSheet.Supply supply = sheet.supply();
    Double runningA = sheet.limits() == null ? null : sheet.limits().runningA();
    Double limit = runningA != null ? runningA : supply.limitA();
    if (limit == null) {
      throw new UnfitValue(
          Worded.of("firstamp.locate.path", "refused.sheet.no-limit", sheet.set().name()));
    }
    return new SetFacts(
        sheet.set().name(),
        sheet.set().chassis() == null ? "negative" : sheet.set().chassis(),
        supply.nominalV(),
        limit,
        supply.idleA());
  }
}
