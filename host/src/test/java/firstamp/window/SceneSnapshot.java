package firstamp.window;

import static firstamp.window.FakeSession.CLOSED_MS;
import static firstamp.window.FakeSession.sheet;

import firstamp.analysis.figures.TripPeak;
import firstamp.bench.LookScale;
import firstamp.bench.Snapshot;
import firstamp.model.LimitKind;
import firstamp.model.NotWatched;
import firstamp.model.Summary;
import firstamp.model.TripCause;
import firstamp.pipeline.RunRefused;
import firstamp.run.questions.OpenQuestion;
import firstamp.study.EarlierPowerUp;
import firstamp.trend.Course;
import firstamp.window.FakeSession.Scene;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Makes the snapshot at the end of a scene. */
final class SceneSnapshot {
  private final Course course;
  private final Scene scene;

  SceneSnapshot(Course course, Scene scene) {
    this.course = course;
    this.scene = scene;
  }

  Snapshot snapshot() {
    boolean asking =
        scene == Scene.ASKING
            || scene == Scene.CAUTIONS
            || scene == Scene.REMEMBERED
            || scene == Scene.LOOK_SHORT;
    boolean on = phase() == Snapshot.Phase.ON;
    Double b1 = last(Course.Quantity.RAIL1_V);
    Double b2 = last(Course.Quantity.RAIL2_V);
    Double head = on ? last(Course.Quantity.HEAD_DBV) : null;
    Double meter = on ? last(Course.Quantity.METER_DBV) : null;
    return new Snapshot(
        phase(),
        scene.replayed() ? Snapshot.Kind.REPLAY : Snapshot.Kind.EMULATED,
        scene == Scene.REMEMBERED ? null : 13,
        "W3 to P7",
        sheet(),
        null,
        null,
        new Snapshot.Times(
            course.endMs(), asking ? null : CLOSED_MS, asking ? null : scene.onSeconds() * 1000),
        new Snapshot.Figures(
            last(Course.Quantity.SUPPLY_A),
            last(Course.Quantity.SUPPLY_V),
            List.of(
                new Snapshot.Rail(1, "B1", b1, 7.79, 8.61, true),
                new Snapshot.Rail(2, "B2 bias", b2, -4.4, -3.6, true)),
            new Snapshot.Levels(
                head, head == null ? null : Math.pow(10, head / 20) / 10 * 1e6, meter)),
        new Snapshot.Limits(4.5, 60.0, 1.0, 11.0, 13.0),
        new Snapshot.Findings(
            SceneAlarms.of(scene),
            look(),
            trip(),
            List.of(
                new NotWatched("rail 3", "no clip"),
                new NotWatched("ripple 2", "rippleMaxVrms is not on the sheet")),
            scene == Scene.OVER || scene == Scene.SHORT_OVER || scene.replayed()
                ? summary()
                : null),
        link(),
        scene == Scene.RAIL_LOW
            ? new Snapshot.Log(
                false, "bench.db", "The disk is full. Watching goes on; free some space.")
            : new Snapshot.Log(!asking, "bench.db", null),
        asking
            ? List.of()
            : List.of(
                new Snapshot.Mark(CLOSED_MS + 1800, ""),
                new Snapshot.Mark(CLOSED_MS + 2600, "record on")),
        questions(),
        course,
        replay(),
        beside());
  }

  private Summary.LookFigures look() {
    return switch (scene) {
      case ASKING, CAUTIONS, REMEMBERED -> null;
      case LOOK_SHORT -> new Summary.LookFigures("short", 1.61, null, 12.02, true);
      default -> new Summary.LookFigures("clear", 210.0, 3180.0, 12.02);
    };
  }

  private Snapshot.Beside beside() {
    return switch (scene) {
      case BEHIND ->
          new Snapshot.Beside(
              new EarlierPowerUp(11, true, earlier(), CLOSED_MS - 500), null, null, null, false);
      case REMEMBERED ->
          new Snapshot.Beside(
              null,
              null,
              null,
              null,
              false,
              new RunRefused.Latched(7, TripCause.RUNNING),
              null,
              List.of());
      case SLEPT -> new Snapshot.Beside(null, 1_790_000_000_000L, null, null, false);
      case WHAT_IF ->
          new Snapshot.Beside(
              null,
              null,
              null,
              new Snapshot.WhatIf(
                  LimitKind.RUNNING_A.on(sheet(), 0, 0.25),
                  1,
                  SceneAlarms.of(scene),
                  CLOSED_MS + 352,
                  firstamp.model.text.Worded.asIs("supply current 0.27 A, limit 0.25 A"),
                  Snapshot.Judged.ALL),
              false);
      default ->
          new Snapshot.Beside(
              null, null, null, null, false, null, new LookScale(60.0 / 1024, 330), List.of());
    };
  }

  /** The same set half a second earlier on, a little slower and with a little more volts. */
  private Course earlier() {
    Course other = new Course();
    for (int slot = 0; slot < 1200; slot++) {
      double on = slot / 100.0 - (CLOSED_MS - 500) / 1000;
      float[] mean = new float[Course.Quantity.COUNT];
      double rise = on < 0 ? 0 : 1 - Math.exp(-on / 0.16);
      mean[0] = on < 0 ? 0 : (float) (0.13 + 1.4 * Math.exp(-on / 0.06));
      mean[1] = on < 0 ? 0 : 12.2f;
      mean[2] = (float) (8.35 * rise);
      mean[3] = (float) (-4.15 * rise);
      mean[4] = Float.NaN;
      mean[5] = on < 1 ? Float.NaN : -58.5f;
      mean[6] = on < 1 ? Float.NaN : -19;
      other.append(slot * 10L, mean.clone(), mean.clone(), mean);
    }
    return other;
  }

  private Snapshot.Phase phase() {
    return switch (scene) {
      case ASKING, CAUTIONS -> Snapshot.Phase.OPEN;
      case SHORT, REPLAY, WHAT_IF -> Snapshot.Phase.TRIPPED;
      case FALLING, SLEPT -> Snapshot.Phase.RAILS_FALLING;
      case OVER, SHORT_OVER, REMEMBERED, LOOK_SHORT -> Snapshot.Phase.ENDED;
      default -> Snapshot.Phase.ON;
    };
  }

  private Double last(Course.Quantity quantity) {
    float[] low = new float[1];
    float[] mean = new float[1];
    course.columns(quantity, course.endMs() - 20, course.endMs(), 1, low, low.clone(), mean);
    return Float.isNaN(mean[0]) ? null : (double) mean[0];
  }

  private Snapshot.Link link() {
    return scene == Scene.RAIL_LOW
        ? new Snapshot.Link(Snapshot.LinkState.GOOD, "/dev/ttyUSB0", null, 320, false)
        : new Snapshot.Link(
            scene.replayed() ? Snapshot.LinkState.NONE : Snapshot.LinkState.GOOD,
            "/dev/ttyUSB0",
            null,
            0,
            false);
  }

  List<OpenQuestion> questions() {
    return switch (scene) {
      case ASKING -> List.of(new OpenQuestion("floating-supply", null));
      case CAUTIONS ->
          List.of(new OpenQuestion("cautions", null), new OpenQuestion("above-60", null));
      default -> List.of();
    };
  }

  private Snapshot.TripView trip() {
    if (!scene.shorted()) {
      return null;
    }
    Float[] amps = new Float[256];
    Random random = new Random(3);
    for (int at = 0; at < 256; at++) {
      double ms = (at - 125) * 0.25;
      double value = ms < 0 ? 0.12 : 0;
      amps[at] = (float) (value + 0.008 * random.nextGaussian());
    }
    // Three conversions beyond the limit decide; the trip's value is that of the third.
    amps[125] = 5.52f;
    amps[126] = 7.63f;
    amps[127] = 8.1f;
    return new Snapshot.TripView(
        4,
        TripCause.RUNNING,
        null,
        3100.0,
        8.1,
        false,
        1.0,
        "A",
        0.71,
        Arrays.asList(amps),
        -125 * 0.25,
        0.25,
        new TripPeak(8.1f, false, null),
        0);
  }

  private Snapshot.Replay replay() {
    return scene.replayed()
        ? new Snapshot.Replay(
            0,
            course.endMs() + 2000,
            1,
            true,
            List.of(
                new Snapshot.ReplayEvent(CLOSED_MS, Snapshot.EventKind.ON, null),
                new Snapshot.ReplayEvent(CLOSED_MS + 1800, Snapshot.EventKind.MARK, null),
                new Snapshot.ReplayEvent(CLOSED_MS + 2600, Snapshot.EventKind.MARK, "record on"),
                new Snapshot.ReplayEvent(CLOSED_MS + 3100, Snapshot.EventKind.TRIP, null)))
        : null;
  }

  private Summary summary() {
    return new Summary(
        13,
        "0d0c9e1a-0000-4000-8000-000000000013",
        scene.shorted() ? "tripped" : "normal",
        scene.shorted() ? "trip" : "time",
        null,
        null,
        scene.onSeconds() * 1000,
        new Summary.LookFigures("clear", 210.0, 3180.0, 12.02),
        new Summary.SupplyFigures(1.84, 0.011, 0.31, 0.118, 0.002, 11.98, 0.03),
        List.of(),
        null,
        List.of("over-current"),
        List.of(
            new NotWatched("rail 3", "no clip"),
            new NotWatched("ripple 2", "rippleMaxVrms is not on the sheet")),
        SceneAlarms.of(scene),
        new Summary.ConversionCount(176_000, 0, 0),
        new Summary.LogPlace("bench.db", 52_800L),
        null);
  }
}
