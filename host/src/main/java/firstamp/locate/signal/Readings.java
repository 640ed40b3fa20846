package firstamp.locate.signal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/** The levels of a run as likelihoods, and which joints each of them asks about. */
public final class Readings {
  private final List<BitSet> asked = new ArrayList<>();
  private final List<double[]> single = new ArrayList<>();
  private final List<double[][]> pair = new ArrayList<>();
  private final List<Double> none = new ArrayList<>();
  private final LossGrid grid;

  Readings(LossGrid grid) {
    this.grid = grid;
  }

  int size() {
    return none.size();
  }

  /** Joints that every way to the point of a reading goes through. */
  BitSet asked(int reading) {
    return asked.get(reading);
  }

  double none(int reading) {
    return none.get(reading);
  }

  double single(int reading, int loss) {
    return single.get(reading)[loss];
  }

  double pair(int reading, int one, int other) {
    return pair.get(reading)[one][other];
  }

  void addLevel(BitSet joints, double belowDb, double sigmaDb, double slipShare) {
    double[] alone = new double[LossGrid.SIZE];
    double[][] both = new double[LossGrid.SIZE][LossGrid.SIZE];
    for (int one = 0; one < LossGrid.SIZE; one++) {
      alone[one] = grid.lost(belowDb, one, sigmaDb, slipShare);
      for (int other = 0; other <= one; other++) {
        both[one][other] = grid.lost(belowDb, one, other, sigmaDb, slipShare);
        both[other][one] = both[one][other];
      }
    }
    add(joints, LossGrid.unlost(belowDb, sigmaDb, slipShare), alone, both);
  }

  void addAtMost(BitSet joints, double belowDb, double sigmaDb, double slipShare) {
    double[] alone = new double[LossGrid.SIZE];
    double[][] both = new double[LossGrid.SIZE][LossGrid.SIZE];
    for (int one = 0; one < LossGrid.SIZE; one++) {
      alone[one] = grid.lostAtMost(belowDb, one, -1, sigmaDb, slipShare);
      for (int other = 0; other <= one; other++) {
        both[one][other] = grid.lostAtMost(belowDb, one, other, sigmaDb, slipShare);
        both[other][one] = both[one][other];
      }
    }
    add(joints, LossGrid.unlostAtMost(belowDb, sigmaDb, slipShare), alone, both);
  }

  void addHeard(BitSet joints, boolean there) {
    double[] alone = new double[LossGrid.SIZE];
    double[][] both = new double[LossGrid.SIZE][LossGrid.SIZE];
    double lost = LossGrid.heard(there, true);
    for (int one = 0; one < LossGrid.SIZE; one++) {
      alone[one] = lost;
      Arrays.fill(both[one], lost);
    }
    add(joints, LossGrid.heard(there, false), alone, both);
  }

  private void add(BitSet joints, double nothing, double[] alone, double[][] both) {
    asked.add(joints);
    none.add(nothing);
    single.add(alone);
    pair.add(both);
  }
}
