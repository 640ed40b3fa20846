package firstamp.session;

import firstamp.model.Alarm;
import firstamp.model.Capture;
import firstamp.model.Channel;
import firstamp.model.JobSheet;
import firstamp.model.LevelWindow;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.Reading;
import firstamp.model.Scaling;
import firstamp.model.Summary;
import firstamp.model.Trip;
import java.util.ArrayList;
import java.util.List;

/**
 * Gathers what the window shows from what the chain says; the same for a live run and a replay.
 *
 * <p>Fed on one thread, which also calls {@link #build}; the snapshots go to any thread.
 */
final class SnapshotBuilder implements ChainListener {
  private static final int FIGURE_READINGS = 10;
  private static final double MICROS_PER_MS = 1000.0;
  private static final float NOTHING = Float.NaN;

  private final JobSheet sheet;
  private final Course course = new Course();
  private final List<Alarm> alarms = new ArrayList<>();
  private final List<Snapshot.Mark> marks = new ArrayList<>();
  private final float[] low = new float[Course.Quantity.COUNT];
  private final float[] high = new float[Course.Quantity.COUNT];
  private final float[] mean = new float[Course.Quantity.COUNT];
  private final RecentMean supplyA = new RecentMean(FIGURE_READINGS);
  private final RecentMean supplyV = new RecentMean(FIGURE_READINGS);
  private final RecentMean[] rails = {
    new RecentMean(FIGURE_READINGS),
    new RecentMean(FIGURE_READINGS),
    new RecentMean(FIGURE_READINGS)
  };
  private long originMicros = -1;
  private LevelWindow levels;
  private Summary.LookFigures look;
  private boolean lost;
  private boolean restarted;
  private String linkText;
  private boolean logging = true;
  private String logText;

  SnapshotBuilder(JobSheet effective) {
    this.sheet = effective;
  }

  /** Adds a reading to the course. */
  void add(Reading reading, Scaling scaling) {
    if (originMicros < 0) {
      originMicros = reading.startMicros();
    }
    boolean fine = scaling.fine(reading);
    quantity(Course.Quantity.SUPPLY_A, reading, scaling, fine ? Channel.J : Channel.I, supplyA);
    quantity(Course.Quantity.SUPPLY_V, reading, scaling, Channel.V, supplyV);
    for (int rail = 1; rail <= 3; rail++) {
      Course.Quantity quantity = Course.Quantity.ofRail(rail);
      if (ReadingFigures.clipOn(reading, rail)) {
        quantity(quantity, reading, scaling, Channel.ofRail(rail), rails[rail - 1]);
      } else {
        rails[rail - 1].clear();
        set(quantity, NOTHING, NOTHING, NOTHING);
      }
    }
    level(Course.Quantity.HEAD_DBV, reading, scaling, Channel.H);
    level(Course.Quantity.METER_DBV, reading, scaling, Channel.M);
    course.append((reading.startMicros() - originMicros) / 1000, low, high, mean);
  }

  private void quantity(
      Course.Quantity quantity,
      Reading reading,
      Scaling scaling,
      Channel channel,
      RecentMean recent) {
    double a = scaling.value(channel, reading.lowest(channel));
    double b = scaling.value(channel, reading.highest(channel));
    double m = scaling.mean(reading, channel);
    recent.add(m);
    set(quantity, (float) Math.min(a, b), (float) Math.max(a, b), (float) m);
  }

  private void level(Course.Quantity quantity, Reading reading, Scaling scaling, Channel channel) {
    double perCount = Math.abs(scaling.calibration().scale(channel).perCount());
    // A quiet channel shows the converter's own step noise, never minus infinity.
    double rms = Math.max(reading.deviationCounts(channel), 1 / Math.sqrt(12)) * perCount;
    float dbv = (float) (20 * Math.log10(rms));
    set(quantity, dbv, dbv, dbv);
  }

  private void set(Course.Quantity quantity, float lowest, float highest, float average) {
    low[quantity.ordinal()] = lowest;
    high[quantity.ordinal()] = highest;
    mean[quantity.ordinal()] = average;
  }

  /** Course time of a probe time. */
  double courseMs(long micros) {
    return originMicros < 0 ? 0 : (micros - originMicros) / MICROS_PER_MS;
  }

  /**
   * Mean of a quantity over the time just before a moment; null where nothing could be measured.
   */
  Double figureAt(Course.Quantity quantity, double ms, double overMs) {
    if (course.isEmpty()) {
      return null;
    }
    float[] lowest = new float[1];
    float[] highest = new float[1];
    float[] average = new float[1];
    course.columns(quantity, ms - overMs, ms, 1, lowest, highest, average);
    return Float.isNaN(average[0]) ? null : (Double) (double) average[0];
  }

  Course course() {
    return course;
  }

  @Override
  public void look(Summary.LookFigures figures) {
    look = figures;
  }

  @Override
  public void alarm(Alarm alarm) {
    for (int k = 0; k < alarms.size(); k++) {
      if (alarms.get(k).number() == alarm.number()) {
        alarms.set(k, alarm);
        return;
      }
    }
    alarms.add(alarm);
  }

  @Override
  public void off(OffCause by, double atMs) {
    levels = null;
  }

  @Override
  public void mark(String text, double atMs) {
    marks.add(new Snapshot.Mark(course.endMs(), text));
  }

  @Override
  public void link(ProbeEvent.LinkState state, String text, double atMs) {
    lost = state == ProbeEvent.LinkState.LOST;
    restarted |= state == ProbeEvent.LinkState.PROBE_RESTARTED;
    linkText = state == ProbeEvent.LinkState.RESTORED ? null : text;
  }

  @Override
  public void log(boolean nowLogging, String text, double atMs) {
    logging = nowLogging;
    logText = nowLogging ? null : text;
  }

  @Override
  public void levels(LevelWindow window) {
    levels = window;
  }

  /** What the chain does not know. */
  record Outside(
      Snapshot.Phase phase,
      Snapshot.Kind kind,
      Integer powerUp,
      String label,
      String notice,
      Integer countdownS,
      Double nowMs,
      String port,
      String logFile,
      long lostConversions,
      boolean reduced,
      Capture capture,
      Snapshot.Limits limits,
      List<Snapshot.Question> questions,
      Snapshot.Replay replay,
      Summary summary) {}

  /** The snapshot now. */
  Snapshot build(Chain chain, Outside outside) {
    double now = outside.nowMs() != null ? outside.nowMs() : course.endMs();
    Long closed = chain == null ? null : chain.closedMicros();
    Double elapsed = null;
    if (closed != null) {
      double end = chain.openedMicros() != null ? courseMs(chain.openedMicros()) : now;
      elapsed = Math.max(0, end - courseMs(closed));
    }
    Double headDbv =
        dbv(
            levels == null ? null : levels.headRmsV(),
            levels == null ? 0 : levels.headNoiseFloorV());
    Double meterDbv =
        dbv(
            levels == null ? null : levels.meterRmsV(),
            levels == null ? 0 : levels.meterNoiseFloorV());
    return new Snapshot(
        outside.phase(),
        outside.kind(),
        outside.powerUp(),
        outside.label(),
        sheet,
        outside.notice(),
        outside.countdownS(),
        now,
        closed == null ? null : courseMs(closed),
        elapsed,
        supplyA.mean(),
        supplyV.mean(),
        railsNow(chain, elapsed),
        headDbv,
        headUa(),
        meterDbv,
        headDbv == null || meterDbv == null ? null : meterDbv - headDbv,
        outside.limits(),
        alarms,
        look,
        tripView(chain, outside.capture()),
        link(outside),
        new Snapshot.Log(logging, outside.logFile(), logText),
        marks,
        outside.questions(),
        chain == null ? List.of() : chain.rules().notWatched(),
        course,
        outside.replay(),
        outside.summary());
  }

  private Snapshot.Link link(Outside outside) {
    Snapshot.LinkState state = Snapshot.LinkState.GOOD;
    if (outside.phase() == Snapshot.Phase.CONNECTING) {
      state = Snapshot.LinkState.CONNECTING;
    } else if (lost) {
      state = Snapshot.LinkState.LOST;
    } else if (restarted) {
      state = Snapshot.LinkState.PROBE_RESTARTED;
    } else if (outside.kind() != Snapshot.Kind.PROBE) {
      state = Snapshot.LinkState.NONE;
    }
    return new Snapshot.Link(
        state, outside.port(), linkText, outside.lostConversions(), outside.reduced());
  }

  private static Double dbv(Double volts, double floor) {
    return volts == null || volts <= floor || volts <= 0 ? null : 20 * Math.log10(volts);
  }

  private Double headUa() {
    Double ohm = sheet.levels() == null ? null : sheet.levels().headOhm();
    return ohm == null || levels == null || levels.headRmsV() <= levels.headNoiseFloorV()
        ? null
        : levels.headRmsV() / ohm * 1e6;
  }

  private List<Snapshot.Rail> railsNow(Chain chain, Double elapsedMs) {
    List<Snapshot.Rail> now = new ArrayList<>();
    for (JobSheet.Rail rail : sheet.rails()) {
      Double lowV = null;
      Double highV = null;
      if (rail.nominalV() != null && rail.tolerancePercent() != null) {
        double half = Math.abs(rail.nominalV()) * rail.tolerancePercent() / 100;
        lowV = rail.nominalV() - half;
        highV = rail.nominalV() + half;
      }
      boolean judged =
          elapsedMs != null
              && (rail.settleMs() == null || elapsedMs >= rail.settleMs())
              && chain != null
              && chain.openedMicros() == null;
      now.add(
          new Snapshot.Rail(
              rail.input(), rail.name(), rails[rail.input() - 1].mean(), lowV, highV, judged));
    }
    return now;
  }

  private Snapshot.TripView tripView(Chain chain, Capture capture) {
    if (chain == null || chain.trip() == null) {
      return null;
    }
    Trip trip = chain.trip();
    TripFigures figures = chain.tripFigures();
    String railName = figures.rail() == null ? null : railName(figures.rail());
    List<Float> values = null;
    double firstMs = 0;
    if (capture != null && capture.tripNumber() == trip.number()) {
      values = new ArrayList<>();
      for (int place = capture.missing(); place < Capture.LENGTH; place++) {
        values.add((float) chain.scaling().value(Channel.I, capture.counts(place)));
      }
      double stepMs = 1000.0 / Channel.I.conversionsPerSecond();
      firstMs =
          (trip.decidedMicros() - trip.crossedMicros()) / MICROS_PER_MS
              - (Capture.DECIDING - capture.missing()) * stepMs;
    }
    return new Snapshot.TripView(
        trip.number(),
        trip.cause(),
        railName,
        figures.atMs(),
        figures.value(),
        false,
        figures.limit(),
        figures.unit(),
        (trip.openedMicros() - trip.crossedMicros()) / MICROS_PER_MS,
        values,
        firstMs,
        1000.0 / Channel.I.conversionsPerSecond());
  }

  private String railName(int rail) {
    if (rail == 0) {
      return "supply";
    }
    JobSheet.Rail entry = sheet.rail(rail);
    return entry == null || entry.name() == null ? "rail " + rail : entry.name();
  }
}
