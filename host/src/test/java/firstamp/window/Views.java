package firstamp.window;

import firstamp.app.Desk;
import firstamp.app.Hearing;
import firstamp.app.HomeFolder;
import firstamp.app.Watched;
import firstamp.app.WindowOptions;
import firstamp.model.RuleId;
import firstamp.run.TripsInARow;
import firstamp.sheet.SheetField;
import firstamp.window.page.Page;
import firstamp.window.page.Shell;
import firstamp.window.page.Tools;
import firstamp.window.pages.AgainPage;
import firstamp.window.pages.FormPage;
import firstamp.window.pages.FormSections;
import firstamp.window.pages.HomePage;
import firstamp.window.pages.LeavePage;
import firstamp.window.pages.LocatePage;
import firstamp.window.pages.LookPage;
import firstamp.window.pages.ProbePage;
import firstamp.window.pages.QuestionsPage;
import firstamp.window.pages.ReadyPage;
import firstamp.window.pages.TrialPage;
import firstamp.window.pages.VerdictPage;
import firstamp.window.pages.WatchPage;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.Dimension;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.swing.JComponent;
import javax.swing.JFrame;

/**
 * Every view of the window by name, laid out on invented sets and never made visible: for the tests
 * that walk them all and for the pictures. A new page adds itself in {@link #makers()}.
 */
public final class Views implements AutoCloseable {
  private final Path folder;
  private final Desk used;
  private final Desk empty;

  /** Makes one view. */
  interface Maker {
    /** On the Swing thread. */
    View make(WindowOptions options) throws Exception;
  }

  /**
   * One view.
   *
   * @param component laid out
   * @param settle lays it out once more: wrapped texts know their height only once they have a
   *     width
   */
  record View(JComponent component, Runnable settle) {
    static View of(JComponent component) {
      return new View(component, () -> {});
    }
  }

  Views() throws Exception {
    folder = Files.createTempDirectory("firstamp-views");
    used = TestBench.used(bench("used"), new HomeFolder(folder.resolve("used")));
    empty = TestBench.empty(bench("empty"), new HomeFolder(folder.resolve("empty")));
  }

  /** Where the bench lies in the home of an invented person. */
  private Path bench(String person) throws IOException {
    return Files.createDirectories(folder.resolve(person).resolve(".local/share/firstamp"));
  }

  Desk used() {
    return used;
  }

  /** All views by name, the watching ones last. */
  Map<String, Maker> makers() {
    Map<String, Maker> all = new LinkedHashMap<>();
    all.put("home", options -> page(new HomePage(tools(options, used))));
    all.put("home-set", options -> home(options, 1));
    all.put("home-emulated", options -> home(options, 3));
    all.put("home-empty", options -> page(new HomePage(tools(options, empty))));
    all.put("question-name", options -> page(new QuestionsPage(tools(options, empty), null)));
    all.put("question-feed", options -> questions(options, "Tervane amplifier", "24", "negative"));
    all.put("question-refused", options -> questions(options, "Tervane amplifier", "240"));
    all.put(
        "question-end",
        options ->
            questions(options, "Tervane amplifier", "24", "negative", "mains-transformer", ""));
    all.put(
        "question-fuse",
        options -> questions(options, "Tervane amplifier", "24", "negative", "bench"));
    for (int section = 0; section < FormSections.all().size(); section++) {
      int number = section + 1;
      all.put(
          "form-" + FormSections.all().get(section).id(),
          options -> {
            FormPage page = new FormPage(tools(options, used), larch());
            page.choose(number);
            return page(page);
          });
    }
    all.put("form-problem", this::wrongForm);
    all.put("ready", options -> page(new ReadyPage(tools(options, used), larch())));
    all.put("verdict", options -> page(new VerdictPage(tools(options, used), used.log(), 1)));
    all.put("verdict-trip", options -> page(new VerdictPage(tools(options, used), used.log(), 2)));
    all.put("verdict-saved", this::saved);
    ThinkViews.addTo(all);
    again(all, "again", 1, List.of(), null);
    again(all, "again-proof", 2, List.of(5), null);
    again(all, "again-ohms", 2, List.of(5, 1), null);
    again(all, "again-rest", 3, List.of(), 480_000L);
    all.put("look", options -> page(new LookPage(tools(options, used))));
    all.put("leave", options -> page(new LeavePage(tools(options, used), null)));
    for (int step = 0; step <= 10; step++) {
      int upTo = step;
      all.put("probe-" + upTo, options -> probe(options, upTo, false));
    }
    all.put("probe-cut", options -> probe(options, 0, true));
    for (FakeSession.Scene scene : FakeSession.Scene.values()) {
      all.put(
          "watch-" + scene.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'),
          options -> watch(options, scene));
    }
    WatchStates.addTo(all);
    all.put(
        "live-locate",
        options ->
            framed(options, new FakeSession(FakeSession.Scene.HEALTHY), Hearing.NOTHING)
                .over(
                    new LocatePage(
                        tools(options, null),
                        new SearchingSession(ThinkViews.search(2)),
                        null,
                        null))
                .view(true));
    all.put(
        "live-wires",
        options ->
            framed(options, new FakeSession(FakeSession.Scene.HEALTHY), Hearing.NOTHING)
                .over(
                    new TrialPage(
                        new Tools(
                            new Words(options.locale()),
                            new Numbers(options.locale()),
                            new WindowTheme(options.theme()).palette(),
                            new LiveShell(options),
                            null),
                        ThinkViews.wires("screened-lead", 4),
                        ThinkViews.KEEPING,
                        null))
                .view(true));
    all.put("watch-heard", options -> watch(options, FakeSession.Scene.SHORT, new FakeHearing()));
    for (FakeSession.Scene scene :
        List.of(
            FakeSession.Scene.LOST_HEAD,
            FakeSession.Scene.SHORT,
            FakeSession.Scene.SHORT_OVER,
            FakeSession.Scene.REPLAY)) {
      all.put(
          "think-" + scene.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'),
          options -> {
            FakeSession session = new FakeSession(scene);
            session.set(Scenes.withThinking(session.snapshot()));
            return watch(options, session, new FakeHearing());
          });
    }
    for (FakeSession.Scene scene : List.of(FakeSession.Scene.HEALTHY, FakeSession.Scene.REPLAY)) {
      all.put(
          "first-look-" + scene.name().toLowerCase(java.util.Locale.ROOT),
          options -> turned(options, scene));
    }
    all.put(
        "watch-muted",
        options -> {
          FakeHearing hearing = new FakeHearing();
          hearing.mute(true);
          return watch(options, FakeSession.Scene.LOST_HEAD, hearing);
        });
    all.put(
        "watch-no-device",
        options ->
            watch(options, FakeSession.Scene.RAIL_LOW, new Hearing.Still(Hearing.State.NO_DEVICE)));
    return all;
  }

  private void again(
      Map<String, Maker> all, String name, int trips, List<Integer> chosen, Long restMs) {
    all.put(
        name,
        options -> {
          Tools tools = tools(options, used);
          FakeSession session = new FakeSession(FakeSession.Scene.SHORT_OVER);
          Long until = restMs == null ? null : (Long) (used.time().epochMillis() + restMs);
          AgainPage page =
              new AgainPage(
                  tools,
                  session,
                  4,
                  new TripsInARow(trips, "running", until),
                  new WatchPage(tools, Watched.of(session)));
          chosen.forEach(page::choose);
          return page(page);
        });
  }

  private static String larch() {
    return firstamp.emulate.Scenarios.sheetJson("healthy");
  }

  public static Tools tools(WindowOptions options, Desk desk) {
    WindowTheme theme = new WindowTheme(options.theme());
    return new Tools(
        new Words(options.locale()),
        new Numbers(options.locale()),
        theme.palette(),
        new StillShell(options),
        desk);
  }

  /** A shell in which the set is on. */
  private record LiveShell(WindowOptions options) implements Shell {
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

  static View page(Page page) {
    page.shown();
    return View.of(page.component());
  }

  private View home(WindowOptions options, int chosen) {
    HomePage page = new HomePage(tools(options, used));
    page.shown();
    page.move(chosen);
    return View.of(page.component());
  }

  private View questions(WindowOptions options, String... answers) {
    QuestionsPage page = new QuestionsPage(tools(options, empty), null);
    for (String answer : answers) {
      page.take(answer);
    }
    return page(page);
  }

  private View wrongForm(WindowOptions options) {
    FormPage page = new FormPage(tools(options, used), larch());
    page.entries().set("supply.minV", SheetField.Kind.NUMBER, "minus three");
    page.choose(2);
    return page(page);
  }

  private View saved(WindowOptions options) throws Exception {
    VerdictPage page = new VerdictPage(tools(options, used), used.log(), 3);
    page.shown();
    page.goOn();
    return View.of(page.component());
  }

  private View probe(WindowOptions options, int upTo, boolean cut) throws Exception {
    Desk desk = TestBench.empty(bench("empty"), new HomeFolder(folder.resolve("empty")));
    ProbePage page = new ProbePage(tools(options, desk));
    page.shown();
    page.emulated();
    if (cut) {
      page.choose(1);
    }
    for (int step = 0; step < upTo; step++) {
      page.goOn();
    }
    return View.of(page.component());
  }

  static View watch(WindowOptions options, FakeSession.Scene scene) {
    return watch(options, scene, Hearing.NOTHING);
  }

  private static View watch(WindowOptions options, FakeSession.Scene scene, Hearing hearing) {
    return watch(options, new FakeSession(scene), hearing);
  }

  /** With the first look in the place of the strips. */
  private View turned(WindowOptions options, FakeSession.Scene scene) {
    FakeSession session = new FakeSession(scene);
    Framed framed = framed(options, session, Hearing.NOTHING);
    for (int turn = scene.shorted() ? 0 : 1; turn < 2; turn++) {
      framed.panel().toggleView();
      framed.show(true);
    }
    return framed.view(true);
  }

  private static View watch(WindowOptions options, FakeSession session, Hearing hearing) {
    return framed(options, session, hearing).view(true);
  }

  private static Framed framed(WindowOptions options, FakeSession session, Hearing hearing) {
    Framed framed = new Framed(options, session, hearing);
    framed.panel().whenOver(() -> {}, () -> {});
    framed.panel().whenThinking(() -> {}, () -> {});
    framed.show(true);
    return framed;
  }

  /**
   * Lays a view out in a frame that is never shown.
   *
   * @param size of its content
   */
  static JFrame laidOut(View view, Dimension size) {
    JFrame frame = new JFrame();
    frame.setUndecorated(true);
    view.component().setPreferredSize(size);
    frame.setContentPane(view.component());
    frame.pack();
    for (int round = 0; round < 3; round++) {
      view.settle().run();
      invalidate(frame);
      frame.validate();
    }
    return frame;
  }

  /** As if each part had asked for it. */
  private static void invalidate(java.awt.Container container) {
    container.invalidate();
    for (java.awt.Component each : container.getComponents()) {
      if (each instanceof java.awt.Container inner) {
        invalidate(inner);
      }
    }
  }

  /** Rules of the sheet, so that a test can turn to each. */
  static int rules() {
    return RuleId.values().length;
  }

  @Override
  public void close() throws IOException {
    try (var files = Files.walk(folder)) {
      for (Path file : files.sorted(java.util.Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
