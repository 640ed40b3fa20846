package firstamp.window;

import firstamp.app.Watched;
import firstamp.app.WindowOptions;
import firstamp.emulate.Scenarios;
import firstamp.run.TripsInARow;
import firstamp.window.frame.WindowShell;
import firstamp.window.page.Page;
import firstamp.window.page.Shell;
import firstamp.window.page.Tools;
import firstamp.window.pages.AgainPage;
import firstamp.window.pages.FormPage;
import firstamp.window.pages.HomePage;
import firstamp.window.pages.LeavePage;
import firstamp.window.pages.LookPage;
import firstamp.window.pages.ProbePage;
import firstamp.window.pages.QuestionsPage;
import firstamp.window.pages.ReadyPage;
import firstamp.window.pages.VerdictPage;
import firstamp.window.pages.WatchPage;
import firstamp.window.search.LocatePage;
import firstamp.window.search.TrialPage;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.swing.JFrame;

/** Any page in a window that is never shown, with something live behind it. */
final class EveryPage implements WindowShell.Background {
  private static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);
  private static final Map<String, Function<Given, Page>> MAKERS = makers();

  /** Every page by the name of its class. */
  static final Set<String> NAMES = MAKERS.keySet();

  final HandTime time = new HandTime();
  final JFrame window = new JFrame();
  final FakeSession session;
  final WindowShell shell;
  final WatchPage watch;
  final Page page;
  private boolean quiet;

  EveryPage(Views views, String name, LiveStates state) throws Exception {
    session = state.session();
    shell = new WindowShell(this, views.used(), OPTIONS, time, window);
    watch = new WatchPage(shell.tools(), Watched.of(session));
    shell.open(watch);
    page =
        name.equals("WatchPage")
            ? watch
            : MAKERS.get(name).apply(new Given(shell.tools(), session, views));
    window.setUndecorated(true);
    window.getContentPane().setPreferredSize(Screenshots.SIZE);
    window.pack();
    shell.tick();
    shell.open(page);
    quiet = true;
    again();
  }

  /** The dead second is over, the page is in front again. */
  void again() {
    time.pass(1_500);
    if (shell.front() != page) {
      shell.open(page);
    }
    shell.tick();
    time.pass(1_500);
    shell.tick();
    for (int round = 0; round < 3; round++) {
      window.invalidate();
      window.validate();
    }
    session.wishes.clear();
  }

  @Override
  public <T> void aside(Callable<T> task, Consumer<T> then, Consumer<Exception> otherwise) {
    if (!quiet) {
      Shell.atOnce(task, then, otherwise);
    }
  }

  @Override
  public void ending(Page last, Runnable then) {
    throw new AssertionError("a page was left");
  }

  @Override
  public void end() {
    throw new AssertionError("the window was closed");
  }

  /** What pages are made from. */
  private record Given(Tools tools, FakeSession session, Views views) {}

  private static Map<String, Function<Given, Page>> makers() {
    Map<String, Function<Given, Page>> all = new LinkedHashMap<>();
    all.put("WatchPage", given -> new WatchPage(given.tools(), Watched.of(given.session())));
    all.put(
        "LocatePage",
        given ->
            new LocatePage(given.tools(), new SearchingSession(ThinkViews.search(2)), null, null));
    all.put(
        "TrialPage",
        given ->
            new TrialPage(
                given.tools(), ThinkViews.wires("screened-lead", 4), ThinkViews.KEEPING, null));
    all.put("VerdictPage", given -> new VerdictPage(given.tools(), given.views().used().log(), 1));
    all.put("ProbePage", given -> new ProbePage(given.tools()));
    all.put("LookPage", given -> new LookPage(given.tools()));
    all.put("HomePage", given -> new HomePage(given.tools()));
    all.put("QuestionsPage", given -> new QuestionsPage(given.tools(), null));
    all.put("FormPage", given -> new FormPage(given.tools(), Scenarios.sheetJson("healthy")));
    all.put("ReadyPage", given -> new ReadyPage(given.tools(), Scenarios.sheetJson("healthy")));
    all.put(
        "AgainPage",
        given ->
            new AgainPage(
                given.tools(),
                given.session(),
                4,
                new TripsInARow(1, "running", null),
                new WatchPage(given.tools(), Watched.of(given.session()))));
    all.put("LeavePage", given -> new LeavePage(given.tools(), null));
    return all;
  }
}
