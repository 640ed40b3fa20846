package firstamp.benchmarks;

import firstamp.locate.signal.JointKind;
import firstamp.locate.signal.LocateAnswer;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.signal.Observation;
import firstamp.locate.signal.SignalGraph;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;

/**
 * How long the search for a lost signal takes for one answer on a path of 200 joints with two
 * modes: median, 95 % and longest of all answers of 60 searches after 40 to warm up.
 */
public final class LocateBenchmark {
  private static final int JOINTS = 200;
  private static final int WARM_UP = 40;
  private static final int SEARCHES = 100;
  private static final int MOST = 20;

  private LocateBenchmark() {}

  /** Runs it. */
  public static void main(String[] arguments) {
    SignalGraph graph = graph();
    Random random = new Random(3);
    List<Double> millis = new ArrayList<>();
    for (int search = 0; search < SEARCHES; search++) {
      int fault = 1 + random.nextInt(JOINTS);
      List<Double> times = search(graph, fault, random);
      if (search >= WARM_UP) {
        millis.addAll(times);
      }
    }
    double[] sorted = millis.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    System.out.printf(
        "%d joints, 2 modes, %d answers: median %.1f ms, 95 %% under %.1f ms, longest %.1f ms%n",
        JOINTS,
        sorted.length,
        sorted[sorted.length / 2],
        sorted[sorted.length * 95 / 100],
        sorted[sorted.length - 1]);
  }

  /** A chain; in the second mode it is driven in its middle. */
  private static SignalGraph graph() {
    JointKind[] kinds = JointKind.values();
    List<SignalGraph.PathPoint> points = new ArrayList<>();
    List<SignalGraph.PathJoint> joints = new ArrayList<>();
    points.add(new SignalGraph.PathPoint("P0", -20.0));
    for (int at = 1; at <= JOINTS; at++) {
      points.add(new SignalGraph.PathPoint("P" + at, -20.0, Map.of(), 1 + at % 3));
      JointKind kind = kinds[at % 6];
      joints.add(
          new SignalGraph.PathJoint(
              "J" + at, "P" + (at - 1), "P" + at, kind, Set.of(), kind.weight()));
    }
    return new SignalGraph(
        "two hundred joints",
        Arrays.asList(
            new SignalGraph.Mode("record", "P0"), new SignalGraph.Mode("play", "P" + JOINTS / 2)),
        points,
        joints);
  }

  private static List<Double> search(SignalGraph graph, int fault, Random random) {
    List<Double> millis = new ArrayList<>();
    LocateSession session =
        LocateSession.start(graph).with(new Observation.Heard("P" + JOINTS, null, null, false));
    LocateAnswer answer = timed(session, millis);
    while (answer.state() == LocateAnswer.State.MEASURE && millis.size() < MOST) {
      int point = Integer.parseInt(answer.next().point().substring(1));
      int source = answer.next().mode().equals("play") ? JOINTS / 2 : 0;
      double lostDb = fault > source && point >= fault ? 30 : 0;
      double dbv = -20 - lostDb + random.nextGaussian();
      session =
          session.with(new Observation.Level("P" + point, answer.next().mode(), null, dbv, 1));
      answer = timed(session, millis);
    }
    return millis;
  }

  private static LocateAnswer timed(LocateSession session, List<Double> millis) {
    long begin = System.nanoTime();
    LocateAnswer answer = session.answer();
    millis.add((System.nanoTime() - begin) / 1e6);
    return answer;
  }
}
