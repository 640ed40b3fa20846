package firstamp.window.widgets;

import firstamp.locate.signal.SignalGraph;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Where the points of a signal path stand in a drawing: along the signal from left to right, what
 * branches off below, long paths in several bands.
 *
 * @param places of the points that the signal reaches in this mode
 * @param columns of the widest band
 * @param rows of all bands together
 */
public record ChainLayout(Map<String, Cell> places, int columns, int rows) {
  /** Boxes beside each other that are still read from two metres. */
  public static final int MOST_COLUMNS = 6;

  /**
   * A place.
   *
   * @param column from the left
   * @param row from the top
   */
  public record Cell(int column, int row) {}

  public static ChainLayout of(SignalGraph graph, String mode) {
    String source = graph.mode(mode).source();
    Map<String, Integer> depth = depths(graph, mode, source);
    List<String> main = mainWay(graph, mode, depth);
    Map<String, Integer> lane = new HashMap<>();
    Map<Integer, Integer> lanesAt = new HashMap<>();
    for (String point : main) {
      lane.put(point, 0);
      lanesAt.put(depth.get(point), 1);
    }
    int lanes = 1;
    for (SignalGraph.PathPoint point : graph.points()) {
      if (depth.containsKey(point.name()) && !lane.containsKey(point.name())) {
        int at = lanesAt.merge(depth.get(point.name()), 1, Integer::sum) - 1;
        lane.put(point.name(), Math.max(1, at));
        lanes = Math.max(lanes, Math.max(1, at) + 1);
      }
    }
    Map<String, Cell> places = new HashMap<>();
    int columns = 1;
    int rows = 1;
    for (Map.Entry<String, Integer> one : depth.entrySet()) {
      int band = one.getValue() / MOST_COLUMNS;
      Cell cell = new Cell(one.getValue() % MOST_COLUMNS, band * lanes + lane.get(one.getKey()));
      places.put(one.getKey(), cell);
      columns = Math.max(columns, cell.column() + 1);
      rows = Math.max(rows, cell.row() + 1);
    }
    return new ChainLayout(Map.copyOf(places), columns, rows);
  }

  /** Joints from the source to each point, by the longest way without going round. */
  private static Map<String, Integer> depths(SignalGraph graph, String mode, String source) {
    Map<String, Integer> depth = new HashMap<>();
    depth.put(source, 0);
    int most = graph.points().size() - 1;
    boolean changed = true;
    // A way back would make its points deeper for ever: no way is longer than there are points.
    for (int round = 0; changed && round <= most; round++) {
      changed = false;
      for (SignalGraph.PathJoint joint : graph.joints()) {
        Integer from = depth.get(joint.from());
        boolean forward =
            from != null
                && joint.carries(mode)
                && !joint.to().equals(source)
                && joint.kind() != firstamp.locate.signal.JointKind.LOOP;
        if (forward && depth.getOrDefault(joint.to(), -1) < from + 1 && from + 1 <= most) {
          depth.put(joint.to(), from + 1);
          changed = true;
        }
      }
    }
    return depth;
  }

  /** The way to the deepest point: the line on top. */
  private static List<String> mainWay(SignalGraph graph, String mode, Map<String, Integer> depth) {
    String end = null;
    for (SignalGraph.PathPoint point : graph.points()) {
      Integer at = depth.get(point.name());
      if (at != null && (end == null || at > depth.get(end))) {
        end = point.name();
      }
    }
    List<String> way = new ArrayList<>();
    for (String at = end; at != null; at = before(graph, mode, depth, at)) {
      way.add(at);
    }
    return way;
  }

  private static String before(
      SignalGraph graph, String mode, Map<String, Integer> depth, String point) {
    for (SignalGraph.PathJoint joint : graph.joints()) {
      Integer from = depth.get(joint.from());
      if (joint.to().equals(point)
          && joint.carries(mode)
          && from != null
          && from == depth.get(point) - 1) {
        return joint.from();
      }
    }
    return null;
  }
}
