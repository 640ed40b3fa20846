package firstamp.locate.signal;

import firstamp.locate.odds.OddsWord;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Turns odds over joints into an answer for a person. */
final class LocateWords {
  /** Joints named in a sentence. */
  private static final int NAMED = 3;

  /** Below this share of the first a joint is not named. */
  private static final double WORTH_NAMING = 0.05;

  private final SignalGraph graph;
  private final FaultSettings settings;
  private final Map<String, Reach> reaches;

  LocateWords(SignalGraph graph, FaultSettings settings, Map<String, Reach> reaches) {
    this.graph = graph;
    this.settings = settings;
    this.reaches = reaches;
  }

  static LocateAnswer refused(List<String> alarms, List<Worded> remarks) {
    return new LocateAnswer(
        LocateAnswer.State.REFUSED,
        PathWords.of("refused", String.join("; ", alarms)),
        null,
        List.of(),
        false,
        remarks);
  }

  /** The signal is back where it was missed. */
  LocateAnswer reached(SignalGraph.PathPoint point, LocateSession.Weighed weighed) {
    Worded text = PathWords.of(common(point.name()) ? "reaches.the" : "reaches", point.name());
    List<Integer> order = order(weighed.odds());
    return make(LocateAnswer.State.NOTHING_FOUND, text, null, weighed, order, false);
  }

  /** "the head", but "P3" and "behind the jack". */
  private static boolean common(String point) {
    return point.matches("[a-z].*") && !point.matches("(the|behind|before|after|at|between) .*");
  }

  LocateAnswer answer(LocateSession.Weighed weighed, NextPoint.Choice choice) {
    FaultOdds odds = weighed.odds();
    List<Integer> order = order(odds);
    int first = order.get(0);
    boolean measured = weighed.readings() > 0;
    boolean two = odds.pairsShare() > 0.5;
    if (measured && odds.noFaultShare() >= settings.decidedShare()) {
      return make(
          LocateAnswer.State.NOTHING_FOUND, PathWords.of("carries"), null, weighed, order, two);
    }
    if (measured && odds.share(first) >= settings.decidedShare()) {
      return make(LocateAnswer.State.FOUND, found(odds, order, two), null, weighed, order, two);
    }
    if (choice == null) {
      return make(
          LocateAnswer.State.NOT_TOLD_APART,
          PathWords.of("not-told", PathWords.list(names(odds, order, NAMED), "and")),
          null,
          weighed,
          order,
          two);
    }
    LocateAnswer.Next next = next(odds, order, choice);
    return make(LocateAnswer.State.MEASURE, sentence(next), next, weighed, order, two);
  }

  private Worded found(FaultOdds odds, List<Integer> order, boolean two) {
    SignalGraph.PathJoint joint = graph.joints().get(order.get(0));
    Phrase kind = new Phrase("kind." + joint.kind().id());
    boolean second = two && order.size() > 1;
    return PathWords.of(
        second ? "lost.two" : "lost",
        joint.name(),
        kind,
        joint.from(),
        joint.to(),
        second ? graph.joints().get(order.get(1)).name() : "");
  }

  private Worded sentence(LocateAnswer.Next next) {
    Object point = next.point();
    if (graph.modes().size() > 1) {
      point = new Phrase("switched", point, next.mode());
    }
    if (next.expectedDbv() != null) {
      point = new Phrase("expected", point, next.expectedDbv());
    }
    return PathWords.of(
        "measure",
        point,
        PathWords.list(next.ifThere(), "or"),
        PathWords.list(next.ifGone(), "or"));
  }

  private LocateAnswer.Next next(FaultOdds odds, List<Integer> order, NextPoint.Choice choice) {
    SignalGraph.PathPoint point = graph.points().get(choice.point());
    String mode = choice.mode().name();
    BitSet needed = reaches.get(mode).needed(choice.point());
    return new LocateAnswer.Next(
        point.name(),
        mode,
        point.expectedDbv(mode),
        choice.bits(),
        names(odds, order.stream().filter(joint -> !needed.get(joint)).toList(), NAMED),
        names(odds, order.stream().filter(needed::get).toList(), NAMED));
  }

  private List<Integer> order(FaultOdds odds) {
    List<Integer> order = new ArrayList<>();
    for (int joint = 0; joint < odds.joints(); joint++) {
      order.add(joint);
    }
    order.sort(Comparator.comparingDouble((Integer joint) -> -odds.share(joint)));
    return order;
  }

  private List<String> names(FaultOdds odds, List<Integer> order, int most) {
    List<String> names = new ArrayList<>();
    for (int joint : order) {
      boolean worth =
          names.isEmpty() || odds.share(joint) >= WORTH_NAMING * odds.share(order.get(0));
      if (names.size() < most && worth) {
        names.add(graph.joints().get(joint).name());
      }
    }
    return names;
  }

  private LocateAnswer make(
      LocateAnswer.State state,
      Worded sentence,
      LocateAnswer.Next next,
      LocateSession.Weighed weighed,
      List<Integer> order,
      boolean two) {
    FaultOdds odds = weighed.odds();
    List<LocateAnswer.JointOdds> shown = new ArrayList<>();
    for (int joint : order) {
      double share = odds.share(joint);
      shown.add(
          new LocateAnswer.JointOdds(
              graph.joints().get(joint).name(), share, OddsWord.of(share, order.size())));
    }
    return new LocateAnswer(state, sentence, next, shown, two, weighed.remarks());
  }
}
