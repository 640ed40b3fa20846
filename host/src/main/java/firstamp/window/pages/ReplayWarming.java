package firstamp.window.pages;

import firstamp.app.Desk;
import firstamp.app.ReadySheet;
import firstamp.bench.ReplayBench;
import firstamp.bench.Snapshot;
import firstamp.log.LogException;
import firstamp.model.JobSheet;
import firstamp.sheet.SheetException;
import firstamp.window.page.Tools;
import firstamp.window.strips.StripChart;
import firstamp.window.strips.StripMaker;
import firstamp.window.strips.TimeView;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.concurrent.locks.LockSupport;

/**
 * Opens a power-up once where nobody sees it, while the first screen is being read: what a replay
 * needs is loaded then, and the person does not wait for it.
 *
 * <p>For a thread aside, which it gives the lowest priority meanwhile; it has ended its own thread
 * when it returns.
 */
public final class ReplayWarming {
  private static final int WIDTH = 1000;
  private static final int HEIGHT = 400;
  private static final long LOOK_NANOS = 1_000_000;

  private final Desk desk;
  private final Tools tools;

  public ReplayWarming(Desk desk, Tools tools) {
    this.desk = desk;
    this.tools = tools;
  }

  /** Does so on a thread aside; what cannot be opened is shown when the person opens it. */
  void aside(Path file, long number) {
    tools
        .shell()
        .aside(
            () -> {
              open(file, number);
              return null;
            },
            done -> {},
            unreadable -> {});
  }

  /** Opens it, makes and paints its overview, and lets go of it. */
  public void open(Path file, long number) throws LogException, SheetException {
    Thread thread = Thread.currentThread();
    int usual = thread.getPriority();
    thread.setPriority(Thread.MIN_PRIORITY);
    try {
      var reader = desk.reader(file, number);
      JobSheet sheet =
          ReadySheet.of("stored sheet of power-up " + number, reader.header().effectiveSheetJson())
              .effective();
      ReplayBench bench = new ReplayBench(reader, sheet, desk.time(), 1, file.toString());
      bench.start();
      try {
        while (!bench.opened() && bench.failure() == null && !thread.isInterrupted()) {
          LockSupport.parkNanos(LOOK_NANOS);
        }
        if (bench.opened()) {
          paint(bench);
        }
      } finally {
        bench.close();
      }
    } finally {
      thread.setPriority(usual);
    }
  }

  private void paint(ReplayBench bench) {
    double endMs = bench.snapshot().course().endMs();
    bench.pause(true);
    bench.seek(endMs);
    Snapshot whole = bench.snapshot();
    TimeView time = new TimeView();
    time.show(0, endMs);
    Graphics2D g = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB).createGraphics();
    new StripChart(tools.palette(), tools.numbers())
        .draw(
            g,
            new Rectangle2D.Double(0, 0, WIDTH, HEIGHT),
            new StripMaker(tools.words(), tools.numbers()).picture(whole, time, WIDTH),
            "");
    g.dispose();
  }
}
