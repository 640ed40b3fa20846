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
        now,
        s.closedMs(),
        now - s.closedMs(),
        s.supplyA(),
        s.supplyV(),
        s.rails(),
        s.headDbv(),
        s.headUa(),
        s.meterDbv(),
        s.headBelowMeterDb(),
        s.limits(),
        s.alarms(),
        s.look(),
        s.trip(),
        s.link(),
        s.log(),
        s.marks(),
        s.questions(),
        s.notWatched(),
        s.course(),
        s.replay(),
        s.summary());
  }
}
