package firstamp.window;

import firstamp.bench.Snapshot;
import java.util.List;
import java.util.Map;

/** The states in which a switch is closed or may close. */
enum LiveStates {
  COUNTDOWN,
  LOOK,
  ON,
  ON_AGAIN;

  /** A session in this state; its sheet names a path and unknown wires. */
  FakeSession session() throws ReflectiveOperationException {
    FakeSession session =
        new FakeSession(
            this == ON || this == ON_AGAIN ? FakeSession.Scene.HEALTHY : FakeSession.Scene.ASKING);
    Snapshot now = session.snapshot();
    if (this == COUNTDOWN) {
      now = ChangedSnapshot.of(now, Map.of("questions", List.of(), "countdownS", 3));
    } else if (this == LOOK) {
      now = ChangedSnapshot.of(now, Map.of("questions", List.of(), "phase", Snapshot.Phase.LOOK));
    }
    if (this == ON_AGAIN) {
      // It was given back after a trip, which the snapshot still tells of.
      Snapshot.TripView trip =
          new FakeSession(FakeSession.Scene.SHORT).snapshot().findings().trip();
      now = ChangedSnapshot.of(now, Map.of("trip", trip));
    }
    session.set(Scenes.withThinking(now));
    if (this == COUNTDOWN) {
      session.set(ChangedSnapshot.of(session.snapshot(), Map.of("countdownS", 3)));
    }
    return session;
  }
}
