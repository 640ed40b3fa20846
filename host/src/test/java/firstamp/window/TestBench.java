package firstamp.window;

import firstamp.app.Desk;
import firstamp.app.HomeFolder;
import firstamp.app.Ports;
import firstamp.app.QuestionFlow;
import firstamp.app.ReadySheet;
import firstamp.app.SheetEntries;
import firstamp.app.SheetShelf;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.locate.wire.WireFile;
import firstamp.log.BenchLog;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbePort;
import firstamp.model.TimeSource;
import firstamp.model.text.Worded;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.run.LivePowerUp;
import firstamp.run.RunProgress;
import firstamp.run.RunSetup;
import firstamp.run.questions.ArmGate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A bench of invented sets in a folder of its own, and the desk over it. */
public final class TestBench {
  static final String PORT = "/dev/ttyUSB0";

  private TestBench() {}

  /** Ports of an invented computer; behind the usable one stands the emulated probe. */
  static Ports ports(String scenario, Pace pace) {
    return new Ports() {
      @Override
      public List<Found> list() {
        return List.of(
            new Found(PORT, "USB serial adapter", true, null),
            new Found(
                "/dev/ttyS0", "serial port", false, Worded.asIs("You may not open /dev/ttyS0")));
      }

      @Override
      public ProbePort open(String path) throws IOException {
        if (!path.equals(PORT)) {
          throw new IOException("There is no port " + path + ". Plug the probe box in.");
        }
        return box(Scenarios.open(scenario, ProbeOptions.of(1, pace)));
      }
    };
  }

  /** The same line under a name that is not that of the emulated probe. */
  static ProbePort box(ProbePort port) {
    return new ProbePort() {
      @Override
      public int read(byte[] buffer, int timeoutMillis) throws IOException {
        return port.read(buffer, timeoutMillis);
      }

      @Override
      public void write(byte[] bytes) throws IOException {
        port.write(bytes);
      }

      @Override
      public TimeSource time() {
        return port.time();
      }

      @Override
      public String describe() {
        return "probe box on " + PORT;
      }

      @Override
      public void close() {
        port.close();
      }
    };
  }

  /** A desk with nothing on it yet. */
  public static Desk empty(Path folder) {
    return empty(folder, HomeFolder.ofThePerson());
  }

  /** The same in somebody's home. */
  public static Desk empty(Path folder, HomeFolder home) {
    return new Desk(
        folder.resolve("bench.db"),
        folder.resolve("demo.db"),
        ports("healthy", Pace.MAX),
        TimeSource.system(),
        sheet -> null,
        Pace.MAX,
        home);
  }

  /** A desk with a set that tripped and came up, one that waits, one that was begun. */
  public static Desk used(Path folder) throws Exception {
    return used(folder, HomeFolder.ofThePerson());
  }

  public static Desk used(Path folder, HomeFolder home) throws Exception {
    Desk desk = empty(folder, home);
    run(desk.log(), "healthy", "as it came", true);
    run(desk.log(), "wire-short", "W3 went to P7", true);
    run(desk.log(), "healthy", "W3 back on P2", true);
    run(desk.emulatedLog(), "lost-head", null, false);
    try (BenchLog log = BenchLog.open(desk.log(), desk.time())) {
      log.later(3, new ProbeEvent.Marked(9_000_000, "waits for the driver transistor"));
    }
    Path wires =
        folder
            .resolve("wires")
            .resolve(
                SheetShelf.stem(SheetEntries.nameIn(Scenarios.sheetJson("healthy"))) + ".json");
    Files.createDirectories(wires.getParent());
    Files.writeString(wires, WireFile.write(ThinkViews.wires("screened-lead", 8)));
    desk.shelf()
        .keep(
            "Quandel pocket radio (invented)",
            """
            {"sheet":1,"set":{"name":"Quandel pocket radio (invented)","kind":"receiver",
             "chassis":"positive"},"supply":{"kind":"battery","nominalV":9,"fuseA":0.5}}
            """);
    QuestionFlow flow = new QuestionFlow(null);
    flow.answer("Tervane amplifier (invented)");
    flow.answer("24");
    desk.shelf().keepBegun(flow.name(), flow.begun());
    return desk;
  }

  /** Two seconds of a scenario, as fast as it goes. */
  public static void run(Path file, String scenario, String label, boolean real) throws Exception {
    run(file, scenario, Scenarios.sheetJson(scenario), label, real);
  }

  /** The same set by another sheet. */
  static void run(Path file, String scenario, String sheetJson, String label, boolean real)
      throws Exception {
    ReadySheet sheet = ReadySheet.of(scenario, sheetJson);
    TimeSource time = TimeSource.system();
    RunSetup setup =
        new RunSetup(
            sheet.effective(),
            new ProbeSettings(sheet.effective()),
            label,
            true,
            2_500_000L,
            0,
            false,
            2_000_000L,
            false,
            ArmGate.alwaysOpen());
    java.nio.file.Files.createDirectories(file.getParent());
    try (BenchLog log = BenchLog.open(file, time)) {
      new LivePowerUp(
              log,
              sheet.texts(),
              setup,
              () -> {
                ProbePort port = Scenarios.open(scenario, ProbeOptions.of(1, Pace.MAX));
                return real ? box(port) : port;
              },
              time,
              new ChainListener() {},
              new RunProgress() {})
          .run();
    }
  }
}
