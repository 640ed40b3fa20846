package firstamp.session;

import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.TimeSource;
import java.util.List;

/**
 * A logged power-up behind the window: played, held, stepped, moved to any moment.
 *
 * <p>Its thread, {@code replay}, first runs the whole power-up through the chain, as fast as it
 * goes; then snapshots of any moment are put together where they are asked for. All methods may be
 * called from any thread.
 */
public final class ReplayBench implements BenchSession {
  private static final long JOIN_MILLIS = 3_000;
  private static final double STEP_MS = Course.SLOT_MS;
  private static final double FIGURE_MS = 100;

  private final PowerUpReader reader;
  private final JobSheet sheet;
  private final TimeSource time;
  private final String logFile;
  private final ReplayTrack track;
  private final Thread thread;
  private volatile boolean stopped;
  private volatile boolean loaded;
  private volatile Summary summary;
  private volatile LogException failure;
  private double baseMs;
  private long baseNanos;
  private double factor;
  private boolean held;

  /**
   * A bench whose replay starts with {@link #start()}.
   *
   * @param reader of the power-up
   * @param effective sheet with defaults filled in
   * @param time the computer's clock
   * @param factor speed, 1 = as it was
   * @param logFile where it is kept
   */
  public ReplayBench(
      PowerUpReader reader, JobSheet effective, TimeSource time, double factor, String logFile) {
    this.reader = reader;
    this.sheet = effective;
    this.time = time;
    this.factor = factor;
    this.logFile = logFile;
    this.track = new ReplayTrack(effective);
    this.thread = new Thread(this::load, "replay");
    thread.setDaemon(true);
  }

  /** Starts reading. */
  public void start() {
    thread.start();
  }

  private void load() {
    try {
      ReplayPowerUp replay = new ReplayPowerUp(reader, sheet, track, micros -> !stopped);
      replay.whenChainIsThere(track::follow);
      summary = replay.run();
    } catch (LogException damaged) {
      failure = damaged;
    }
    synchronized (this) {
      baseMs = track.course().beginMs();
      baseNanos = time.monotonicNanos();
    }
    loaded = true;
  }

  /** The replayed summary; null while it is being read. */
  public Summary summary() {
    return summary;
  }

  /** Why it could not be read; null otherwise. */
  public LogException failure() {
    return failure;
  }

  private synchronized double position() {
    double end = track.course().endMs();
    if (held) {
      return Math.min(end, baseMs);
    }
    if (Double.isInfinite(factor)) {
      return end;
    }
    return Math.min(end, baseMs + (time.monotonicNanos() - baseNanos) / 1e6 * factor);
  }

  private synchronized void moveTo(double ms) {
    Course course = track.course();
    baseMs = Math.max(course.beginMs(), Math.min(course.endMs(), ms));
    baseNanos = time.monotonicNanos();
  }

  @Override
  public Snapshot snapshot() {
    if (!loaded) {
      return track
          .builder()
          .build(
              null,
              outside(Snapshot.Phase.CONNECTING, 0.0, "reading the bench log ...", null, null));
    }
    if (failure != null) {
      return track
          .builder()
          .build(null, outside(Snapshot.Phase.ENDED, 0.0, failure.getMessage(), null, null));
    }
    double now = position();
    Course course = track.course();
    Snapshot.Replay replay;
    synchronized (this) {
      replay = new Snapshot.Replay(course.beginMs(), course.endMs(), factor, held, track.events());
    }
    Snapshot.Phase phase = track.phaseAt(now);
    Snapshot whole =
        track
            .builder()
            .build(
                track.chain(),
                outside(phase, now, null, replay, phase == Snapshot.Phase.ENDED ? summary : null));
    return at(whole, now);
  }

  /** The snapshot of the end, brought back to a moment. */
  private Snapshot at(Snapshot whole, double now) {
    Double closed = track.closedBy(now);
    Double opened = track.openedBy(now);
    Double elapsed = closed == null ? null : (Double) ((opened == null ? now : opened) - closed);
    Double head = track.builder().figureAt(Course.Quantity.HEAD_DBV, now, FIGURE_MS);
    Double meter = track.builder().figureAt(Course.Quantity.METER_DBV, now, FIGURE_MS);
    boolean levels = sheet.levels() != null && opened == null && closed != null;
    List<Snapshot.Rail> rails =
        whole.rails().stream()
            .map(
                rail ->
                    new Snapshot.Rail(
                        rail.input(),
                        rail.name(),
                        track
                            .builder()
                            .figureAt(Course.Quantity.ofRail(rail.input()), now, FIGURE_MS),
                        rail.lowV(),
                        rail.highV(),
                        rail.judged() && elapsed != null && opened == null))
            .toList();
    return new Snapshot(
        whole.phase(),
        whole.kind(),
        whole.powerUp(),
        whole.label(),
        whole.sheet(),
        whole.notice(),
        whole.countdownS(),
        now,
        closed,
        elapsed,
        track.builder().figureAt(Course.Quantity.SUPPLY_A, now, FIGURE_MS),
        track.builder().figureAt(Course.Quantity.SUPPLY_V, now, FIGURE_MS),
        rails,
        levels ? head : null,
        levels && head != null ? headUa(head) : null,
        levels ? meter : null,
        levels && head != null && meter != null ? (Double) (meter - head) : null,
        whole.limits(),
        track.alarmsAt(now),
        track.lookAt(now),
        track.trippedBy(now) ? whole.trip() : null,
        whole.link(),
        whole.log(),
        track.marksUntil(now),
        whole.questions(),
        whole.notWatched(),
        whole.course(),
        whole.replay(),
        whole.summary());
  }

  private Double headUa(double headDbv) {
    Double ohm = sheet.levels().headOhm();
    return ohm == null ? null : (Double) (Math.pow(10, headDbv / 20) / ohm * 1e6);
  }

  private SnapshotBuilder.Outside outside(
      Snapshot.Phase phase, Double nowMs, String notice, Snapshot.Replay replay, Summary end) {
    return new SnapshotBuilder.Outside(
        phase,
        Snapshot.Kind.REPLAY,
        (int) reader.entry().number(),
        reader.entry().label(),
        notice,
        null,
        nowMs,
        null,
        logFile,
        0,
        false,
        track.chain() == null ? null : track.chain().capture(),
        LiveBench.limits(sheet),
        List.of(),
        replay,
        end);
  }

  @Override
  public void off() {
    // Nothing is on in a replay.
  }

  @Override
  public void mark(String text) {
    // A replay is not logged again.
  }

  @Override
  public void acknowledge() {
    // What was seen then is in the log.
  }

  @Override
  public void restore(int tripNumber) {
    // Nothing is switched in a replay.
  }

  @Override
  public void answer(String questionId, boolean yes) {
    // A replay asks nothing.
  }

  @Override
  public void seek(double ms) {
    moveTo(ms);
  }

  @Override
  public synchronized void speed(double next) {
    moveTo(position());
    factor = next;
  }

  @Override
  public synchronized void pause(boolean hold) {
    moveTo(position());
    held = hold;
  }

  @Override
  public synchronized void step() {
    double next = position() + STEP_MS;
    held = true;
    moveTo(next);
  }

  @Override
  public void close() {
    stopped = true;
    try {
      thread.join(JOIN_MILLIS);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
  }
}
