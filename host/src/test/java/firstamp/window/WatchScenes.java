package firstamp.window;

import firstamp.bench.Snapshot;

/** A scene at an earlier moment. */
final class WatchScenes {
  private WatchScenes() {}

  static Snapshot at(Snapshot s, double now) {
    return new Snapshot(
        s.phase(),
        s.kind(),
        s.powerUp(),
        s.label(),
        s.sheet(),
        s.notice(),
        s.countdownS(),
        new Snapshot.Times(now, s.times().closedMs(), now - s.times().closedMs()),
        new Snapshot.Figures(
            s.figures().supplyA(),
            s.figures().supplyV(),
            s.figures().rails(),
            new Snapshot.Levels(
                s.figures().levels().headDbv(),
                s.figures().levels().headUa(),
                s.figures().levels().meterDbv())),
        s.limits(),
        new Snapshot.Findings(
            s.findings().alarms(),
            s.findings().look(),
            s.findings().trip(),
            s.findings().notWatched(),
            s.findings().summary()),
        s.link(),
        s.log(),
        s.marks(),
        s.questions(),
        s.course(),
        s.replay(),
        Snapshot.Beside.NOTHING);
  }
}
