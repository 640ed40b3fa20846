package firstamp.window;

import firstamp.bench.BenchSession;
import firstamp.bench.Snapshot;
import firstamp.model.JobSheet;
import firstamp.model.text.Worded;
import firstamp.run.BenchMode;
import firstamp.run.LimitMove;
import firstamp.trend.Course;
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
      return new SceneSnapshot(session.course, this).snapshot();
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
  public void mode(BenchMode wanted, Worded awakeProblem) {
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
}
