package firstamp.app;

import firstamp.bench.BenchSession;
import java.nio.file.Path;
import java.util.Objects;

/**
 * A session in the window and what stands behind it.
 *
 * @param session live or replayed
 * @param log where its power-up is kept, null = nothing can be read from it
 * @param hearing what is heard of it
 * @param again starts the same once more after a trip that the probe box remembers; null = cannot
 * @param sheet as the person gave it, for the page before with its choice of a port; null = there
 *     is no such page
 * @param afterwards what is left to do once the session is closed (never on the Swing thread)
 */
public record Watched(
    BenchSession session,
    Path log,
    Hearing hearing,
    Again again,
    String sheet,
    Runnable afterwards) {
  /** Checks for null. */
  public Watched {
    Objects.requireNonNull(session, "session");
    Objects.requireNonNull(hearing, "hearing");
    Objects.requireNonNull(afterwards, "afterwards");
  }

  /** Starts a power-up like this one again. */
  @FunctionalInterface
  public interface Again {
    /**
     * Starts it.
     *
     * @param tripNumber that the probe box remembers, 0 = none
     * @throws Exception why it cannot start
     */
    Watched start(int tripNumber) throws Exception;
  }

  /** A session with nothing behind it. */
  public static Watched of(BenchSession session) {
    return new Watched(session, null, Hearing.NOTHING, null, null, () -> {});
  }

  /** A session kept in a log that somebody else closes. */
  public static Watched of(BenchSession session, Path log, Hearing hearing) {
    return new Watched(session, log, hearing, null, null, () -> {});
  }

  public void end() {
    session.close();
    afterwards.run();
  }
}
