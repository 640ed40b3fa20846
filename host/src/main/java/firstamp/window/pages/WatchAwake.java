package firstamp.window.pages;

import firstamp.app.SleepInhibitor;
import firstamp.bench.Snapshot;
import firstamp.model.text.Worded;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/** Keeps the computer awake while a set is watched, on a thread of its own. */
final class WatchAwake {
  private final SleepInhibitor awake;
  private final ExecutorService keeping =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "window-awake");
            thread.setDaemon(true);
            return thread;
          });
  private boolean kept;

  /**
   * A keeper.
   *
   * @param wanted false = the computer may fall asleep
   */
  WatchAwake(boolean wanted) {
    awake = wanted ? SleepInhibitor.ofThisSystem() : null;
  }

  /** Why the computer may fall asleep; null = nothing to say. */
  Worded problem() {
    return awake == null ? null : awake.problem();
  }

  void follow(Snapshot now) {
    boolean wanted =
        awake != null
            && now.kind() != Snapshot.Kind.REPLAY
            && now.phase() != Snapshot.Phase.ENDED
            && now.phase() != Snapshot.Phase.CONNECTING;
    if (wanted != kept) {
      kept = wanted;
      keeping.execute(wanted ? awake::keep : awake::let);
    }
  }

  /** Nothing is watched any longer. */
  void end() {
    if (kept) {
      kept = false;
      keeping.execute(awake::let);
    }
    keeping.shutdown();
  }
}
