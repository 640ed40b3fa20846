package firstamp.window;

import firstamp.app.Desk;
import firstamp.app.WindowOptions;
import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** The pages on a bench log of their own, without a window around them. */
abstract class FlowPagesCase {
  static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);

  @TempDir Path folder;
  Desk desk;
  Tools tools;
  StillShell shell;

  @BeforeEach
  void desk() throws Exception {
    desk = TestBench.used(folder);
    tools = on(() -> Views.tools(OPTIONS, desk));
    shell = (StillShell) tools.shell();
  }

  static <T> T on(Callable<T> task) throws Exception {
    return Components.onSwing(task);
  }

  <P extends Page> P open(Callable<P> maker) throws Exception {
    return on(
        () -> {
          P page = maker.call();
          shell.open(page);
          return page;
        });
  }
}
