package firstamp.window;

import firstamp.app.Desk;
import firstamp.app.HomeFolder;
import firstamp.app.Watched;
import firstamp.app.WindowOptions;
import firstamp.model.RuleId;
import firstamp.run.TripsInARow;
import firstamp.sheet.SheetField;
import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import firstamp.window.pages.AgainPage;
import firstamp.window.pages.FormPage;
import firstamp.window.pages.FormSections;
import firstamp.window.pages.HomePage;
import firstamp.window.pages.LeavePage;
import firstamp.window.pages.LookPage;
import firstamp.window.pages.ProbePage;
import firstamp.window.pages.QuestionsPage;
import firstamp.window.pages.ReadyPage;
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
    for (int step = 0; step <= 13; step++) {
      int upTo = step;
      all.put("probe-" + upTo, options -> probe(options, upTo, false));
    }
    all.put("probe-cut", options -> probe(options, 0, true));
    WatchViews.addTo(all);
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
