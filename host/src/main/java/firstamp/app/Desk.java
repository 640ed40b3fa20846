package firstamp.app;

import firstamp.account.Comparison;
import firstamp.bench.LiveBench;
import firstamp.bench.ReplayBench;
import firstamp.bench.Snapshot;
import firstamp.emulate.EmulatedProbe;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.locate.wire.TriedWire;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.log.SetNotes;
import firstamp.model.JobSheet;
import firstamp.model.TimeSource;
import firstamp.model.text.Worded;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.report.HtmlReport;
import firstamp.report.ReportInput;
import firstamp.run.ClipFollower;
import firstamp.run.LivePowerUp;
import firstamp.run.RunSetup;
import firstamp.run.SoundingListener;
import firstamp.run.TripsInARow;
import firstamp.run.questions.AnswerBook;
import firstamp.run.questions.ArmGate;
import firstamp.run.questions.Asking;
import firstamp.run.questions.Cautions;
import firstamp.run.talk.PortOpener;
import firstamp.sheet.SheetException;
import firstamp.sound.AlarmSound;
import firstamp.study.EarlierPowerUps;
import firstamp.study.PowerUpStudy;
import firstamp.study.SearchState;
import firstamp.study.SignalSearch;
import firstamp.study.Thinking;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * The bench behind the first screen: its log, the job sheets beside it, the probe box.
 *
 * <p>Nearly everything here touches disk or port: never call it on the Swing thread. Safe to share.
 */
public final class Desk {
  private static final long QUIET_MICROS = 3_000_000;
  private static final long CLOSE_MILLIS = 10_000;

  private final Path log;
  private final Path emulatedLog;
  private final SheetShelf shelf;
  private final Ports ports;
  private final TimeSource time;
  private final Function<JobSheet, AlarmSound> sounds;
  private final Pace pace;
  private final HomeFolder home;
  private final AtomicBoolean warmed = new AtomicBoolean();
  private volatile Worded trouble;

  /** The latest power-up of each set, whose search the next one carries on. */
  private final Map<String, LiveBench> searched = new ConcurrentHashMap<>();

  private volatile Consumer<Watched> started = watched -> {};
  private ProbeFlow probeFlow;
  private AnswerBook answers;

  /**
   * A bench.
   *
   * @param log of the real sets
   * @param emulatedLog of the emulated ones; the same file where only those are kept
   * @param ports of this computer
   * @param time the computer's clock
   * @param sounds makes what is heard of a power-up; may give null = silent
   */
  public Desk(
      Path log,
      Path emulatedLog,
      Ports ports,
      TimeSource time,
      Function<JobSheet, AlarmSound> sounds) {
    this(log, emulatedLog, ports, time, sounds, Pace.REAL_TIME, HomeFolder.ofThePerson());
  }

  /** With an emulated probe that runs at another pace, and in another home, for tests. */
  public Desk(
      Path log,
      Path emulatedLog,
      Ports ports,
      TimeSource time,
      Function<JobSheet, AlarmSound> sounds,
      Pace pace,
      HomeFolder home) {
    this.home = home;
    this.sounds = sounds;
    this.log = log.toAbsolutePath();
    this.emulatedLog = emulatedLog.toAbsolutePath();
    this.shelf = new SheetShelf(folder().resolve("sheets"));
    this.ports = ports;
    this.time = time;
    this.pace = pace;
  }

  /** Folder of log, sheets, reports and settings. */
  public Path folder() {
    return log.getParent();
  }

  public Path log() {
    return log;
  }

  public Path emulatedLog() {
    return emulatedLog;
  }

  /** How paths are written on the screen. */
  public HomeFolder home() {
    return home;
  }

  public SheetShelf shelf() {
    return shelf;
  }

  public Ports ports() {
    return ports;
  }

  public TimeSource time() {
    return time;
  }

  Pace pace() {
    return pace;
  }

  /** Dress that was chosen last, light and English at first. */
  public WindowOptions options(boolean keepAwake) {
    return settings().options(keepAwake);
  }

  /** What went wrong when a log was closed last, null = nothing; the first screen says it. */
  public Worded trouble() {
    return trouble;
  }

  /** Size that was chosen last, null = as the system says. */
  public Double scale() {
    return settings().scale();
  }

  /** The guided steps with the probe box, where they were left. */
  public synchronized ProbeFlow probeFlow() {
    if (probeFlow == null) {
      probeFlow = new ProbeFlow(this);
    }
    return probeFlow;
  }

  /** Told of every power-up that begins here, before anybody else has it; from any thread. */
  public void whenStarted(Consumer<Watched> next) {
    started = next;
  }

  /** Closes the line to the probe box; finished steps start again the next time. */
  public synchronized void leaveProbe() {
    if (probeFlow != null) {
      probeFlow.leave();
      probeFlow = probeFlow.finished() ? null : probeFlow;
    }
  }

  public DeskSettings settings() {
    return DeskSettings.load(folder());
  }

  /** A probe box has answered on this port: it is offered again the next time. */
  public void keepPort(String path) throws IOException {
    boolean typed = ports.list().stream().noneMatch(each -> each.path().equals(path));
    settings().withPort(path, typed).save(folder());
  }

  /** What was answered before earlier power-ups, and how each set was left. */
  public synchronized AnswerBook answers() {
    if (answers == null) {
      answers = AnswerBook.in(folder(), time);
    }
    return answers;
  }

  /**
   * How often a set has switched itself off in a row.
   *
   * @param file log that it is kept in
   * @param justNow cause of a trip that is not in the log yet, null = none
   */
  public TripsInARow trips(Path file, String set, String justNow) throws LogException {
    return TripsInARow.of(
        BenchLog.openForReading(file, time).list(), set, justNow, time.epochMillis());
  }

  /** Whether a replay is still to be made ready; true once only. */
  public boolean warms() {
    return warmed.compareAndSet(false, true);
  }

  public PowerUpReader reader(Path file, long number) throws LogException {
    return BenchLog.openForReading(file, time).find(Long.toString(number));
  }

  /**
   * Begins a power-up of a real set: cautions and questions first, the switch stays open meanwhile.
   *
   * @param restoreTrip number that the probe box remembers, 0 = none
   */
  public Watched start(ReadySheet sheet, String port, String label, int restoreTrip)
      throws LogException, IOException {
    Files.createDirectories(folder());
    BenchLog open = BenchLog.open(log, time);
    TriedWire tried = Thinking.tried(sheet.effective(), label);
    ReadySheet tight = sheet.forTrial(open, tried);
    JobSheet effective = tight.effective();
    String cautions = Cautions.question(open, effective.set().name());
    Asking asking = Asking.about(answers(), cautions, effective, label, port);
    RunSetup setup =
        setup(effective, label, restoreTrip, new ArmGate(asking, List.of())).trying(tried);
    return live(
        setup,
        tight,
        () -> ports.open(port),
        open,
        port,
        new ChainListener() {},
        trip -> start(sheet, port, label, trip));
  }

  /** Begins a power-up of an invented set: the cautions are shown, nothing real is switched. */
  public Watched startEmulated(String scenario) throws LogException, SheetException, IOException {
    ReadySheet sheet = ReadySheet.of("sheet of the emulated set", Scenarios.sheetJson(scenario));
    Files.createDirectories(emulatedLog.getParent());
    BenchLog open = BenchLog.open(emulatedLog, time);
    String caution = Cautions.question(open, sheet.effective().set().name());
    Asking asking = Asking.practice(answers(), caution, sheet.effective());
    RunSetup setup = setup(sheet.effective(), null, 0, new ArmGate(asking, List.of()));
    ClipFollower clip = ClipFollower.of(sheet.effective());
    PortOpener opener =
        () -> {
          EmulatedProbe probe = Scenarios.open(scenario, ProbeOptions.of(1, pace));
          clip.hands(probe.hands());
          return probe;
        };
    return live(setup, sheet, opener, open, null, clip, trip -> startEmulated(scenario));
  }

  private RunSetup setup(JobSheet effective, String label, int restoreTrip, ArmGate gate) {
    return new RunSetup(
            effective,
            new ProbeSettings(effective),
            label == null || label.isBlank() ? null : label.strip(),
            true,
            null,
            restoreTrip,
            false,
            QUIET_MICROS,
            pace == Pace.REAL_TIME,
            gate)
        .withPedal(settings().pedalJob());
  }

  private Watched live(
      RunSetup setup,
      ReadySheet sheet,
      PortOpener opener,
      BenchLog open,
      String port,
      ChainListener nobody,
      Watched.Again again) {
    boolean emulated = port == null;
    AlarmSound sound = sounds.apply(sheet.effective());
    LiveBench bench =
        new LiveBench(
            setup,
            time,
            emulated ? Snapshot.Kind.EMULATED : Snapshot.Kind.PROBE,
            port,
            open.file().toString(),
            setup.gate(),
            sound == null ? nobody : new SoundingListener(nobody, sound),
            (listener, progress, trip) ->
                new LivePowerUp(
                    open,
                    sheet.texts(),
                    setup.restoring(emulated ? 0 : trip == 0 ? setup.restoreTrip() : trip),
                    opener,
                    time,
                    listener,
                    progress),
            () -> EarlierPowerUps.course(open, sheet.texts().setName()));
    LiveBench before = searched.put(sheet.texts().setName(), bench);
    bench.carryOn(before == null ? null : before.search());
    // On a request to end, the process opens the switch first.
    Thread onSignal = new Thread(bench::close, "signal");
    Runtime.getRuntime().addShutdownHook(onSignal);
    Watched watched =
        new Watched(
            bench,
            open.file(),
            Hearing.of(sound),
            again,
            emulated ? null : sheet.texts().given(),
            () -> done(open, onSignal, sound));
    started.accept(watched);
    bench.start();
    return watched;
  }

  private void done(BenchLog open, Thread onSignal, AlarmSound sound) {
    if (sound != null) {
      sound.close();
    }
    try {
      Runtime.getRuntime().removeShutdownHook(onSignal);
    } catch (IllegalStateException alreadyEnding) {
      Thread.yield(); // The process is ending by a signal; the hook is at work.
    }
    try {
      // Aside, but the window waits for it when it closes.
      open.closeWithin(CLOSE_MILLIS);
      trouble = null;
    } catch (LogException failed) {
      trouble = failed.words();
    }
  }

  /** What was searched in a stored power-up; null if its sheet names no path. */
  public SearchState search(Path file, long number) throws LogException, SheetException {
    return SignalSearch.of(reader(file, number));
  }

  /** Plays a stored power-up. */
  public Watched replay(Path file, long number) throws LogException, SheetException {
    PowerUpReader reader = reader(file, number);
    JobSheet effective =
        ReadySheet.of("stored sheet of power-up " + number, reader.header().effectiveSheetJson())
            .effective();
    ReplayBench bench =
        new ReplayBench(
            reader,
            effective,
            time,
            1,
            file.toString(),
            event -> {
              try (BenchLog open = BenchLog.open(file, time)) {
                open.later(number, event);
              }
            });
    List<EarlierPowerUps.Earlier> before =
        EarlierPowerUps.of(BenchLog.openForReading(file, time), number, reader.entry().setName());
    if (!before.isEmpty()) {
      // The known good one where there is one, else the one before.
      long other = before.get(before.size() - 1).entry().number();
      bench.beside(reader(file, other));
    }
    bench.start();
    return new Watched(bench, file, Hearing.NOTHING, null, null, () -> {});
  }

  /**
   * A stored power-up and what it is compared with.
   *
   * @param study of it
   * @param against earlier ones of the same set
   * @param notes kept about the set
   */
  public record Showing(
      PowerUpStudy study, List<Against> against, SetNotes notes, List<String> found) {}

  /**
   * What changed from an earlier power-up.
   *
   * @param earlier which
   * @param comparison from it to this one
   */
  public record Against(EarlierPowerUps.Earlier earlier, Comparison comparison) {}

  /** What a stored power-up showed. Reads its whole stream. */
  public Showing showing(Path file, long number) throws LogException, SheetException {
    BenchLog open = BenchLog.openForReading(file, time);
    PowerUpStudy now = PowerUpStudy.of(open.find(Long.toString(number)));
    List<Against> against = new ArrayList<>();
    for (EarlierPowerUps.Earlier earlier :
        EarlierPowerUps.of(open, number, now.sheet().set().name())) {
      PowerUpStudy then = PowerUpStudy.of(open.find(Long.toString(earlier.entry().number())));
      against.add(new Against(earlier, now.against(then)));
    }
    SetNotes notes = SetNotes.of(open, now.entry().setName());
    return new Showing(now, against, notes, Thinking.sentences(open, now, options(true).locale()));
  }

  /** Flags a power-up as known good and as found. */
  public void flag(Path file, long number, boolean asFound, boolean knownGood) throws LogException {
    BenchLog.open(file, time).flag(number, asFound, knownGood);
  }

  /**
   * Writes the report of a power-up into a new file; one that is there already is left alone.
   *
   * @throws java.nio.file.FileAlreadyExistsException there is such a file
   */
  public void report(Showing showing, Path to) throws IOException {
    if (to.getParent() != null) {
      Files.createDirectories(to.getParent());
    }
    Locale locale = options(true).locale();
    ReportInput.Thoughts thoughts = new ReportInput.Thoughts(showing.found(), List.of());
    Files.writeString(
        to,
        HtmlReport.page(
            ReportInput.of(showing.study(), null, showing.notes(), thoughts, locale), locale),
        StandardOpenOption.CREATE_NEW,
        StandardOpenOption.WRITE);
  }

  /** Where the report of a power-up is proposed to go: a name that is free. */
  public Path reportFile(PowerUpStudy study) {
    String stem =
        SheetShelf.stem(study.sheet().set().name()) + "-power-up-" + study.entry().number();
    Path folder = folder().resolve("reports");
    Path file = folder.resolve(stem + ".html");
    for (int again = 2; Files.exists(file); again++) {
      file = folder.resolve(stem + "-" + again + ".html");
    }
    return file;
  }
}
