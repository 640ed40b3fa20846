package firstamp.locate;

import firstamp.locate.signal.FaultSettings;
import firstamp.locate.signal.JointKind;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.signal.SignalGraph;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/** Straight paths for tests: point 0 to point N, joint n before point n. */
public final class Chains {
  /** Nothing but one fault, certain answers. */
  public static final FaultSettings ONE_FAULT = new FaultSettings(0, 0, 0, 0, 0.97);

  private Chains() {}

  public static SignalGraph of(double... weights) {
    List<SignalGraph.PathPoint> points = new ArrayList<>();
    List<SignalGraph.PathJoint> joints = new ArrayList<>();
    points.add(new SignalGraph.PathPoint("P0", -20.0));
    for (int at = 1; at <= weights.length; at++) {
      points.add(new SignalGraph.PathPoint("P" + at, -20.0));
      joints.add(
          new SignalGraph.PathJoint(
              "J" + at, "P" + (at - 1), "P" + at, JointKind.STAGE, Set.of(), weights[at - 1]));
    }
    return new SignalGraph("chain", List.of(new SignalGraph.Mode("usual", "P0")), points, joints);
  }

  public static SignalGraph even(int joints) {
    double[] weights = new double[joints];
    Arrays.fill(weights, 1);
    return of(weights);
  }

  public static LocateSession session(SignalGraph graph, FaultSettings settings) {
    return new LocateSession(graph, settings, List.of(), List.of());
  }
}
