package firstamp.locate.signal;

import firstamp.locate.odds.Information;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Odds over the joints of a path: no fault, each joint alone, each pair of joints.
 *
 * <p>Exact on the grid of losses. Joints that every reading asks about in the same way cannot be
 * told apart by likelihood, so they form one group, and pairs of joints are summed as pairs of
 * groups; with a few readings there are a few groups, whatever the length of the path. Both ways to
 * a point that has two being at fault together is not considered.
 */
final class FaultOdds {
  private final double[] shares;
  private final double noFaultShare;
  private final double pairsShare;
  private final List<Group> groups;
  private final Units units;

  private FaultOdds(
      double[] shares, double noFault, double pairs, List<Group> groups, Units units) {
    this.shares = shares;
    this.noFaultShare = noFault;
    this.pairsShare = pairs;
    this.groups = groups;
    this.units = units;
  }

  /**
   * Shares per weight, so that the explanations can be divided again for every point.
   *
   * @param weights of the joints
   * @param single of one joint of a group, per weight of the joint
   * @param pair of two joints of two groups, per product of their weights
   */
  private record Units(double[] weights, double[] single, double[][] pair) {}

  /** Joints that the readings do not tell apart, and the loss of a fault in them. */
  record Group(BitSet joints, BitSet askedBy, double[] lossShares) {}

  /**
   * Weighs all explanations.
   *
   * @param weights of the joints, adding up to 1, contact runs included
   */
  static FaultOdds of(double[] weights, Readings readings, FaultSettings settings) {
    List<Group> groups = new ArrayList<>();
    List<double[]> logs = new ArrayList<>();
    for (Map.Entry<BitSet, BitSet> entry : group(weights.length, readings).entrySet()) {
      double[] perLoss = single(entry.getKey(), readings);
      logs.add(perLoss);
      groups.add(new Group(entry.getValue(), entry.getKey(), Information.shares(perLoss)));
    }
    return weigh(weights, readings, settings, groups, logs);
  }

  private static FaultOdds weigh(
      double[] weights,
      Readings readings,
      FaultSettings settings,
      List<Group> groups,
      List<double[]> logs) {
    int count = groups.size();
    double[] mass = new double[count];
    double squares = 0;
    for (int one = 0; one < count; one++) {
      BitSet joints = groups.get(one).joints();
      for (int joint = joints.nextSetBit(0); joint >= 0; joint = joints.nextSetBit(joint + 1)) {
        mass[one] += weights[joint];
        squares += weights[joint] * weights[joint];
      }
    }
    double[] alone = new double[count];
    for (int one = 0; one < count; one++) {
      alone[one] = Information.logSum(logs.get(one)) - StrictMath.log(LossGrid.SIZE);
    }
    double nothing = 0;
    for (int reading = 0; reading < readings.size(); reading++) {
      nothing += readings.none(reading);
    }
    double pairPrior = squares < 1 ? 2 * settings.pairShare() / (1 - squares) : 0;
    double[][] together = new double[count][count];
    double highest = nothing;
    for (int one = 0; one < count; one++) {
      highest = Math.max(highest, alone[one]);
      for (int other = 0; other <= one && pairPrior > 0; other++) {
        together[one][other] = pair(groups.get(one), groups.get(other), readings);
        together[other][one] = together[one][other];
        highest = Math.max(highest, together[one][other]);
      }
    }
    double singlePrior = 1 - settings.noFaultShare() - (pairPrior > 0 ? settings.pairShare() : 0);
    double[] shares = new double[weights.length];
    double noFault = settings.noFaultShare() * StrictMath.exp(nothing - highest);
    double whole = noFault;
    double pairs = 0;
    for (int one = 0; one < count; one++) {
      double single = singlePrior * StrictMath.exp(alone[one] - highest);
      double[] paired = new double[count];
      for (int other = 0; other < count && pairPrior > 0; other++) {
        paired[other] = pairPrior * StrictMath.exp(together[one][other] - highest);
      }
      BitSet joints = groups.get(one).joints();
      for (int joint = joints.nextSetBit(0); joint >= 0; joint = joints.nextSetBit(joint + 1)) {
        double with = 0;
        for (int other = 0; other < count; other++) {
          with += paired[other] * (mass[other] - (other == one ? weights[joint] : 0));
        }
        shares[joint] = weights[joint] * (single + with);
        whole += weights[joint] * (single + with / 2);
        pairs += weights[joint] * with / 2;
      }
    }
    for (int joint = 0; joint < shares.length; joint++) {
      shares[joint] /= whole;
    }
    double[] singleUnit = new double[count];
    for (int one = 0; one < count; one++) {
      singleUnit[one] = singlePrior * StrictMath.exp(alone[one] - highest) / whole;
      for (int other = 0; other < count && pairPrior > 0; other++) {
        together[one][other] = pairPrior * StrictMath.exp(together[one][other] - highest) / whole;
      }
    }
    Units units = new Units(weights.clone(), singleUnit, together);
    return new FaultOdds(shares, noFault / whole, pairs / whole, List.copyOf(groups), units);
  }

  /** Groups of joints by the readings that ask about them. */
  private static Map<BitSet, BitSet> group(int joints, Readings readings) {
    Map<BitSet, BitSet> groups = new LinkedHashMap<>();
    for (int joint = 0; joint < joints; joint++) {
      BitSet askedBy = new BitSet();
      for (int reading = 0; reading < readings.size(); reading++) {
        askedBy.set(reading, readings.asked(reading).get(joint));
      }
      groups.computeIfAbsent(askedBy, key -> new BitSet()).set(joint);
    }
    return groups;
  }

  private static double[] single(BitSet askedBy, Readings readings) {
    double[] logs = new double[LossGrid.SIZE];
    for (int reading = 0; reading < readings.size(); reading++) {
      for (int loss = 0; loss < logs.length; loss++) {
        logs[loss] +=
            askedBy.get(reading) ? readings.single(reading, loss) : readings.none(reading);
      }
    }
    return logs;
  }

  private static double pair(Group one, Group other, Readings readings) {
    double[] logs = new double[LossGrid.SIZE * LossGrid.SIZE];
    for (int reading = 0; reading < readings.size(); reading++) {
      boolean first = one.askedBy().get(reading);
      boolean second = other.askedBy().get(reading);
      for (int a = 0; a < LossGrid.SIZE; a++) {
        for (int b = 0; b < LossGrid.SIZE; b++) {
          double log;
          if (first && second) {
            log = readings.pair(reading, a, b);
          } else if (first || second) {
            log = readings.single(reading, first ? a : b);
          } else {
            log = readings.none(reading);
          }
          logs[a * LossGrid.SIZE + b] += log;
        }
      }
    }
    return Information.logSum(logs) - 2 * StrictMath.log(LossGrid.SIZE);
  }

  /**
   * Shares of what a level at a point can be the sign of: a fault of each group among these joints,
   * and last "nothing lost there", which also holds when the joints at fault are others. Two joints
   * at fault count once, with the earlier group that the point lies behind.
   *
   * @param needed joints that every way to the point goes through
   */
  double[] behind(BitSet needed) {
    int count = groups.size();
    double[] inside = new double[count];
    double[] outside = new double[count];
    double[] insideSquares = new double[count];
    for (int one = 0; one < count; one++) {
      BitSet joints = groups.get(one).joints();
      for (int joint = joints.nextSetBit(0); joint >= 0; joint = joints.nextSetBit(joint + 1)) {
        double weight = units.weights()[joint];
        if (needed.get(joint)) {
          inside[one] += weight;
          insideSquares[one] += weight * weight;
        } else {
          outside[one] += weight;
        }
      }
    }
    double[] found = new double[count + 1];
    double lost = 0;
    for (int one = 0; one < count; one++) {
      found[one] += units.single()[one] * inside[one];
      for (int other = 0; other < count; other++) {
        double unit = units.pair()[one][other];
        found[one] += unit * inside[one] * outside[other];
        if (other > one) {
          found[one] += unit * inside[one] * inside[other];
        } else if (other == one) {
          found[one] += unit * (inside[one] * inside[one] - insideSquares[one]) / 2;
        }
      }
      lost += found[one];
    }
    found[count] = Math.max(0, 1 - lost);
    return found;
  }

  /** Share of the explanations in which a joint is at fault. */
  double share(int joint) {
    return shares[joint];
  }

  /** Share of "nothing in this path". */
  double noFaultShare() {
    return noFaultShare;
  }

  /** Share of the explanations with two joints. */
  double pairsShare() {
    return pairsShare;
  }

  /** Joints that the readings do not tell apart. */
  List<Group> groups() {
    return groups;
  }

  /** The most likely joint. */
  int first() {
    int best = 0;
    for (int joint = 1; joint < shares.length; joint++) {
      if (shares[joint] > shares[best]) {
        best = joint;
      }
    }
    return best;
  }

  int joints() {
    return shares.length;
  }
}
