package firstamp.locate.signal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What counts once something was mended: whether the signal is back where it was missed.
 *
 * @param reached the point that was missed and shows what is expected now, null = not yet
 * @param toCheck where to look first, null = something was measured since
 */
record AfterMending(SignalGraph.PathPoint reached, NextPoint.Choice toCheck) {
  /** A level this many deviations below the expected one is not as expected. */
  private static final double SIGMAS = 2;

  /** A point in a mode, driven where. */
  private record Place(String point, String mode, String from) {}

  /** Null where nothing was mended. */
  static AfterMending of(LocateSession session) {
    int last = -1;
    for (int at = 0; at < session.observations().size(); at++) {
      last = session.observations().get(at) instanceof Observation.Mended ? at : last;
    }
    if (last < 0) {
      return null;
    }
    List<Place> missed = new ArrayList<>();
    read(session, session.observations().subList(0, last))
        .forEach((place, there) -> addUnless(there, place, missed));
    Map<Place, Boolean> since =
        read(session, session.observations().subList(last, session.observations().size()));
    if (missed.isEmpty()) {
      return new AfterMending(null, null);
    }
    Place complaint = missed.get(0);
    SignalGraph graph = session.graph();
    int point = graph.pointIndex(complaint.point());
    if (since.isEmpty()) {
      return new AfterMending(null, new NextPoint.Choice(point, graph.mode(complaint.mode()), 1));
    }
    boolean back = Boolean.TRUE.equals(since.get(complaint)) && !since.containsValue(false);
    return new AfterMending(back ? graph.points().get(point) : null, null);
  }

  private static void addUnless(boolean there, Place place, List<Place> missed) {
    if (!there) {
      missed.add(place);
    }
  }

  /** Whether the signal is as expected, by place, the first complaint first; the latest counts. */
  private static Map<Place, Boolean> read(LocateSession session, List<Observation> some) {
    Map<Place, Boolean> read = new LinkedHashMap<>();
    for (Observation one : some) {
      if (one instanceof Observation.Heard heard) {
        read.put(place(session, heard.point(), heard.mode(), heard.from()), heard.there());
      } else if (one instanceof Observation.Level level) {
        Place place = place(session, level.point(), level.mode(), level.from());
        read.put(place, asExpected(session, level));
      }
    }
    return read;
  }

  private static Place place(LocateSession session, String point, String mode, String from) {
    SignalGraph.Mode known = session.graph().mode(mode);
    return new Place(point, known.name(), from == null ? known.source() : from);
  }

  private static boolean asExpected(LocateSession session, Observation.Level level) {
    SignalGraph graph = session.graph();
    Double expected =
        graph
            .points()
            .get(graph.pointIndex(level.point()))
            .expectedDbv(graph.mode(level.mode()).name());
    double sigmaDb = StrictMath.hypot(level.uncertaintyDb(), session.settings().toleranceDb());
    return expected != null && expected - level.levelDbv() <= SIGMAS * sigmaDb;
  }
}
