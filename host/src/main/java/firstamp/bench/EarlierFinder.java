package firstamp.bench;

import firstamp.log.LogException;
import firstamp.study.EarlierPowerUp;
import firstamp.trend.LoggedCourse;
import java.util.Objects;

/**
 * Finds the power-up to be drawn behind, on a thread of its own, {@code earlier}: that must never
 * hold up a power-up. All methods may be called from any thread.
 */
final class EarlierFinder {
  private final EarlierSource source;
  private final Thread thread = new Thread(this::find, "earlier");
  private volatile EarlierPowerUp found;
  private volatile boolean closing;

  EarlierFinder(EarlierSource source) {
    this.source = Objects.requireNonNull(source, "earlierSource");
    thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  /** What was found; null = nothing, or not yet. */
  EarlierPowerUp found() {
    return found;
  }

  /** What cannot be read is not drawn. */
  private void find() {
    try {
      found = source.find();
      if (closing) {
        release();
      }
    } catch (LogException unreadable) {
      found = null;
    }
  }

  /** Before {@link #join}: what is found from now on is let go of at once. */
  void closing() {
    closing = true;
  }

  void join(long millis) throws InterruptedException {
    thread.join(millis);
  }

  /** Lets go of what was found. */
  void release() {
    if (found != null && found.course() instanceof LoggedCourse course) {
      course.close();
    }
  }
}
