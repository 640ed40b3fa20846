package firstamp.window;

import firstamp.app.Hearing;
import firstamp.app.WindowOptions;
import firstamp.bench.Snapshot;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.JobSheet;
import firstamp.model.Priority;
import firstamp.model.Summary;
import firstamp.run.BenchMode;
import firstamp.run.questions.OpenQuestion;
import firstamp.study.EarlierPowerUp;
import firstamp.window.watch.BenchPanel;
import firstamp.window.widgets.Canvas;
import java.awt.event.MouseEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;

/** The watching view in the states that it is in only sometimes, each made from a scene. */
public final class WatchStates {
  private static final String REMEDY =
      "Nothing has come from /dev/ttyUSB0 for 2 s; the probe box has switched off by itself. Look"
          + " at the cable, then answer what is asked.";

  private WatchStates() {}

  static void addTo(Map<String, Views.Maker> all) {
    waiting(all);
    trouble(all);
    cards(all);
    modes(all);
  }

  private static void waiting(Map<String, Views.Maker> all) {
    Snapshot.Link connecting =
        new Snapshot.Link(Snapshot.LinkState.CONNECTING, "/dev/ttyUSB0", null, 0, false);
    Map<String, Object> nothing = Map.of("questions", List.of());
    Map<String, Snapshot.Phase> phases =
        Map.of(
            "connecting", Snapshot.Phase.CONNECTING,
            "open", Snapshot.Phase.OPEN,
            "check", Snapshot.Phase.CHECK,
            "first-look", Snapshot.Phase.LOOK);
    for (String name : List.of("connecting", "open", "check", "first-look")) {
      all.put(
          "watch-" + name,
          options ->
              of(
                  options,
                  FakeSession.Scene.ASKING,
                  with(nothing, "phase", phases.get(name), "link", connecting)));
    }
    all.put(
        "watch-countdown",
        options -> of(options, FakeSession.Scene.ASKING, with(nothing, "countdownS", 3)));
  }

  private static void trouble(Map<String, Views.Maker> all) {
    for (Snapshot.LinkState state :
        List.of(Snapshot.LinkState.LOST, Snapshot.LinkState.PROBE_RESTARTED)) {
      all.put(
          state == Snapshot.LinkState.LOST ? "watch-cable-lost" : "watch-box-restarted",
          options ->
              of(
                  options,
                  FakeSession.Scene.FALLING,
                  Map.of("link", new Snapshot.Link(state, "/dev/ttyUSB0", REMEDY, 3200, false))));
    }
    all.put("watch-look-short", options -> of(options, FakeSession.Scene.ASKING, lookShort()));
    all.put(
        "watch-out-of-focus", options -> new State(options, FakeSession.Scene.HEALTHY).view(false));
    all.put("watch-three-rails", options -> of(options, FakeSession.Scene.HEALTHY, threeRails()));
  }

  private static void cards(Map<String, Views.Maker> all) {
    for (String question : List.of("hands-out", "hook-up", "tape-out", "speaker-off")) {
      all.put(
          "watch-" + question,
          options -> {
            State state = new State(options, FakeSession.Scene.ASKING);
            state.session.set(
                Scenes.withQuestion(state.session.snapshot(), new OpenQuestion(question, null)));
            state.panel.show(state.session.snapshot(), null, true);
            return state.view(true);
          });
    }
    all.put(
        "watch-no-probe", options -> untouched(options, FakeSession.Scene.REMEMBERED, null, true));
    all.put("watch-untouched", options -> untouched(options, FakeSession.Scene.HEALTHY, 42, false));
    act(all, "close", FakeSession.Scene.HEALTHY, (panel, session) -> panel.askClose());
    act(all, "more-alarms", FakeSession.Scene.SHORT, (panel, session) -> panel.toggleMore());
    act(all, "words", FakeSession.Scene.OVER, (panel, session) -> panel.toggleNotes());
    act(all, "limit-held", FakeSession.Scene.HEALTHY, (panel, session) -> panel.nextLimit());
    all.put("watch-pointer", WatchStates::pointer);
    EarlierPowerUp earlier =
        new EarlierPowerUp(
            11,
            true,
            new FakeSession(FakeSession.Scene.HEALTHY).course(),
            FakeSession.CLOSED_MS,
            locale ->
                locale.equals(java.util.Locale.GERMAN)
                    ? List.of(
                        "Speisestrom am Ende: 130 mA, jetzt 118 mA (\u00b12 mA).",
                        "B1 am Ende: 8,35 V, jetzt 8,21 V (\u00b10,03 V).",
                        "Die Kurven trennen sich bei B1 nach 96 ms: 5,1 V, jetzt 5,3 V.")
                    : List.of(
                        "Supply current at the end: 130 mA, now 118 mA (\u00b12 mA).",
                        "B1 at the end: 8.35 V, now 8.21 V (\u00b10.03 V).",
                        "The courses part at B1, 96 ms after switching on: 5.1 V, now 5.3 V."));
    all.put(
        "watch-compare",
        options -> {
          State state = new State(options, FakeSession.Scene.REPLAY);
          state.session.set(
              state.session.snapshot().with(new Snapshot.Beside(earlier, null, null, null, false)));
          state.framed.show(true);
          state.panel.toggleWhatIf();
          return state.view(true);
        });
  }

  private static Views.View untouched(
      WindowOptions options, FakeSession.Scene scene, Integer offInS, boolean neverAnswered) {
    State state = new State(options, scene);
    state.session.set(
        state
            .session
            .snapshot()
            .with(
                new Snapshot.Beside(
                    null,
                    null,
                    null,
                    null,
                    false,
                    null,
                    null,
                    List.of(),
                    List.of(),
                    offInS,
                    neverAnswered)));
    state.panel.show(state.session.snapshot(), null, true);
    return state.view(true);
  }

  private static void modes(Map<String, Views.Maker> all) {
    for (BenchMode mode : List.of(BenchMode.HANDS_IN, BenchMode.SOAK)) {
      all.put(
          mode == BenchMode.SOAK ? "watch-soak" : "watch-hands-in",
          options -> {
            State state = new State(options, FakeSession.Scene.HEALTHY);
            boolean soak = mode == BenchMode.SOAK;
            state.session.mode =
                new BenchMode.State(mode, null, soak ? null : 0.152, soak ? 5_400_000.0 : null);
            return state.view(true);
          });
    }
  }

  private static void act(
      Map<String, Views.Maker> all,
      String name,
      FakeSession.Scene scene,
      BiConsumer<BenchPanel, FakeSession> action) {
    all.put(
        "watch-" + name,
        options -> {
          State state = new State(options, scene);
          action.accept(state.panel, state.session);
          return state.view(true);
        });
  }

  /** The pointer is in the strips. */
  private static Views.View pointer(WindowOptions options) {
    State state = new State(options, FakeSession.Scene.HEALTHY);
    Canvas strips = state.panel.strips().component();
    return new Views.View(
        state.framed.component(),
        () -> {
          state.framed.show(true);
          if (strips.getWidth() > 0) {
            strips.paint(
                new java.awt.image.BufferedImage(
                        strips.getWidth(),
                        strips.getHeight(),
                        java.awt.image.BufferedImage.TYPE_INT_RGB)
                    .createGraphics());
            strips.dispatchEvent(
                new MouseEvent(
                    strips, MouseEvent.MOUSE_MOVED, 0, 0, 500, 150, 0, false, MouseEvent.NOBUTTON));
          }
        });
  }

  private static Map<String, Object> lookShort() {
    Alarm alarm =
        new Alarm(
            1,
            "short",
            0,
            null,
            140,
            40,
            140,
            Priority.HIGH,
            AlarmState.UNACKNOWLEDGED,
            2.1,
            true,
            3.0,
            "ohm",
            "A short, or a cold lamp: at most 2.1 ohm, seen through the resistor. The switch stays"
                + " open. Measure from supply plus to chassis before you try again.",
            0);
    Summary.LookFigures look = new Summary.LookFigures("short", 2.1, null, 12.02, true);
    return Map.of(
        "phase",
        Snapshot.Phase.ENDED,
        "questions",
        List.of(),
        "alarms",
        List.of(alarm),
        "look",
        look);
  }

  /** As many large figures as there can be. */
  private static Map<String, Object> threeRails() {
    JobSheet sheet = FakeSession.sheet();
    List<JobSheet.Rail> rails = new ArrayList<>(sheet.rails());
    rails.add(new JobSheet.Rail(3, "B3", -18.0, 10.0, 500.0, 22.0, null, null, "none"));
    JobSheet more =
        new JobSheet(
            1, sheet.set(), sheet.supply(), sheet.limits(), rails, sheet.levels(), sheet.rules());
    List<Snapshot.Rail> seen =
        new ArrayList<>(new FakeSession(FakeSession.Scene.HEALTHY).snapshot().figures().rails());
    seen.add(new Snapshot.Rail(3, "B3", -18.1, -19.8, -16.2, true));
    return Map.of("sheet", more, "rails", seen);
  }

  private static Map<String, Object> with(Map<String, Object> some, Object... more) {
    Map<String, Object> all = new java.util.HashMap<>(some);
    for (int at = 0; at < more.length; at += 2) {
      all.put((String) more[at], more[at + 1]);
    }
    return all;
  }

  private static Views.View of(
      WindowOptions options, FakeSession.Scene scene, Map<String, Object> changes)
      throws ReflectiveOperationException {
    State state = new State(options, scene);
    state.session.set(ChangedSnapshot.of(state.session.snapshot(), changes));
    return state.view(true);
  }

  /** A session and the panel on it. */
  private static final class State {
    private final FakeSession session;
    private final Framed framed;
    private final BenchPanel panel;

    State(WindowOptions options, FakeSession.Scene scene) {
      session = new FakeSession(scene);
      framed = new Framed(options, session, Hearing.NOTHING);
      panel = framed.panel();
      panel.whenOver(() -> {}, () -> {});
      framed.show(true);
    }

    Views.View view(boolean focused) {
      framed.show(focused);
      return framed.view(focused);
    }
  }
}
