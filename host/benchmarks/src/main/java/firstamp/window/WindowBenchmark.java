package firstamp.window;

import com.sun.management.OperatingSystemMXBean;
import firstamp.app.Desk;
import firstamp.app.WindowOptions;
import firstamp.bench.BenchSession;
import firstamp.bench.LiveBench;
import firstamp.bench.ReplayBench;
import firstamp.bench.Snapshot;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.log.BenchLog;
import firstamp.model.JobSheet;
import firstamp.model.TimeSource;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.LivePowerUp;
import firstamp.run.RunSetup;
import firstamp.run.SheetTexts;
import firstamp.run.questions.ArmGate;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import firstamp.window.page.Tools;
import firstamp.window.pages.ReplayWarming;
import firstamp.window.strips.StripMaker;
import firstamp.window.strips.TimeView;
import firstamp.window.widgets.Palette;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javax.swing.RepaintManager;
import javax.swing.SwingUtilities;

/**
 * The window under load: {@code live}, {@code hours H}; a long log: {@code write H FILE}, {@code
 * open FILE}, {@code warm FILE}. The first two need a display.
 *
 * <p>What is printed goes into README.md of this folder, with commit, date and command.
 */
public final class WindowBenchmark {
  private static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);

  private WindowBenchmark() {}

  /** Runs one of the benchmarks. */
  public static void main(String[] arguments) throws Exception {
    switch (arguments[0]) {
      case "live" -> live();
      case "hours" -> hours(Double.parseDouble(arguments[1]));
      case "write" -> new LongLog(Path.of(arguments[2])).write(Double.parseDouble(arguments[1]));
      case "open" -> open(Path.of(arguments[1]));
      case "warm" -> warm(Path.of(arguments[1]));
      default ->
          throw new IllegalArgumentException(
              arguments[0] + ", expected live, hours, write, open, warm");
    }
    System.exit(0);
  }

  static JobSheet sheet(String scenario) throws Exception {
    return Defaults.fill(SheetReader.parse(scenario, Scenarios.sheetJson(scenario)).sheet());
  }

  /** The raw stream of all eight channels, ten seconds in view, following. */
  private static void live() throws Exception {
    JobSheet sheet = sheet("healthy");
    Path folder = Files.createTempDirectory("window-benchmark");
    BenchLog log = BenchLog.open(folder.resolve("bench.db"), TimeSource.system());
    RunSetup setup =
        new RunSetup(
            sheet,
            new ProbeSettings(sheet),
            null,
            true,
            null,
            0,
            false,
            2_000_000,
            true,
            ArmGate.alwaysOpen());
    LiveBench bench =
        new LiveBench(
            setup,
            TimeSource.system(),
            Snapshot.Kind.EMULATED,
            null,
            "bench.db",
            setup.gate(),
            new ChainListener() {},
            (listener, progress, restore) ->
                new LivePowerUp(
                    log,
                    new SheetTexts("set", "{}", "{}"),
                    setup,
                    () -> Scenarios.open("healthy", ProbeOptions.of(1, Pace.REAL_TIME)),
                    TimeSource.system(),
                    listener,
                    progress));
    bench.start();
    measure("live, 10 s in view", bench, 10_000, 15, 20);
    bench.close();
    log.close();
  }

  /** Hours in view and going on. */
  private static void hours(double hours) throws Exception {
    LongSession session = new LongSession(sheet("healthy"), hours);
    session.start();
    measure(hours + " h in view", session, hours * 3_600_000, 4, 15);
  }

  private static void measure(
      String what, BenchSession session, double widthMs, int warmS, int seconds) throws Exception {
    BenchWindow.prepare(OPTIONS);
    DrawingTimes times = new DrawingTimes();
    SwingUtilities.invokeAndWait(() -> RepaintManager.setCurrentManager(times));
    BenchWindow window = BenchWindow.show(session, OPTIONS);
    SwingUtilities.invokeAndWait(
        () -> {
          var time = window.panel().time();
          time.zoom(widthMs / time.widthMs(), time.toMs());
        });
    Thread.sleep(warmS * 1000L);
    OperatingSystemMXBean system =
        (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    long cpu = system.getProcessCpuTime();
    long begin = System.nanoTime();
    times.begin();
    Thread.sleep(seconds * 1000L);
    times.end();
    double wall = System.nanoTime() - begin;
    double core = (system.getProcessCpuTime() - cpu) / wall;
    System.out.printf(
        Locale.ROOT,
        "%s: %.1f pictures/s, drawing median %.1f ms, 99 %% under %.1f ms, longest %.1f ms (time of"
            + " the processor: median %.1f, 99 %% under %.1f ms), %.0f %% of a core%n",
        what,
        times.pictures() / (wall / 1e9),
        times.percentile(0.5),
        times.percentile(0.99),
        times.percentile(1),
        times.cpuPercentile(0.5),
        times.cpuPercentile(0.99),
        100 * core);
  }

  /** The same behind a first screen that has been read for a while. */
  private static void warm(Path file) throws Exception {
    Desk desk = new Desk(file, file, null, TimeSource.system(), sheet -> null);
    Tools tools =
        new Tools(
            new Words(Locale.ENGLISH),
            new Numbers(Locale.ENGLISH),
            Palette.of(WindowOptions.Theme.LIGHT),
            null,
            desk);
    long begin = System.nanoTime();
    new ReplayWarming(desk, tools)
        .open(
            file, BenchLog.openForReading(file, TimeSource.system()).find("last").entry().number());
    System.out.printf(
        Locale.ROOT, "made ready aside in %.0f ms%n", (System.nanoTime() - begin) / 1e6);
    open(file);
  }

  /** A logged power-up of hours: until its overview can be seen. */
  private static void open(Path file) throws Exception {
    for (int round = 0; round < 5; round++) {
      OperatingSystemMXBean system =
          (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
      long cpu = system.getProcessCpuTime();
      long begin = System.nanoTime();
      BenchLog log = BenchLog.openForReading(file, TimeSource.system());
      var reader = log.find("last");
      JobSheet sheet = sheet("healthy");
      ReplayBench bench = new ReplayBench(reader, sheet, TimeSource.system(), 1, "bench.db");
      bench.start();
      while (!bench.opened()) {
        java.util.concurrent.locks.LockSupport.parkNanos(500_000);
      }
      double opened = (System.nanoTime() - begin) / 1e6;
      Snapshot now = bench.snapshot();
      TimeView time = new TimeView();
      time.show(0, now.course().endMs());
      bench.pause(true);
      bench.seek(now.course().endMs());
      new StripMaker(new Words(Locale.ENGLISH), new Numbers(Locale.ENGLISH))
          .picture(bench.snapshot(), time, 1000);
      double seen = (System.nanoTime() - begin) / 1e6;
      double core = (system.getProcessCpuTime() - cpu) / 1e6;
      System.out.printf(
          Locale.ROOT,
          "round %d: %.2f h open in %.0f ms, overview made in %.0f ms (%.0f ms of the processor,"
              + " all threads)%n",
          round + 1,
          now.course().endMs() / 3.6e6,
          opened,
          seen,
          core);
      bench.close();
    }
  }
}
