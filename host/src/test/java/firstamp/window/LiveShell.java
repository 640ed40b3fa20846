package firstamp.window;

import firstamp.app.WindowOptions;
import firstamp.window.page.Page;
import firstamp.window.page.Shell;
import firstamp.window.words.Words;

/** A shell in which the set is on. */
record LiveShell(WindowOptions options) implements Shell {
  @Override
  public void open(Page page) {
    // There is one page only.
  }

  @Override
  public void home() {
    // There is one page only.
  }

  @Override
  public void close() {
    // Nothing is open.
  }

  @Override
  public void dress(WindowOptions next) {
    // It is dressed once.
  }

  @Override
  public String noOhms() {
    return new Words(options.locale()).get("ohms.on");
  }

  @Override
  public <T> void aside(
      java.util.concurrent.Callable<T> task,
      java.util.function.Consumer<T> then,
      java.util.function.Consumer<Exception> otherwise) {
    Shell.atOnce(task, then, otherwise);
  }
}
