package firstamp.log;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.concurrent.atomic.AtomicReference;

/**
 * Keeps one reading connection between calls, with its prepared statements: what a new one costs
 * (files beside the log, reading the tables' definitions) is more than what drawing a short span
 * takes.
 *
 * <p>It holds no transaction while it is idle, so nothing waits for it. Safe to share: a second
 * caller at the same time gets a connection of its own.
 */
final class IdleConnection {
  private final Path file;
  private final AtomicReference<Statements> idle = new AtomicReference<>();
  private volatile boolean closed;

  /** Something to read. */
  @FunctionalInterface
  interface Reading<T> {
    T from(Statements statements) throws SQLException, LogException;
  }

  IdleConnection(Path file) {
    this.file = file;
  }

  /** Reads; a connection that failed is not used again. */
  <T> T read(Reading<T> reading) throws SQLException, LogException {
    Statements kept = idle.getAndSet(null);
    Statements statements = kept != null ? kept : new Statements(LogDatabase.openForReading(file));
    boolean good = false;
    try {
      T result = reading.from(statements);
      good = true;
      return result;
    } finally {
      if (!good || closed || !idle.compareAndSet(null, statements)) {
        statements.connection().close();
      } else if (closed) {
        close();
      }
    }
  }

  /** Closes what is idle; what is still being read closes after it. */
  void close() throws SQLException {
    closed = true;
    Statements kept = idle.getAndSet(null);
    if (kept != null) {
      kept.connection().close();
    }
  }
}
