package firstamp.locate.signal;

import firstamp.model.text.Worded;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The search for a lost signal: a path, and what was measured along it so far.
 *
 * <p>Immutable; the same observations in the same order give the same answer. Threads can share it.
 *
 * @param graph the path
 * @param settings assumptions
 * @param railAlarms active alarms of rails; while there is one nothing is searched
 * @param observations in the order they came
 */
public record LocateSession(
    SignalGraph graph,
    FaultSettings settings,
    List<String> railAlarms,
    List<Observation> observations) {
  /** Uncertainty assumed before anything was read, dB. */
  private static final double USUAL_UNCERTAINTY_DB = 0.5;

  /** A joint just mended is rarely the next one at fault. */
  private static final double MENDED_FACTOR = 0.2;

  /** Copies the lists. */
  public LocateSession {
    railAlarms = List.copyOf(railAlarms);
    observations = List.copyOf(observations);
  }

  /** A search that begins. */
  public static LocateSession start(SignalGraph graph) {
    return new LocateSession(graph, FaultSettings.usual(), List.of(), List.of());
  }

  /** The search with one more observation; refuses one that does not fit the path. */
  public LocateSession with(Observation observation) {
    List<Observation> more = new ArrayList<>(observations);
    more.add(observation);
    // On its own it is refused for the same reasons as behind the others.
    new LocateSession(graph, settings, List.of(), List.of(observation)).weigh(new LossGrid());
    return new LocateSession(graph, settings, railAlarms, more);
  }

  /** The search without the last observation. */
  public LocateSession undo() {
    if (observations.isEmpty()) {
      throw PathWords.refusal("nothing-to-take-back");
    }
    return new LocateSession(
        graph, settings, railAlarms, observations.subList(0, observations.size() - 1));
  }

  /** The search with these rail alarms active. */
  public LocateSession withRailAlarms(List<String> standing) {
    return new LocateSession(graph, settings, standing, observations);
  }

  /** State of the search. */
  public LocateAnswer answer() {
    LossGrid grid = new LossGrid();
    Weighed weighed = weigh(grid);
    if (!railAlarms.isEmpty()) {
      return LocateWords.refused(railAlarms, weighed.remarks());
    }
    Map<String, Reach> reaches = new HashMap<>();
    for (SignalGraph.Mode mode : graph.modes()) {
      reaches.put(mode.name(), Reach.of(graph, mode.name(), mode.source()));
    }
    LocateWords words = new LocateWords(graph, settings, reaches);
    AfterMending mended = AfterMending.of(this);
    if (mended != null && mended.reached() != null) {
      return words.reached(mended.reached(), weighed);
    }
    NextPoint.Choice choice =
        new NextPoint(graph, reaches, grid).best(weighed.odds(), weighed.sigmaDb());
    if (mended != null && mended.toCheck() != null) {
      choice = mended.toCheck();
    }
    return words.answer(weighed, choice);
  }

  /** Odds after all observations. */
  record Weighed(FaultOdds odds, double sigmaDb, int readings, List<Worded> remarks) {}

  private Weighed weigh(LossGrid grid) {
    double[] weights = new double[graph.joints().size()];
    for (int joint = 0; joint < weights.length; joint++) {
      weights[joint] = graph.joints().get(joint).weight();
    }
    Readings readings = new Readings(grid);
    Map<String, Reach> reaches = new HashMap<>();
    Map<String, List<Worded>> remarks = new LinkedHashMap<>();
    double uncertaintyDb = USUAL_UNCERTAINTY_DB;
    for (Observation observation : observations) {
      if (observation instanceof Observation.Mended mended) {
        weights[graph.jointIndex(mended.joint())] *= MENDED_FACTOR;
        readings = new Readings(grid);
        Worded said = PathWords.of("mended.counts", mended.joint());
        remarks.put(mended.joint(), new ArrayList<>(List.of(said)));
      } else if (observation instanceof Observation.Level level) {
        uncertaintyDb = level.uncertaintyDb();
        addLevel(readings, reaches, level);
      } else if (observation instanceof Observation.Heard heard) {
        Reach reach = reach(reaches, heard.point(), heard.mode(), heard.from());
        readings.addHeard(reach.needed(graph.pointIndex(heard.point())), heard.there());
      } else if (observation instanceof Observation.Strokes strokes) {
        ContactRun run = ContactRun.strokes(strokes.joint(), strokes.levelsDb());
        weights[graph.jointIndex(strokes.joint())] *= run.factor();
        remarks.computeIfAbsent(strokes.joint(), key -> new ArrayList<>()).add(run.sentence());
      } else if (observation instanceof Observation.Taps taps) {
        ContactRun run = ContactRun.taps(taps.joint(), taps.quietDb(), taps.touchedDb());
        weights[graph.jointIndex(taps.joint())] *= run.factor();
        remarks.computeIfAbsent(taps.joint(), key -> new ArrayList<>()).add(run.sentence());
      }
    }
    double sum = 0;
    for (double weight : weights) {
      sum += weight;
    }
    for (int joint = 0; joint < weights.length; joint++) {
      weights[joint] /= sum;
    }
    double sigmaDb = StrictMath.hypot(uncertaintyDb, settings.toleranceDb());
    return new Weighed(
        FaultOdds.of(weights, readings, settings),
        sigmaDb,
        readings.size(),
        remarks.values().stream().flatMap(List::stream).toList());
  }

  private void addLevel(Readings readings, Map<String, Reach> reaches, Observation.Level level) {
    Reach reach = reach(reaches, level.point(), level.mode(), level.from());
    int point = graph.pointIndex(level.point());
    Double expected = graph.points().get(point).expectedDbv(graph.mode(level.mode()).name());
    if (expected == null) {
      throw PathWords.refusal("no-level", level.point());
    }
    double sigmaDb = StrictMath.hypot(level.uncertaintyDb(), settings.toleranceDb());
    double belowDb = expected - level.levelDbv();
    if (level.atMost()) {
      readings.addAtMost(reach.needed(point), belowDb, sigmaDb, settings.slipShare());
    } else {
      readings.addLevel(reach.needed(point), belowDb, sigmaDb, settings.slipShare());
    }
  }

  private Reach reach(Map<String, Reach> reaches, String point, String modeName, String from) {
    SignalGraph.Mode mode = graph.mode(modeName);
    String source = from == null ? mode.source() : from;
    Reach reach =
        reaches.computeIfAbsent(
            mode.name() + '\n' + source, key -> Reach.of(graph, mode.name(), source));
    if (!reach.arrives(graph.pointIndex(point))) {
      throw PathWords.refusal("no-way", mode.name(), source, point);
    }
    return reach;
  }
}
