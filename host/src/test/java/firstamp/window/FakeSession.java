package firstamp.window;

import firstamp.analysis.figures.TripPeak;
import firstamp.bench.BenchSession;
import firstamp.bench.Snapshot;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.model.NotWatched;
import firstamp.model.Priority;
import firstamp.model.Summary;
import firstamp.model.TripCause;
import firstamp.pipeline.RunRefused;
import firstamp.run.BenchMode;
import firstamp.run.LimitMove;
import firstamp.run.questions.OpenQuestion;
import firstamp.study.EarlierPowerUp;
import firstamp.trend.Course;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * A scripted power-up of an invented dictation unit, for pictures and tests of the window; notes
 * what the window asks for.
 */
public final class FakeSession implements BenchSession {
  public static final double CLOSED_MS = 2_400;

  public final List<String> wishes = new CopyOnWriteArrayList<>();
  volatile int touches;
  private final Course course = new Course();
  private volatile Snapshot snapshot;
  volatile RuntimeException failing;
  volatile boolean closed;
  volatile BenchMode.State mode = BenchMode.State.BEGIN;

  public FakeSession(Scene scene) {
    fill(scene);
    snapshot = scene.snapshot(this);
  }

  /** What is played. */
  public enum Scene {
    /** Questions before switching on. */
    ASKING,
    /** The cautions page. */
    CAUTIONS,
    /** All is well, 7 s on. */
    HEALTHY,
    /** The head is silent while the meter moves. */
    LOST_HEAD,
    /** A rail under its window, cable with holes, not logging. */
    RAIL_LOW,
    /** A short after 3.1 s. */
    SHORT,
    /** The same once it is over. */
    SHORT_OVER,
    /** Switched off, rails falling. */
    FALLING,
    /** Over, nothing tripped. */
    OVER,
    /** Replay of the short. */
    REPLAY,
    /** The same, and what a tighter limit would have done. */
    WHAT_IF,
    /** All is well, with an earlier power-up behind. */
    BEHIND,
    /** The probe box remembers that it switched itself off before, and stays off. */
    REMEMBERED,
    /** The first look kept the switch open. */
    LOOK_SHORT,
    /** The computer slept; the probe switched off by itself. */
    SLEPT;

    Snapshot snapshot(FakeSession session) {
      return new Maker(session, this).snapshot();
    }

    boolean replayed() {
      return this == REPLAY || this == WHAT_IF;
    }

    boolean shorted() {
      return this == SHORT || this == SHORT_OVER || replayed();
    }

    double onSeconds() {
      return switch (this) {
        case ASKING, CAUTIONS, REMEMBERED, LOOK_SHORT -> 0;
        case SHORT, SHORT_OVER, REPLAY, WHAT_IF -> 3.1;
        case FALLING, OVER, SLEPT -> 6;
        default -> 7.2;
      };
    }

    double tailSeconds() {
      return switch (this) {
        case SHORT, SHORT_OVER, REPLAY, WHAT_IF -> 1.5;
        case FALLING, SLEPT -> 0.08;
        case OVER -> 3;
        default -> 0;
      };
    }
  }

  static JobSheet sheet() {
    return new JobSheet(
        1,
        new JobSheet.SetInfo("Larch D2 dictation unit", "recorder", "negative"),
        new JobSheet.Supply("bench", "supply-lead", 12.0, 11.0, 13.0, 1.5, 1.0, true),
        new JobSheet.Limits(4.5, 60.0, 1.0, 0.3, 4.5),
        List.of(
            new JobSheet.Rail(1, "B1", 8.2, 5.0, 300.0, 9.8, 0.05, 2200.0, "none"),
            new JobSheet.Rail(2, "B2 bias", -4.0, 10.0, 500.0, 6.0, null, null, "none")),
        new JobSheet.Levels(400.0, 10.0, 38.0, 6.0, -30.0, 1500.0),
        Map.of());
  }

  private void fill(Scene scene) {
    Random random = new Random(5);
    double offS = CLOSED_MS / 1000 + scene.onSeconds();
    double endS = offS + scene.tailSeconds();
    for (int slot = 0; slot < Math.round(endS * 100); slot++) {
      double t = slot / 100.0;
      double on = t - CLOSED_MS / 1000;
      boolean closedNow = on >= 0 && t < offS - 1e-9;
      double since = on < 0 ? 0 : Math.min(on, scene.onSeconds());
      double fall = t > offS ? Math.exp(-(t - offS) / 0.35) : 1;
      double amps =
          !closedNow ? 0 : 0.118 + 1.7 * Math.exp(-on / 0.05) + 0.16 * hump(on, 0.35, 0.25);
      double rise = on < 0 ? 0 : 1 - Math.exp(-since / 0.096);
      double b1 = 8.21 * rise * fall;
      if (scene == Scene.RAIL_LOW && on > 3.4) {
        b1 -= Math.min(1.3, (on - 3.4) * 0.8);
      }
      double b2 = -4.05 * (on < 0 ? 0 : 1 - Math.exp(-since / 0.2)) * fall;
      double volts = closedNow ? 11.98 - 0.25 * amps : on < 0 ? 0 : 11.9 * fall;
      if (scene.shorted() && closedNow && t > offS - 0.011) {
        amps = 7.2;
        volts = 4.1;
      }
      float nan = Float.NaN;
      double meter = closedNow && on > 1 ? -18 + 1.2 * Math.sin(on * 2.1) : nan;
      double head =
          Double.isNaN(meter)
              ? nan
              : scene == Scene.LOST_HEAD && on > 4
                  ? -88 + random.nextGaussian()
                  : meter - 38.6 + 0.4 * random.nextGaussian();
      append(
          slot * 10L,
          random,
          new double[] {amps, volts, b1, b2, nan, head, meter},
          new double[] {0.006, 0.02, 0.03, 0.02, 0, 0.8, 0.3});
    }
  }

  private static double hump(double x, double at, double width) {
    return Math.exp(-Math.pow((x - at) / width, 2));
  }

  private void append(long ms, Random random, double[] values, double[] spread) {
    float[] low = new float[values.length];
    float[] high = new float[values.length];
    float[] mean = new float[values.length];
    for (int at = 0; at < values.length; at++) {
      mean[at] = (float) (values[at] + 0.15 * spread[at] * random.nextGaussian());
      low[at] = (float) (mean[at] - spread[at] * (0.6 + 0.4 * random.nextDouble()));
      high[at] = (float) (mean[at] + spread[at] * (0.6 + 0.4 * random.nextDouble()));
    }
    course.append(ms, low, high, mean);
  }

  Course course() {
    return course;
  }

  public void set(Snapshot next) {
    snapshot = next;
  }

  @Override
  public Snapshot snapshot() {
    if (failing != null) {
      throw failing;
    }
    return snapshot;
  }

  @Override
  public void off() {
    wishes.add("off");
  }

  @Override
  public void mark(String text) {
    wishes.add("mark " + text);
  }

  @Override
  public void happened(firstamp.model.Happening what) {
    wishes.add("happened " + what.kind());
  }

  @Override
  public void note(int mark, String text) {
    wishes.add("note " + mark + " " + text);
  }

  @Override
  public void limit(LimitMove move) {
    wishes.add("limit " + move.kind() + " " + move.rail() + " " + move.value());
  }

  @Override
  public void mode(BenchMode wanted, String awakeProblem) {
    wishes.add("mode " + wanted);
    mode = new BenchMode.State(wanted, null, null, null);
  }

  @Override
  public BenchMode.State mode() {
    return mode;
  }

  @Override
  public void acknowledge() {
    wishes.add("seen");
  }

  @Override
  public void explainOff(firstamp.model.OffReason reason) {
    wishes.add("why " + reason);
  }

  @Override
  public void touched() {
    touches++;
  }

  @Override
  public void restore(int tripNumber) {
    wishes.add("restore " + tripNumber);
  }

  @Override
  public void answer(String questionId, boolean yes) {
    wishes.add("answer " + questionId + " " + yes);
  }

  @Override
  public void seek(double ms) {
    wishes.add("seek " + ms);
  }

  @Override
  public void speed(double factor) {
    wishes.add("speed " + factor);
  }

  @Override
  public void pause(boolean held) {
    wishes.add("pause " + held);
  }

  @Override
  public void step() {
    wishes.add("step");
  }

  @Override
  public void close() {
    closed = true;
    wishes.add("close");
  }

  /** Makes the snapshot at the end of a scene. */
  private static final class Maker {
    private final Course course;
    private final Scene scene;

    Maker(FakeSession session, Scene scene) {
      this.course = session.course;
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
          course.endMs(),
          asking ? null : CLOSED_MS,
          asking ? null : scene.onSeconds() * 1000,
          last(Course.Quantity.SUPPLY_A),
          last(Course.Quantity.SUPPLY_V),
          List.of(
              new Snapshot.Rail(1, "B1", b1, 7.79, 8.61, true),
              new Snapshot.Rail(2, "B2 bias", b2, -4.4, -3.6, true)),
          head,
          head == null ? null : Math.pow(10, head / 20) / 10 * 1e6,
          meter,
          head == null ? null : meter - head,
          new Snapshot.Limits(4.5, 60.0, 1.0, 11.0, 13.0),
          alarms(),
          look(),
          trip(),
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
          List.of(
              new NotWatched("rail 3", "no clip"),
              new NotWatched("ripple 2", "rippleMaxVrms is not on the sheet")),
          course,
          replay(),
          scene == Scene.OVER || scene == Scene.SHORT_OVER || scene.replayed() ? summary() : null,
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
                    alarms(),
                    CLOSED_MS + 352,
                    "supply current 0.27 A, limit 0.25 A",
                    Snapshot.Judged.ALL),
                false);
        default ->
            new Snapshot.Beside(
                null,
                null,
                null,
                null,
                false,
                null,
                new Snapshot.LookScale(60.0 / 1024, 330),
                List.of());
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

    private List<OpenQuestion> questions() {
      return switch (scene) {
        case ASKING -> List.of(new OpenQuestion("floating-supply", null));
        case CAUTIONS ->
            List.of(new OpenQuestion("cautions", null), new OpenQuestion("above-60", null));
        default -> List.of();
      };
    }

    private List<Alarm> alarms() {
      List<Alarm> alarms = new ArrayList<>();
      if (scene == Scene.LOST_HEAD) {
        alarms.add(
            alarm(
                1,
                "head-below-meter",
                0,
                null,
                4600,
                Priority.MEDIUM,
                70.2,
                44.0,
                "dB",
                "The meter moves but the head gets next to nothing, since W3 went to P7. Follow the"
                    + " signal from the meter's tap to the head; look at the muting contacts of"
                    + " jacks first.",
                0));
      }
      if (scene == Scene.RAIL_LOW) {
        alarms.add(
            alarm(
                1,
                "rail-window",
                1,
                "B1",
                4010,
                Priority.HIGH,
                7.1,
                7.79,
                "V",
                "B1 has left its window downwards. Switch off, then look for a load that grows"
                    + " warm.",
                0));
        alarms.add(
            alarm(
                2,
                "not-logging",
                0,
                null,
                4900,
                Priority.HIGH,
                null,
                null,
                null,
                "The disk is full.",
                1));
      }
      if (scene.shorted()) {
        alarms.add(
            alarm(
                1,
                "over-current",
                0,
                null,
                3100,
                Priority.HIGH,
                8.1,
                1.0,
                "A",
                "8.1 A, limit 1 A, since W3 went to P7. Take the supply's leads off, then measure"
                    + " from B1 to chassis with the wire lifted.",
                0));
        alarms.add(
            alarm(
                2,
                "short",
                0,
                null,
                3100,
                Priority.HIGH,
                0.51,
                2.5,
                "ohm",
                "At that moment the set was a short: 0.51 ohm, the limit is 2.5 ohm. (Since W3 went"
                    + " to P7.) Take off the wire that was joined last, then measure the ohms with"
                    + " the supply off.",
                1));
      }
      return alarms;
    }

    private Alarm alarm(
        int number,
        String rule,
        int rail,
        String railName,
        double atMs,
        Priority priority,
        Double value,
        Double limit,
        String unit,
        String text,
        int foldedUnder) {
      return new Alarm(
          number,
          rule,
          rail,
          railName,
          atMs,
          atMs - 90,
          atMs,
          priority,
          AlarmState.UNACKNOWLEDGED,
          value,
          false,
          limit,
          unit,
          text,
          foldedUnder);
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
          new TripPeak(8.1f, false, null));
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
          alarms(),
          new Summary.ConversionCount(176_000, 0, 0),
          new Summary.LogPlace("bench.db", 52_800L),
          null);
    }
  }
}
