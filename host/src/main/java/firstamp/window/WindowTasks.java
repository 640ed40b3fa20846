package firstamp.window;

import firstamp.window.frame.WindowShell;
import firstamp.window.page.Page;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;

/** The window's threads beside the Swing thread: tasks of its pages, and the end of a page. */
final class WindowTasks implements WindowShell.Background {
  private static final long ASIDE_S = 20;

  private final ExecutorService ending = Executors.newSingleThreadExecutor(named("window-aside"));
  private final ExecutorService tasks = Executors.newCachedThreadPool(named("window-task"));
  private final Runnable end;

  /**
   * Threads that wait for work.
   *
   * @param end closes the window
   */
  WindowTasks(Runnable end) {
    this.end = end;
  }

  private static ThreadFactory named(String name) {
    return task -> {
      Thread thread = new Thread(task, name);
      thread.setDaemon(true);
      return thread;
    };
  }

  /** Takes nothing more; what was begun is done to its end. */
  void shutdown() {
    ending.shutdown();
    tasks.shutdown();
  }

  /** Waits until what was begun is done. */
  void awaitDone() throws InterruptedException {
    if (!ending.awaitTermination(ASIDE_S, TimeUnit.SECONDS)
        || !tasks.awaitTermination(ASIDE_S, TimeUnit.SECONDS)) {
      throw new IllegalStateException(
          "the window is closed, but something it began is not done after " + ASIDE_S + " s");
    }
  }

  @Override
  public <T> void aside(Callable<T> task, Consumer<T> then, Consumer<Exception> otherwise) {
    if (tasks.isShutdown()) {
      return;
    }
    tasks.execute(
        () -> {
          try {
            T result = task.call();
            goOn(() -> then.accept(result));
          } catch (Exception failed) {
            // The page says it; at the top of a thread nothing may be lost.
            goOn(() -> otherwise.accept(failed));
          }
        });
  }

  /** There is no page left to go on with once the window is closed. */
  private void goOn(Runnable next) {
    SwingUtilities.invokeLater(
        () -> {
          if (!tasks.isShutdown()) {
            next.run();
          }
        });
  }

  @Override
  public void ending(Page last, Runnable then) {
    ending.execute(
        () -> {
          try {
            last.end();
          } finally {
            SwingUtilities.invokeLater(then);
          }
        });
  }

  @Override
  public void end() {
    end.run();
  }
}
