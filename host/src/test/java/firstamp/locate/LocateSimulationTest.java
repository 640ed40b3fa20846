package firstamp.locate;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.locate.odds.Information;
import firstamp.locate.signal.FaultSettings;
import firstamp.locate.signal.JointKind;
import firstamp.locate.signal.LocateAnswer;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.signal.Observation;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Random faults on random chains, against two bounds from outside: no method needs fewer two-way
 * answers on average than the entropy of the odds (Shannon 1948), and stepping from end to end
 * needs as many as there are joints before the fault.
 */
class LocateSimulationTest {
  private record Row(
      int joints, int runs, int right, double mean, int worst, double bound, double step) {}

  private static Row run(int joints, int runs, long seed) {
    Random random = new Random(seed);
    int right = 0;
    int sum = 0;
    int worst = 0;
    double bound = 0;
    double step = 0;
    FaultSettings usual = FaultSettings.usual();
    FaultSettings settings =
        new FaultSettings(
            usual.noFaultShare(), usual.pairShare(), 0, usual.slipShare(), usual.decidedShare());
    JointKind[] kinds = JointKind.values();
    for (int run = 0; run < runs; run++) {
      double[] weights = new double[joints];
      double whole = 0;
      for (int at = 0; at < joints; at++) {
        weights[at] = kinds[random.nextInt(kinds.length)].weight();
        whole += weights[at];
      }
      double drawn = random.nextDouble() * whole;
      int fault = 0;
      while (fault < joints - 1 && drawn >= weights[fault]) {
        drawn -= weights[fault++];
      }
      double lossDb = 6 * StrictMath.pow(10, random.nextDouble());
      double[] shares = new double[joints];
      for (int at = 0; at < joints; at++) {
        shares[at] = weights[at] / whole;
      }
      bound += Information.entropyBits(shares);
      step += Math.min(fault + 1, joints - 1);
      LocateSession session =
          Chains.session(Chains.of(weights), settings)
              .with(new Observation.Heard("P" + joints, null, null, false));
      LocateAnswer answer = session.answer();
      int asked = 0;
      while (answer.state() == LocateAnswer.State.MEASURE && asked < 100) {
        int point = Integer.parseInt(answer.next().point().substring(1));
        double level = -20 - (point > fault ? lossDb : 0) + random.nextGaussian();
        session = session.with(new Observation.Level("P" + point, null, null, level, 1));
        answer = session.answer();
        asked++;
      }
      sum += asked;
      worst = Math.max(worst, asked);
      if (answer.state() == LocateAnswer.State.FOUND
          && answer.odds().get(0).joint().equals("J" + (fault + 1))) {
        right++;
      }
    }
    return new Row(joints, runs, right, sum / (double) runs, worst, bound / runs, step / runs);
  }

  private static void check(int[] sizes, int runs) {
    int right = 0;
    int all = 0;
    for (int joints : sizes) {
      Row row = run(joints, runs, 20_250 + joints);
      System.out.printf(
          "| %d | %d | %.2f %% | %.2f | %d | %.2f | %.2f |%n",
          row.joints(),
          row.runs(),
          100.0 * row.right() / row.runs(),
          row.mean(),
          row.worst(),
          row.bound(),
          row.step());
      right += row.right();
      all += row.runs();
      assertThat(row.mean()).as("%d joints", joints).isLessThanOrEqualTo(2 * row.bound());
      // A search that asks for one point again and again would end at the 100 that are allowed.
      assertThat(row.worst()).as("%d joints", joints).isLessThan(25);
      assertThat(row.right()).as("%d joints", joints).isGreaterThanOrEqualTo(runs * 97 / 100);
      if (joints >= 10) {
        assertThat(row.mean()).as("%d joints", joints).isLessThan(row.step());
      }
    }
    assertThat(right).as("of %d faults", all).isGreaterThanOrEqualTo(all * 99 / 100);
  }

  @Test
  void namesTheJointOfRandomFaults() {
    check(new int[] {4, 10, 40}, 100);
  }

  @Test
  @Tag("full")
  void namesTheJointOfTenThousandRandomFaults() {
    check(new int[] {4, 6, 8, 10, 15, 20, 30, 40}, 1250);
  }
}
