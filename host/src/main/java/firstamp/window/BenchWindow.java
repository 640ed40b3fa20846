package firstamp.window;

import firstamp.model.TimeSource;
import firstamp.session.BenchSession;
import firstamp.session.Snapshot;
import java.awt.AWTError;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;
import java.awt.Rectangle;
import java.awt.Toolkit;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.lang.reflect.InvocationTargetException;
import java.util.Objects;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import javax.swing.WindowConstants;

/**
 * The window on one session.
 *
 * <p>{@link #show} opens it, {@link #awaitClosed} waits until the person has closed it; by then the
 * session is closed too. Closing asks while the set is being watched. If the window itself fails,
 * it opens the switch first.
 */
public final class BenchWindow {
  private static final int TICK_MS = 30;

  private final BenchSession session;
  private final TimeSource time = TimeSource.system();
  private final AwakeKeeper awake;
  private final CountDownLatch closed = new CountDownLatch(1);
  private final ExecutorService aside =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "window-aside");
            thread.setDaemon(true);
            return thread;
          });
  private volatile RuntimeException failure;
  private JFrame frame;
  private BenchPanel panel;
  private Keys keys;
  private Timer timer;
  private Tone lastTone = Tone.PLAIN;
  private boolean keptAwake;
  private boolean closing;

  private BenchWindow(BenchSession session, AwakeKeeper awake) {
    this.session = Objects.requireNonNull(session, "session");
    this.awake = awake;
  }

  /**
   * Opens the window.
   *
   * @throws NoDisplayException if there is no screen
   * @throws InterruptedException if interrupted meanwhile
   */
  public static BenchWindow show(BenchSession session, WindowOptions options)
      throws NoDisplayException, InterruptedException {
    requireDisplay();
    BenchWindow window =
        new BenchWindow(session, options.keepAwake() ? AwakeKeeper.ofThisSystem() : null);
    try {
      SwingUtilities.invokeAndWait(() -> window.open(options));
    } catch (InvocationTargetException failed) {
      if (failed.getCause() instanceof HeadlessException headless) {
        throw new NoDisplayException(headless);
      }
      throw new IllegalStateException("the window could not be opened", failed.getCause());
    }
    return window;
  }

  private static void requireDisplay() throws NoDisplayException {
    try {
      if (GraphicsEnvironment.isHeadless()) {
        throw new NoDisplayException(null);
      }
      GraphicsEnvironment.getLocalGraphicsEnvironment().getDefaultScreenDevice();
    } catch (HeadlessException | AWTError | LinkageError none) {
      throw new NoDisplayException(none);
    }
  }

  /**
   * Waits until the window is closed.
   *
   * @throws InterruptedException if interrupted meanwhile
   * @throws IllegalStateException if the window failed by itself
   */
  public void awaitClosed() throws InterruptedException {
    closed.await();
    if (failure != null) {
      throw new IllegalStateException("the window failed; the switch was opened first", failure);
    }
  }

  private void open(WindowOptions options) {
    WindowTheme theme = new WindowTheme(options.theme());
    BenchPresenter presenter = new BenchPresenter(options.locale());
    panel = new BenchPanel(session, presenter, theme.palette(), this::close);
    frame = new JFrame();
    frame.setName("firstamp");
    frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
    frame.setContentPane(panel.component());
    frame.addWindowListener(
        new WindowAdapter() {
          @Override
          public void windowClosing(WindowEvent event) {
            wantClose();
          }
        });
    Rectangle screen = GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds();
    frame.setMinimumSize(new Dimension(Math.min(1080, screen.width), Math.min(680, screen.height)));
    frame.setSize(Math.min(1280, screen.width), Math.min(800, screen.height));
    frame.setLocation(screen.x, screen.y);
    keys = new Keys(frame, panel);
    keys.install();
    tick();
    timer = new Timer(TICK_MS, event -> tick());
    timer.setCoalesce(true);
    timer.start();
    frame.setVisible(true);
    panel.component().requestFocusInWindow();
  }

  private void tick() {
    if (failure != null || closing) {
      return;
    }
    try {
      keys.tick(time.epochMillis());
      Snapshot now = session.snapshot();
      panel.show(now, awake == null ? null : awake.problem(), frame.isFocused());
      if (!panel.view().title().equals(frame.getTitle())) {
        frame.setTitle(panel.view().title());
      }
      keepAwake(now);
      Tone tone = panel.view().sentence().tone();
      if (tone == Tone.ALARM && lastTone != Tone.ALARM && now.kind() != Snapshot.Kind.REPLAY) {
        Toolkit.getDefaultToolkit().beep();
        frame.toFront();
      }
      lastTone = tone;
    } catch (RuntimeException defect) {
      fail(defect);
    }
  }

  /** A window that cannot show the set must not leave it on. */
  private void fail(RuntimeException defect) {
    failure = defect;
    session.off();
    close();
  }

  private void keepAwake(Snapshot now) {
    boolean wanted =
        awake != null
            && now.kind() != Snapshot.Kind.REPLAY
            && now.phase() != Snapshot.Phase.ENDED
            && now.phase() != Snapshot.Phase.CONNECTING;
    if (wanted != keptAwake) {
      keptAwake = wanted;
      aside.execute(wanted ? awake::keep : awake::let);
    }
  }

  private void wantClose() {
    Snapshot now = session.snapshot();
    if (now.kind() == Snapshot.Kind.REPLAY || now.phase() == Snapshot.Phase.ENDED) {
      close();
    } else {
      panel.askClose();
    }
  }

  /** Closes the session on a thread of its own, then the window. */
  private void close() {
    if (closing) {
      return;
    }
    closing = true;
    panel.component().setEnabled(false);
    frame.setTitle(panel.words().get("closing"));
    aside.execute(
        () -> {
          try {
            session.close();
            if (awake != null) {
              awake.let();
            }
          } finally {
            SwingUtilities.invokeLater(this::dispose);
          }
        });
  }

  private void dispose() {
    if (timer != null) {
      timer.stop();
    }
    if (keys != null) {
      keys.remove();
    }
    frame.dispose();
    aside.shutdown();
    closed.countDown();
  }

  JFrame frame() {
    return frame;
  }

  Keys keys() {
    return keys;
  }

  BenchPanel panel() {
    return panel;
  }
}
