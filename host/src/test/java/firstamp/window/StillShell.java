package firstamp.window;

import firstamp.app.WindowOptions;
import firstamp.window.page.Page;
import firstamp.window.page.Shell;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;

/** A shell without a window: slow tasks are done at once, pages are kept in a list. */
public final class StillShell implements Shell {
  final List<Page> opened = new ArrayList<>();
  WindowOptions options;
  boolean homeAsked;
  boolean closed;

  StillShell(WindowOptions options) {
    this.options = options;
  }

  public Page page() {
    return opened.get(opened.size() - 1);
  }

  @Override
  public void open(Page page) {
    opened.add(page);
    page.shown();
  }

  @Override
  public void home() {
    homeAsked = true;
    if (!opened.isEmpty()) {
      page().end();
    }
  }

  @Override
  public void close() {
    closed = true;
  }

  @Override
  public void dress(WindowOptions next) {
    options = next;
  }

  @Override
  public WindowOptions options() {
    return options;
  }

  @Override
  public <T> void aside(Callable<T> task, Consumer<T> then, Consumer<Exception> otherwise) {
    Shell.atOnce(task, then, otherwise);
  }
}
