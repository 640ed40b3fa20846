package firstamp.window;

import firstamp.app.Hearing;
import firstamp.app.WindowOptions;
import firstamp.window.Views.Maker;
import firstamp.window.Views.View;
import firstamp.window.page.Tools;
import firstamp.window.search.LocatePage;
import firstamp.window.search.TrialPage;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.List;
import java.util.Map;

/** The watching page in every scene, and the pages that open over it. */
final class WatchViews {
  private WatchViews() {}

  static void addTo(Map<String, Maker> all) {
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
                        Views.tools(options, null),
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
  }

  static View watch(WindowOptions options, FakeSession.Scene scene) {
    return watch(options, scene, Hearing.NOTHING);
  }

  private static View watch(WindowOptions options, FakeSession.Scene scene, Hearing hearing) {
    return watch(options, new FakeSession(scene), hearing);
  }

  /** With the first look instead of the strips. */
  private static View turned(WindowOptions options, FakeSession.Scene scene) {
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
}
