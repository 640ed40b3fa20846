package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.WindowOptions;
import firstamp.bench.LiveBench;
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
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Nothing on the Swing thread waits for disk, port or analysis.
 *
 * <p>A watcher looks at the Swing thread every few milliseconds. A wall clock would fail on a busy
 * machine without any fault, so two things are held that do not depend on the load: no single event
 * takes more than 50 ms of the processor, and no look finds the thread inside the log, the link or
 * the analysis.
 */
@NeedsDisplay
@Timeout(value = 90, unit = TimeUnit.SECONDS)
class StallTest {
  private static final long MOST_CPU_NANOS = 50_000_000L;

  @TempDir private Path folder;

  /** Watches the Swing thread until it is stopped. */
  static final class Watcher {
    private final AtomicBoolean stop = new AtomicBoolean();
    private final AtomicReference<String> forbidden = new AtomicReference<>();
    private final Thread swing;
    private final Thread thread = new Thread(this::watch, "stall-watcher");
    private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    private volatile long longestCpuNanos;
    private volatile int looks;

    Watcher() throws Exception {
      AtomicReference<Thread> found = new AtomicReference<>();
      SwingUtilities.invokeAndWait(() -> found.set(Thread.currentThread()));
      swing = found.get();
      thread.start();
    }

    /**
     * Sends an event through the queue and waits for it: what the thread spends until it comes is
     * what one event before it took at most.
     */
    private void watch() {
      while (!stop.get()) {
        AtomicBoolean through = new AtomicBoolean();
        long before = threads.getThreadCpuTime(swing.getId());
        SwingUtilities.invokeLater(() -> through.set(true));
        while (!through.get() && !stop.get()) {
          look();
          java.util.concurrent.locks.LockSupport.parkNanos(1_000_000);
        }
        long took = threads.getThreadCpuTime(swing.getId()) - before;
        longestCpuNanos = Math.max(longestCpuNanos, took);
        java.util.concurrent.locks.LockSupport.parkNanos(3_000_000);
      }
    }

    private void look() {
      looks = looks + 1;
      for (StackTraceElement frame : swing.getStackTrace()) {
        String name = frame.getClassName();
        if (name.startsWith("firstamp.log.")
            || name.startsWith("firstamp.link.")
            || name.startsWith("firstamp.analysis.")
            || name.startsWith("org.sqlite.")
            || name.startsWith("java.io.RandomAccessFile")
            || name.equals("java.lang.Thread") && frame.getMethodName().equals("sleep")) {
          forbidden.compareAndSet(null, frame.toString());
        }
      }
    }

    double longestCpuMs() {
      return longestCpuNanos / 1e6;
    }

    String forbidden() {
      return forbidden.get();
    }

    int looks() {
      return looks;
    }

    void end() throws InterruptedException {
      stop.set(true);
      thread.join();
    }
  }

  @Test
  void aLivePowerUpNeverHoldsUpTheWindow() throws Exception {
    JobSheet sheet =
        Defaults.fill(SheetReader.parse("short", Scenarios.sheetJson("wire-short")).sheet());
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
                    () -> Scenarios.open("wire-short", ProbeOptions.of(1, Pace.REAL_TIME)),
                    TimeSource.system(),
                    listener,
                    progress));
    bench.start();
    BenchWindow window =
        BenchWindow.show(
            bench, new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false));
    // The first pictures load fonts and classes: that is not what this is about.
    awaitPhase(bench, Snapshot.Phase.ON);
    Watcher watcher = new Watcher();
    try {
      awaitPhase(bench, Snapshot.Phase.TRIPPED);
      bench.mark("seen");
      bench.acknowledge();
      awaitPhase(bench, Snapshot.Phase.ENDED);
      watcher.end();
      assertThat(watcher.forbidden()).as("work of others on the Swing thread").isNull();
      assertThat(watcher.looks()).isGreaterThan(100);
      assertThat(watcher.longestCpuMs()).isLessThan(MOST_CPU_NANOS / 1e6);
    } finally {
      watcher.end();
      bench.close();
      SwingUtilities.invokeAndWait(() -> window.frame().dispose());
      log.close();
    }
  }

  private static void awaitPhase(LiveBench bench, Snapshot.Phase phase) {
    while (bench.snapshot().phase().ordinal() < phase.ordinal()) {
      java.util.concurrent.locks.LockSupport.parkNanos(5_000_000);
    }
  }

  @Test
  void theWatcherFindsWorkThatTakesTooLong() throws Exception {
    Watcher watcher = new Watcher();
    SwingUtilities.invokeAndWait(
        () -> {
          long end = System.nanoTime() + 200_000_000L;
          double sum = 0;
          ThreadMXBean threads = ManagementFactory.getThreadMXBean();
          long cpu = threads.getCurrentThreadCpuTime();
          while (System.nanoTime() < end
              || threads.getCurrentThreadCpuTime() - cpu < 2 * MOST_CPU_NANOS) {
            sum += Math.sqrt(sum + 1);
          }
          assertThat(sum).isPositive();
        });
    watcher.end();
    assertThat(watcher.longestCpuMs()).isGreaterThan(MOST_CPU_NANOS / 1e6);
  }

  @Test
  void theWatcherFindsTheDisk() throws Exception {
    BenchLog log = BenchLog.open(folder.resolve("other.db"), TimeSource.system());
    Watcher watcher = new Watcher();
    SwingUtilities.invokeAndWait(
        () -> {
          for (int round = 0; round < 100 && watcher.forbidden() == null; round++) {
            try {
              log.list();
            } catch (firstamp.log.LogException failed) {
              throw new IllegalStateException(failed);
            }
          }
        });
    watcher.end();
    assertThat(watcher.forbidden()).containsAnyOf("firstamp.log", "sqlite");
  }
}
