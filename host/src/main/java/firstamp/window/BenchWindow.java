package firstamp.window;

import firstamp.app.Desk;
import firstamp.app.Watched;
import firstamp.app.WindowOptions;
import firstamp.bench.BenchSession;
import firstamp.locate.wire.WireCase;
import firstamp.model.PedalJob;
import firstamp.model.TimeSource;
import firstamp.window.frame.FrameKeys;
import firstamp.window.frame.WindowShell;
import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import firstamp.window.pages.HomePage;
import firstamp.window.pages.WatchPage;
import firstamp.window.search.TrialPage;
import firstamp.window.watch.BenchPanel;
import java.awt.AWTEvent;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;
import java.awt.Rectangle;
import java.awt.Toolkit;
import java.awt.event.AWTEventListener;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.lang.reflect.InvocationTargetException;
import java.util.Objects;
import java.util.concurrent.CountDownLatch;
import java.util.function.Function;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import javax.swing.WindowConstants;

/**
 * The window: one page at a time, from the first screen to the verdict and back.
 *
 * <p>{@link #show} opens it, {@link #awaitClosed} waits until the person has closed it; by then a
 * session that was watched is closed too. Closing asks while a set is being watched. If the window
 * itself fails, it opens the switch first.
 */
public final class BenchWindow {
  private static final int TICK_MS = 30;

  /**
   * Whoever moves the mouse is there: a set that nobody touches is switched off. Keys are told by
   * {@link FrameKeys}, since one that is eaten comes to no listener.
   */
  private static final long SIGNS_OF_LIFE =
      AWTEvent.MOUSE_EVENT_MASK | AWTEvent.MOUSE_MOTION_EVENT_MASK;

  private final Desk desk;
  private final CountDownLatch closed = new CountDownLatch(1);
  private final WindowTasks tasks = new WindowTasks(this::end);
  private final WindowOptions options;
  private final TimeSource time;
  private volatile RuntimeException failure;
  private JFrame frame;
  private WindowShell shell;
  private Timer timer;
  private boolean closing;
  private final AWTEventListener somebody = event -> shell.touched();

  private BenchWindow(Desk desk, WindowOptions options, TimeSource time) {
    this.desk = desk;
    this.time = time;
    this.options = Objects.requireNonNull(options, "options");
  }

  /**
   * Opens the window on one session; closing it closes the session.
   *
   * @throws NoDisplayException if there is no screen
   * @throws InterruptedException if interrupted meanwhile
   */
  public static BenchWindow show(BenchSession session, WindowOptions options)
      throws NoDisplayException, InterruptedException {
    return show(null, Watched.of(Objects.requireNonNull(session, "session")), options);
  }

  /**
   * Opens the window on a bench.
   *
   * @param desk the bench; null = there is no first screen to go back to
   * @param first what is watched at once; null = the first screen comes first
   * @throws NoDisplayException if there is no screen
   * @throws InterruptedException if interrupted meanwhile
   */
  public static BenchWindow show(Desk desk, Watched first, WindowOptions options)
      throws NoDisplayException, InterruptedException {
    return show(
        desk, tools -> first != null ? new WatchPage(tools, first) : new HomePage(tools), options);
  }

  /**
   * Opens the window on the steps of a case of unknown wires.
   *
   * @param desk the bench
   * @param wires with what was done about them
   * @throws NoDisplayException if there is no screen
   * @throws InterruptedException if interrupted meanwhile
   */
  public static BenchWindow showWires(Desk desk, WireCase wires, WindowOptions options)
      throws NoDisplayException, InterruptedException {
    return show(desk, tools -> new TrialPage(tools, wires, null, null), options);
  }

  private static BenchWindow show(Desk desk, Function<Tools, Page> first, WindowOptions options)
      throws NoDisplayException, InterruptedException {
    return show(desk, first, options, TimeSource.system());
  }

  /** By another clock, for tests. */
  static BenchWindow show(
      Desk desk, Function<Tools, Page> first, WindowOptions options, TimeSource time)
      throws NoDisplayException, InterruptedException {
    Displays.require();
    BenchWindow window = new BenchWindow(desk, options, time);
    PedalJob pedal = desk == null ? PedalJob.OFF : desk.settings().pedalJob();
    try {
      SwingUtilities.invokeAndWait(() -> window.open(first, pedal));
    } catch (InvocationTargetException failed) {
      if (failed.getCause() instanceof HeadlessException headless) {
        throw new NoDisplayException(headless);
      }
      throw new IllegalStateException("the window could not be opened", failed.getCause());
    }
    return window;
  }

  /**
   * Refuses at once where no screen is named; whether one that is named answers, {@link #show}
   * finds out.
   *
   * @throws NoDisplayException if there is no screen
   */
  public static void requireScreen() throws NoDisplayException {
    if (GraphicsEnvironment.isHeadless()) {
      throw new NoDisplayException(null);
    }
  }

  /**
   * Makes ready what every window needs, while the caller's others open the log and the line. What
   * stands against a window is said by {@link #show}.
   *
   * @throws InterruptedException if interrupted meanwhile
   */
  public static void prepare(WindowOptions options) throws InterruptedException {
    try {
      Displays.require();
      SwingUtilities.invokeAndWait(() -> Displays.prepareParts(options));
    } catch (NoDisplayException | InvocationTargetException saidByShow) {
      return;
    }
  }

  /**
   * Waits until the window is closed and what was begun aside is done: a report is written to its
   * end, and nobody writes into a folder that the caller takes away.
   *
   * @throws InterruptedException if interrupted meanwhile
   * @throws IllegalStateException if the window failed by itself
   */
  public void awaitClosed() throws InterruptedException {
    closed.await();
    tasks.awaitDone();
    if (failure != null) {
      throw new IllegalStateException("the window failed; the switch was opened first", failure);
    }
  }

  private void open(Function<Tools, Page> first, PedalJob pedal) {
    frame = new JFrame();
    frame.setName("firstamp");
    frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
    shell = new WindowShell(tasks, desk, options, time, frame);
    shell.pedal(pedal);
    frame.addWindowListener(new Watcher());
    frame.addWindowFocusListener(new Watcher());
    Rectangle screen = GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds();
    frame.setMinimumSize(new Dimension(Math.min(1080, screen.width), Math.min(680, screen.height)));
    frame.setSize(Math.min(1280, screen.width), Math.min(800, screen.height));
    frame.setLocation(screen.x, screen.y);
    if (desk != null) {
      desk.whenStarted(watched -> SwingUtilities.invokeLater(() -> shell.started(watched)));
    }
    shell.open(first.apply(shell.tools()));
    timer = new Timer(TICK_MS, event -> tick());
    timer.setCoalesce(true);
    timer.start();
    Toolkit.getDefaultToolkit().addAWTEventListener(somebody, SIGNS_OF_LIFE);
    frame.setVisible(true);
    if (frame.getFocusOwner() == null) {
      shell.front().component().requestFocusInWindow();
    }
  }

  private void tick() {
    if (failure != null || closing) {
      return;
    }
    try {
      shell.tick();
    } catch (RuntimeException defect) {
      failure = defect;
      shell.failed();
      end();
    }
  }

  /** Ends what is in front on a thread of its own, then the window. Swing thread only. */
  void end() {
    if (closing) {
      return;
    }
    closing = true;
    Page last = shell.front();
    last.component().setEnabled(false);
    frame.setTitle(shell.tools().words().get("closing"));
    tasks.ending(last, this::dispose);
  }

  private void dispose() {
    Toolkit.getDefaultToolkit().removeAWTEventListener(somebody);
    if (timer != null) {
      timer.stop();
    }
    shell.closed();
    frame.dispose();
    tasks.shutdown();
    closed.countDown();
  }

  JFrame frame() {
    return frame;
  }

  Page page() {
    return shell.front();
  }

  WindowShell shell() {
    return shell;
  }

  /** The watching page's panel. */
  BenchPanel panel() {
    return ((WatchPage) shell.front()).panel();
  }

  /** Closing, and losing the keyboard. */
  private final class Watcher extends WindowAdapter {
    @Override
    public void windowClosing(WindowEvent event) {
      shell.closeWindow();
    }

    @Override
    public void windowLostFocus(WindowEvent event) {
      shell.lost();
    }
  }
}
