package firstamp.bench;

import firstamp.model.text.Worded;
import firstamp.run.LimitMove;
import firstamp.run.LiveRun;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** The limits that the person has moved, and the answer to the latest. Any thread. */
final class MovedLimits {
  private final List<LimitMove> nextTime = new CopyOnWriteArrayList<>();
  private volatile Snapshot.Moved latest;

  /** The latest one; null = none in this power-up. */
  Snapshot.Moved latest() {
    return latest;
  }

  /** Asked of the probe at once. */
  void ask(LimitMove move, LiveRun run) {
    latest = new Snapshot.Moved(move, Snapshot.MoveState.ASKED, null);
    run.limit(move);
  }

  /** Kept for the next power-up; replaces one of the same limit. */
  void keep(LimitMove move) {
    nextTime.removeIf(other -> other.kind() == move.kind() && other.rail() == move.rail());
    nextTime.add(move);
    latest = new Snapshot.Moved(move, Snapshot.MoveState.NEXT_TIME, null);
  }

  void answered(LimitMove move, boolean taken, Worded why) {
    latest =
        new Snapshot.Moved(
            move, taken ? Snapshot.MoveState.TAKEN : Snapshot.MoveState.REFUSED, why);
  }

  /** A power-up begins: it is asked for what was kept. */
  void begin(LiveRun run) {
    latest = null;
    for (LimitMove move : nextTime) {
      run.limit(move);
    }
    nextTime.clear();
  }
}
