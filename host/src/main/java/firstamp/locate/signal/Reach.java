package firstamp.locate.signal;

import java.util.BitSet;
import java.util.List;
import java.util.Map;

/**
 * For one mode and one driven point: the joints that every way to a point goes through.
 *
 * <p>A fault in such a joint lowers the level there. Where two ways lead to a point, one good way
 * is enough, so that a joint on one of them alone lowers nothing.
 */
final class Reach {
  private final BitSet[] needed;

  private Reach(BitSet[] needed) {
    this.needed = needed;
  }

  static Reach of(SignalGraph graph, String mode, String source) {
    List<SignalGraph.PathJoint> joints = graph.joints();
    Map<String, Integer> index = graph.pointIndexes();
    BitSet[] needed = new BitSet[graph.points().size()];
    needed[graph.pointIndex(source)] = new BitSet(joints.size());
    int[] from = joints.stream().mapToInt(joint -> index.get(joint.from())).toArray();
    int[] to = joints.stream().mapToInt(joint -> index.get(joint.to())).toArray();
    int driven = graph.pointIndex(source);
    // Sets only shrink once they exist, so this ends; joints listed along the path need two rounds.
    boolean changed = true;
    while (changed) {
      changed = false;
      for (int joint = 0; joint < from.length; joint++) {
        if (needed[from[joint]] == null || to[joint] == driven) {
          continue;
        }
        if (joints.get(joint).carries(mode)) {
          changed |= through(needed, from[joint], joint, to[joint]);
        }
      }
    }
    return new Reach(needed);
  }

  private static boolean through(BitSet[] needed, int from, int joint, int to) {
    BitSet way = (BitSet) needed[from].clone();
    way.set(joint);
    if (needed[to] == null) {
      needed[to] = way;
      return true;
    }
    int before = needed[to].cardinality();
    needed[to].and(way);
    return needed[to].cardinality() != before;
  }

  /** Whether any signal arrives at a point. */
  boolean arrives(int point) {
    return needed[point] != null;
  }

  /** The joints that every way to a point goes through; not to be changed. */
  BitSet needed(int point) {
    return needed[point];
  }
}
