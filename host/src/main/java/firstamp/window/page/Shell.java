package firstamp.window.page;

import firstamp.app.WindowOptions;
import firstamp.bench.BenchSession;
import firstamp.model.PedalJob;
import firstamp.window.present.LiveSet;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** What a page may ask of the window around it. Swing thread only. */
public interface Shell {
  /** Puts a page to the front. */
  void open(Page page);

  /** Back to the first screen; what is being watched is asked about first. */
  void home();

  /** The same, to another page than the first screen. */
  default void leaveFor(Supplier<Page> next) {
    open(next.get());
  }

  /** Closes the window, after a question. */
  void close();

  /** Brings the window before those of other programs. */
  default void toFront() {}

  /** Puts a mark that can be given a word by a digit. */
  default void mark(BenchSession session) {
    session.mark("");
  }

  /** Why no ohms may be measured now, in the person's language; null = they may. */
  default String noOhms() {
    return null;
  }

  /** The job of a pedal that sends a key. */
  default PedalJob pedal() {
    return PedalJob.OFF;
  }

  /** Gives it another job. */
  default void pedal(PedalJob job) {}

  /** Something closes a switch outside a power-up: the frame is round it from now on. */
  default void feeds(LiveSet.Feeding feeding) {}

  /** Dresses the window anew and shows the first screen. */
  void dress(WindowOptions options);

  /** How it is dressed. */
  WindowOptions options();

  /**
   * Does something slow away from the Swing thread, then goes on in it.
   *
   * @param task touches disk or port
   * @param then takes what came of it
   * @param otherwise takes what went wrong
   */
  <T> void aside(Callable<T> task, Consumer<T> then, Consumer<Exception> otherwise);

  /** The same at once, on the caller's thread: for where nobody sees it and nobody waits. */
  static <T> void atOnce(Callable<T> task, Consumer<T> then, Consumer<Exception> otherwise) {
    T result;
    try {
      result = task.call();
    } catch (Exception failed) {
      otherwise.accept(failed);
      return;
    }
    then.accept(result);
  }
}
