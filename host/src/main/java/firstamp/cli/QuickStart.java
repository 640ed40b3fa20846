package firstamp.cli;

import firstamp.app.Desk;
import firstamp.app.Hearing;
import firstamp.app.Watched;
import firstamp.app.WindowOptions;
import firstamp.bench.LiveBench;
import firstamp.bench.ReplayBench;
import firstamp.bench.Snapshot;
import firstamp.cli.output.ExitCode;
import firstamp.cli.run.LiveSetup;
import firstamp.cli.run.Sheets;
import firstamp.cli.run.ThisBench;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.log.BenchLog;
import firstamp.model.TimeSource;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.LivePowerUp;
import firstamp.run.RunSetup;
import firstamp.run.questions.ArmGate;
import firstamp.study.EarlierPowerUps;
import firstamp.window.Rehearsal;
import java.io.IOException;
import java.net.URI;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/**
 * Goes once through what a start of the program loads, without a screen, so that the launcher can
 * keep it for the next start ({@code -XX:ArchiveClassesAtExit}). The only argument is an empty
 * folder to work in.
 */
final class QuickStart {
  private static final String SCENARIO = "healthy";
  private static final long LOOK_NANOS = 1_000_000;
  private static final int LONGEST_LOOKS = 20_000;

  /** Parts of the runtime for a screen, which are not loaded without one. */
  private static final List<String> SCREEN =
      List.of(
          "sun/awt/X11",
          "sun/awt",
          "sun/awt/image",
          "sun/java2d",
          "sun/java2d/loops",
          "sun/java2d/xr",
          "sun/java2d/x11",
          "sun/font",
          "javax/sound/sampled",
          "com/sun/media/sound");

  private QuickStart() {}

  public static void main(String[] arguments) throws Exception {
    System.setProperty("java.awt.headless", "true");
    Path folder = Path.of(arguments[0]);
    Path file = folder.resolve("demo.db");
    int code =
        Main.run(
            "demo", "--headless", "--speed", "max", "--for", "500ms", "--log", file.toString());
    if (code != ExitCode.NORMAL) {
      System.exit(code);
    }
    Desk desk = ThisBench.desk(folder.resolve("bench.db"), file, sheet -> null);
    WindowOptions options =
        new WindowOptions(WindowOptions.Theme.LIGHT, WindowOptions.usual().locale(), false);
    Rehearsal.home(desk, options);
    live(desk, file, options);
    replay(desk, file, options);
    screen();
    System.exit(ExitCode.NORMAL);
  }

  /** As {@code firstamp demo} begins. */
  private static void live(Desk desk, Path file, WindowOptions options) throws Exception {
    TimeSource time = TimeSource.system();
    Sheets.Ready sheet = Sheets.parse(SCENARIO, Scenarios.sheetJson(SCENARIO));
    RunSetup setup =
        new RunSetup(
            sheet.effective(),
            new ProbeSettings(sheet.effective()),
            null,
            true,
            500_000L,
            0,
            false,
            LiveSetup.quietMicros(null, 0),
            false,
            ArmGate.alwaysOpen());
    try (BenchLog log = BenchLog.open(file, time)) {
      LiveBench bench =
          new LiveBench(
              setup,
              time,
              Snapshot.Kind.EMULATED,
              null,
              file.toString(),
              setup.gate(),
              new ChainListener() {},
              (listener, progress, restoreTrip) ->
                  new LivePowerUp(
                      log,
                      sheet.texts(),
                      setup,
                      () -> Scenarios.open(SCENARIO, ProbeOptions.of(1, Pace.MAX)),
                      time,
                      listener,
                      progress),
              () -> EarlierPowerUps.course(log, sheet.texts().setName()));
      bench.start();
      try {
        Rehearsal.watch(desk, Watched.of(bench, file, Hearing.NOTHING), options, 3);
        for (int look = 0; bench.result() == null && look < LONGEST_LOOKS; look++) {
          LockSupport.parkNanos(LOOK_NANOS);
        }
        Rehearsal.watch(desk, Watched.of(bench, file, Hearing.NOTHING), options, 3);
      } finally {
        bench.close();
      }
    }
  }

  /** As a power-up is opened again. */
  private static void replay(Desk desk, Path file, WindowOptions options) throws Exception {
    try (BenchLog log = BenchLog.openForReading(file, TimeSource.system())) {
      ReplayBench bench =
          new ReplayBench(
              log.find("last"),
              Sheets.parse(SCENARIO, Scenarios.sheetJson(SCENARIO)).effective(),
              TimeSource.system(),
              1,
              file.toString());
      bench.start();
      try {
        for (int look = 0; !bench.opened() && look < LONGEST_LOOKS; look++) {
          LockSupport.parkNanos(LOOK_NANOS);
        }
        Rehearsal.watch(desk, Watched.of(bench, file, Hearing.NOTHING), options, 3);
      } finally {
        bench.close();
      }
    }
  }

  /** A runtime without one of these has other ways to a screen; then there is less to keep. */
  private static void screen() throws IOException {
    for (String part : SCREEN) {
      Path folder =
          FileSystems.getFileSystem(URI.create("jrt:/")).getPath("/modules/java.desktop", part);
      if (!Files.isDirectory(folder)) {
        continue;
      }
      try (DirectoryStream<Path> classes = Files.newDirectoryStream(folder, "*.class")) {
        for (Path each : classes) {
          String name = each.getFileName().toString().replace(".class", "");
          load(part.replace('/', '.') + "." + name);
        }
      }
    }
  }

  private static void load(String name) {
    try {
      Class.forName(name, false, null);
    } catch (ClassNotFoundException | LinkageError without) {
      // Nothing that a start must have.
      return;
    }
  }
}
