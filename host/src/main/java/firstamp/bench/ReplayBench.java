package firstamp.bench;

import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.TimeSource;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.pipeline.RunRefused;
import firstamp.run.LimitMove;
import firstamp.study.EarlierPowerUp;
import firstamp.study.ReplayRules;
import firstamp.study.StoredSummary;
import firstamp.trend.Course;
import firstamp.trend.LoggedCourse;
import java.util.List;

/**
 * A logged power-up behind the window: played, held, stepped, moved to any moment.
 *
 * <p>It opens with the overview that the log keeps, so that eight hours are there at once, and in
 * memory that does not grow with the length. Its thread, {@code replay}, then works the stream
 * through the same chain as live and replaces what was kept by what the rules find; what other
 * limits would have done is worked out there too. All methods may be called from any thread.
 */
public final class ReplayBench implements BenchSession {
  private static final long JOIN_MILLIS = 3_000;
  private static final double FIGURE_MS = 100;

  private final PowerUpReader reader;
  private final JobSheet sheet;
  private final String logFile;
  private final EventAdder later;
  private final ReplayClock clock;
  private final Thread thread;
  private final ReplayTasks tasks = new ReplayTasks();
  private volatile LoggedCourse course;
  private volatile ReplayTrack track;
  private volatile Summary summary;
  private volatile LookScale lookScale;
  private volatile LogException failure;
  private volatile Snapshot.WhatIf whatIf;
  private volatile EarlierPowerUp beside;
  private volatile int whatIfWanted;
  private volatile Worded notice;

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
    this(reader, effective, time, factor, logFile, null);
  }

  /**
   * The same, where marks and words can be added.
   *
   * @param later adds to the power-up in the log, null = nothing can be added
   */
  public ReplayBench(
      PowerUpReader reader,
      JobSheet effective,
      TimeSource time,
      double factor,
      String logFile,
      EventAdder later) {
    this.reader = reader;
    this.sheet = effective;
    this.logFile = logFile;
    this.later = later;
    this.clock = new ReplayClock(time, factor);
    this.thread = new Thread(this::work, "replay");
    thread.setDaemon(true);
  }

  /** Starts reading. */
  public void start() {
    thread.start();
  }

  /** Draws another power-up behind this one, both aligned at switch-on. */
  public void beside(PowerUpReader other) {
    tasks.put(
        () -> {
          EarlierPowerUp drawn = ReplayBeside.of(other, sheet);
          if (drawn != null) {
            beside = drawn;
            beside = ReplayBeside.compared(drawn, course, reader, other);
          }
        });
  }

  /** Works out what another sheet would have done. */
  public void whatIf(JobSheet other) {
    int mine = ++whatIfWanted;
    whatIf = Snapshot.WhatIf.working(other, 0);
    tasks.put(() -> workOut(other, mine));
  }

  private void work() {
    try {
      open();
      boolean found = false;
      while (!tasks.stopped()) {
        ReplayTasks.Task task = tasks.next(found);
        if (task != null) {
          task.run();
        } else {
          found = found || runRules();
        }
      }
    } catch (LogException damaged) {
      failure = damaged;
    }
  }

  private void open() throws LogException {
    List<ProbeEvent> events = reader.events();
    LoggedCourse opened = LoggedCourse.open(reader, events);
    ReplayTrack found = new ReplayTrack(sheet, opened, events, reader.alarmTransitions());
    summary = StoredSummary.of(reader.entry());
    lookScale =
        LookScale.of(reader.header().hello()).after(sheet, summary == null ? null : summary.look());
    clock.over(0, opened.endMs());
    course = opened;
    track = found;
  }

  /** Runs the rules again; false if something else is wanted first. */
  private boolean runRules() throws LogException {
    ReplayRules rules = new ReplayRules();
    if (!rules.run(reader, sheet, () -> !tasks.stopped() && !tasks.waiting(), share -> {})) {
      return false;
    }
    track.found(rules.transitions());
    summary = rules.summary();
    return true;
  }

  private void workOut(JobSheet other, int number) throws LogException {
    ReplayRules rules = new ReplayRules();
    try {
      boolean all =
          rules.whatIf(
              reader,
              other,
              () -> !tasks.stopped() && whatIfWanted == number,
              share -> whatIf = Snapshot.WhatIf.working(other, share));
      if (all) {
        whatIf =
            WhatIfFound.of(
                other, rules, reader.header().stream(), track.closedBy(Double.MAX_VALUE));
      }
    } catch (RunRefused unfit) {
      whatIf = Snapshot.WhatIf.refused(other, unfit.words());
    }
  }

  /** The summary, the stored one until the replay has its own; null while it is being opened. */
  public Summary summary() {
    return summary;
  }

  /** Why it could not be read; null otherwise. */
  public LogException failure() {
    return failure;
  }

  /** Why a mark or words could not be added; null otherwise. */
  public Worded notice() {
    return notice;
  }

  /** Whether it can be looked at. */
  public boolean opened() {
    return track != null;
  }

  @Override
  public Snapshot snapshot() {
    ReplayTrack now = track;
    if (failure != null || now == null) {
      return ReplaySnapshot.waiting(
          reader.entry(), sheet, logFile, failure == null ? null : Explained.of(failure));
    }
    double ms = clock.position();
    Snapshot.Replay replay =
        new Snapshot.Replay(0, course.endMs(), clock.factor(), clock.held(), now.timeBar());
    return ReplaySnapshot.at(ms, reader.entry(), now, course, logFile, replay, summary, FIGURE_MS)
        .with(
            new Snapshot.Beside(
                beside, null, null, whatIf, false, null, lookScale, now.saidUntil(ms)));
  }

  @Override
  public void off() {
    // Nothing is on in a replay.
  }

  @Override
  public void mark(String text) {
    if (track != null) {
      long micros = track.micros(clock.position());
      add(new ProbeEvent.Marked(micros, text));
    }
  }

  @Override
  public void note(int mark, String text) {
    if (track != null) {
      add(new ProbeEvent.Noted(track.micros(clock.position()), mark, text));
    }
  }

  @Override
  public void acknowledge() {
    if (track != null) {
      add(new ProbeEvent.Acknowledged(track.micros(course.endMs()), "", 0));
    }
  }

  /** Written to the log first; shown once it is there. */
  private void add(ProbeEvent event) {
    if (later == null) {
      return;
    }
    tasks.put(
        () -> {
          try {
            later.add(event);
          } catch (LogException failed) {
            // The power-up can be looked at all the same.
            notice = Explained.of(failed);
            return;
          }
          track = new ReplayTrack(sheet, course, reader.events(), track.transitions());
        });
  }

  @Override
  public void limit(LimitMove move) {
    Snapshot.WhatIf before = whatIf;
    whatIf(move.on(before == null ? sheet : before.sheet()));
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
    clock.moveTo(ms);
  }

  @Override
  public void speed(double next) {
    clock.speed(next);
  }

  @Override
  public void pause(boolean hold) {
    clock.hold(hold);
  }

  @Override
  public void step() {
    clock.step(Course.SLOT_MS);
  }

  @Override
  public void close() {
    tasks.stop();
    try {
      thread.join(JOIN_MILLIS);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
    if (course != null) {
      course.close();
    }
    if (beside != null && beside.course() instanceof LoggedCourse behind) {
      behind.close();
    }
  }
}
