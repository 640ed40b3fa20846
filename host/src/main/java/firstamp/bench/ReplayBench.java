package firstamp.bench;

import firstamp.account.ComparisonWords;
import firstamp.log.LogException;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.TimeSource;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.pipeline.RunRefused;
import firstamp.run.LimitMove;
import firstamp.sheet.SheetException;
import firstamp.study.EarlierPowerUp;
import firstamp.study.PowerUpStudy;
import firstamp.study.ReplayRules;
import firstamp.study.StoredSummary;
import firstamp.trend.Course;
import firstamp.trend.LoggedCourse;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;

/**
 * A logged power-up behind the window: played, held, stepped, moved to any moment.
 *
 * <p>It opens with the overview that the log keeps, so that eight hours are there at once, and in
 * memory that does not grow with the length. Its thread, {@code replay}, then works the stream
 * through the same chain as live and puts what the rules find in the place of what was kept; what
 * other limits would have done is worked out there too. All methods may be called from any thread.
 */
public final class ReplayBench implements BenchSession {
  private static final long JOIN_MILLIS = 3_000;
  private static final double FIGURE_MS = 100;
  private static final long LONGEST_COMPARED_MS = 20 * 60_000;

  private final PowerUpReader reader;
  private final JobSheet sheet;
  private final String logFile;
  private final Later later;
  private final ReplayClock clock;
  private final Thread thread;
  private final Queue<Task> tasks = new ArrayDeque<>();
  private volatile boolean stopped;
  private volatile LoggedCourse course;
  private volatile ReplayTrack track;
  private volatile Summary summary;
  private volatile Snapshot.LookScale lookScale;
  private volatile LogException failure;
  private volatile Snapshot.WhatIf whatIf;
  private volatile EarlierPowerUp beside;
  private volatile int whatIfWanted;
  private volatile Worded notice;

  /** Adds an event to the power-up in the log. */
  @FunctionalInterface
  public interface Later {
    /**
     * Adds it; called on the replay's own thread.
     *
     * @throws LogException it could not be written
     */
    void add(ProbeEvent event) throws LogException;
  }

  private interface Task {
    void run() throws LogException;
  }

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
      Later later) {
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
    put(
        () -> {
          List<ProbeEvent> events = other.events();
          LoggedCourse behind = LoggedCourse.open(other, events);
          ReplayTrack others = new ReplayTrack(sheet, behind, events, List.of());
          Double closed = others.closedBy(behind.endMs());
          if (closed != null) {
            beside =
                new EarlierPowerUp(
                    other.entry().number(), other.entry().baseline(), behind, closed);
            compare(other);
          }
        });
  }

  /** What changed from the other one to this one; very long ones are drawn, not worked through. */
  private void compare(PowerUpReader other) throws LogException {
    if (course.endMs() > LONGEST_COMPARED_MS || beside.course().endMs() > LONGEST_COMPARED_MS) {
      return;
    }
    List<String> changes;
    try {
      PowerUpStudy mine = PowerUpStudy.of(reader);
      changes = ComparisonWords.ENGLISH.changes(mine.against(PowerUpStudy.of(other)), mine.sheet());
    } catch (SheetException unreadable) {
      changes = List.of(unreadable.getMessage());
    }
    EarlierPowerUp drawn = beside;
    beside =
        new EarlierPowerUp(
            drawn.powerUp(), drawn.knownGood(), drawn.course(), drawn.closedMs(), changes);
  }

  /** Works out what another sheet would have done. */
  public void whatIf(JobSheet other) {
    int mine = ++whatIfWanted;
    whatIf = Snapshot.WhatIf.working(other, 0);
    put(() -> workOut(other, mine));
  }

  private void put(Task task) {
    synchronized (tasks) {
      tasks.add(task);
      tasks.notifyAll();
    }
  }

  private void work() {
    try {
      open();
      boolean found = false;
      while (!stopped) {
        Task task = next(found);
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
        Snapshot.LookScale.of(reader.header().hello())
            .after(sheet, summary == null ? null : summary.look());
    clock.over(0, opened.endMs());
    course = opened;
    track = found;
  }

  private boolean waiting() {
    synchronized (tasks) {
      return !tasks.isEmpty();
    }
  }

  /** Runs the rules again; false if something else is wanted first. */
  private boolean runRules() throws LogException {
    ReplayRules rules = new ReplayRules();
    if (!rules.run(reader, sheet, () -> !stopped && !waiting(), share -> {})) {
      return false;
    }
    track.found(rules.transitions());
    summary = rules.summary();
    return true;
  }

  /** The next task; null = there is none now, or it is to stop. */
  private Task next(boolean await) {
    synchronized (tasks) {
      while (await && tasks.isEmpty() && !stopped) {
        try {
          tasks.wait();
        } catch (InterruptedException stop) {
          Thread.currentThread().interrupt();
          stopped = true;
        }
      }
      return stopped ? null : tasks.poll();
    }
  }

  private void workOut(JobSheet other, int number) throws LogException {
    ReplayRules rules = new ReplayRules();
    try {
      boolean all =
          rules.whatIf(
              reader,
              other,
              () -> !stopped && whatIfWanted == number,
              share -> whatIf = Snapshot.WhatIf.working(other, share));
      if (all) {
        whatIf = found(other, rules);
      }
    } catch (RunRefused unfit) {
      whatIf = Snapshot.WhatIf.refused(other, unfit.getMessage());
    }
  }

  private Snapshot.WhatIf found(JobSheet other, ReplayRules rules) throws LogException {
    Summary would = rules.summary();
    boolean off = "trip".equals(would.ended()) || "rule-off".equals(would.ended());
    List<Alarm> raised = last(rules.transitions());
    boolean raw = reader.header().stream() == PowerUpHeader.Stream.RAW;
    Double closed = track.closedBy(Double.MAX_VALUE);
    return new Snapshot.WhatIf(
        other,
        1,
        raised,
        off && closed != null ? (Double) (closed + would.onMs()) : null,
        off ? reason(raised, would, rules.demanded()) : null,
        raw ? Snapshot.Judged.ALL : Snapshot.Judged.RULES_ONLY);
  }

  private static String reason(List<Alarm> raised, Summary would, Alarm demanded) {
    for (Alarm alarm : raised) {
      if (would.tripAtMs() != null && alarm.atMs() == would.tripAtMs()) {
        return alarm.text();
      }
    }
    return demanded == null ? null : demanded.text();
  }

  private static List<Alarm> last(List<Alarm> transitions) {
    java.util.SortedMap<Integer, Alarm> latest = new java.util.TreeMap<>();
    transitions.forEach(alarm -> latest.put(alarm.number(), alarm));
    return List.copyOf(latest.values());
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
    put(
        () -> {
          try {
            later.add(event);
          } catch (LogException failed) {
            // The power-up can be looked at all the same.
            notice = Explained.of(failed);
            return;
          }
          ReplayTrack again = new ReplayTrack(sheet, course, reader.events(), track.transitions());
          track = again;
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
    stopped = true;
    synchronized (tasks) {
      tasks.notifyAll();
    }
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
