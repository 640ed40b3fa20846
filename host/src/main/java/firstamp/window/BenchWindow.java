package firstamp.window;

import firstamp.locate.WireCase;
import firstamp.session.BenchSession;
import java.awt.AWTError;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;
import java.awt.KeyEventDispatcher;
import java.awt.KeyboardFocusManager;
import java.awt.Rectangle;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.lang.reflect.InvocationTargetException;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.swing.JFrame;
import javax.swing.JPanel;
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
  private static final long ASIDE_S = 20;
  private static final String SERVER_PAINTS = "sun.java2d.xrender";

  private final Desk desk;
  private final CountDownLatch closed = new CountDownLatch(1);
  private final ExecutorService ending = Executors.newSingleThreadExecutor(aside("window-aside"));
  private final ExecutorService tasks = Executors.newCachedThreadPool(aside("window-task"));
  private final JPanel content = new JPanel(new BorderLayout());
  private final Shell shell = new InFrame();
  private volatile RuntimeException failure;
  private WindowOptions options;
  private Tools tools;
  private JFrame frame;
  private Page page;
  private KeyEventDispatcher keys;
  private Timer timer;
  private boolean closing;

  private BenchWindow(Desk desk, WindowOptions options) {
    this.desk = desk;
    this.options = Objects.requireNonNull(options, "options");
  }

  private static java.util.concurrent.ThreadFactory aside(String name) {
    return task -> {
      Thread thread = new Thread(task, name);
      thread.setDaemon(true);
      return thread;
    };
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
    requireDisplay();
    BenchWindow window = new BenchWindow(desk, options);
    try {
      SwingUtilities.invokeAndWait(() -> window.open(first));
    } catch (InvocationTargetException failed) {
      if (failed.getCause() instanceof HeadlessException headless) {
        throw new NoDisplayException(headless);
      }
      throw new IllegalStateException("the window could not be opened", failed.getCause());
    }
    return window;
  }

  /**
   * Makes ready what every window needs, while the caller's others open the log and the line. What
   * stands against a window is said by {@link #show}.
   *
   * @throws InterruptedException if interrupted meanwhile
   */
  public static void prepare(WindowOptions options) throws InterruptedException {
    try {
      requireDisplay();
      SwingUtilities.invokeAndWait(() -> prepareParts(options));
    } catch (NoDisplayException | InvocationTargetException saidByShow) {
      return;
    }
  }

  /** The look and feel, the words, the chart and the widths of letters. */
  private static void prepareParts(WindowOptions options) {
    Palette palette = new WindowTheme(options.theme()).palette();
    new StripChart(palette, new Numbers(options.locale()));
    String text = new Words(options.locale()).get("closing");
    new Pieces(new Words(options.locale()), palette)
        .label("text", text, true, 20)
        .getPreferredSize();
  }

  /**
   * On a screen of this computer smooth edges are painted in this process and sent as a whole:
   * asked of the screen's server piece by piece they take it several times as long, and the Swing
   * thread waits for that. A screen that is far away keeps its own way. Read once, at the first
   * use.
   */
  private static void paintHere() {
    String display = System.getenv("DISPLAY");
    boolean local = display != null && (display.startsWith(":") || display.startsWith("unix:"));
    if (local && System.getProperty(SERVER_PAINTS) == null) {
      System.setProperty(SERVER_PAINTS, "false");
    }
  }

  private static void requireDisplay() throws NoDisplayException {
    try {
      paintHere();
      if (GraphicsEnvironment.isHeadless()) {
        throw new NoDisplayException(null);
      }
      GraphicsEnvironment.getLocalGraphicsEnvironment().getDefaultScreenDevice();
    } catch (HeadlessException | AWTError | LinkageError none) {
      throw new NoDisplayException(none);
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
    if (!ending.awaitTermination(ASIDE_S, TimeUnit.SECONDS)
        || !tasks.awaitTermination(ASIDE_S, TimeUnit.SECONDS)) {
      throw new IllegalStateException(
          "the window is closed, but something it began is not done after " + ASIDE_S + " s");
    }
    if (failure != null) {
      throw new IllegalStateException("the window failed; the switch was opened first", failure);
    }
  }

  private void open(Function<Tools, Page> first) {
    tools = tools();
    frame = new JFrame();
    frame.setName("firstamp");
    frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
    frame.setContentPane(content);
    frame.addWindowListener(
        new WindowAdapter() {
          @Override
          public void windowClosing(WindowEvent event) {
            shell.close();
          }
        });
    Rectangle screen = GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds();
    frame.setMinimumSize(new Dimension(Math.min(1080, screen.width), Math.min(680, screen.height)));
    frame.setSize(Math.min(1280, screen.width), Math.min(800, screen.height));
    frame.setLocation(screen.x, screen.y);
    shell.open(first.apply(tools));
    timer = new Timer(TICK_MS, event -> tick());
    timer.setCoalesce(true);
    timer.start();
    frame.setVisible(true);
    page.component().requestFocusInWindow();
  }

  private Tools tools() {
    WindowTheme theme = new WindowTheme(options.theme());
    Words words = new Words(options.locale());
    return new Tools(words, new Numbers(options.locale()), theme.palette(), shell, desk);
  }

  private void tick() {
    if (failure != null || closing) {
      return;
    }
    try {
      page.tick(frame.isFocused());
      if (!page.title().equals(frame.getTitle())) {
        frame.setTitle(page.title());
      }
    } catch (RuntimeException defect) {
      failure = defect;
      page.failed();
      end();
    }
  }

  /** Ends what is in front on a thread of its own, then the window. Swing thread only. */
  void end() {
    if (closing) {
      return;
    }
    closing = true;
    page.component().setEnabled(false);
    frame.setTitle(tools.words().get("closing"));
    Page last = page;
    ending.execute(
        () -> {
          try {
            last.end();
          } finally {
            SwingUtilities.invokeLater(this::dispose);
          }
        });
  }

  private void dispose() {
    if (timer != null) {
      timer.stop();
    }
    turnKeys(null);
    page.hidden();
    frame.dispose();
    ending.shutdown();
    tasks.shutdown();
    closed.countDown();
  }

  private void turnKeys(KeyEventDispatcher next) {
    KeyboardFocusManager manager = KeyboardFocusManager.getCurrentKeyboardFocusManager();
    if (keys != null) {
      manager.removeKeyEventDispatcher(keys);
    }
    keys = next;
    if (keys != null) {
      manager.addKeyEventDispatcher(keys);
    }
  }

  JFrame frame() {
    return frame;
  }

  Page page() {
    return page;
  }

  Shell shell() {
    return shell;
  }

  /** The watching page's keys. */
  Keys keys() {
    return ((WatchPage) page).keys();
  }

  /** The watching page's panel. */
  BenchPanel panel() {
    return ((WatchPage) page).panel();
  }

  /** The window as pages see it. */
  private final class InFrame implements Shell {
    @Override
    public void open(Page next) {
      if (page != null) {
        page.hidden();
      }
      page = next;
      turnKeys(next.keys(frame));
      content.removeAll();
      content.add(next.component(), BorderLayout.CENTER);
      // The page first, then what it puts the caret into: the last wish is the one that holds.
      next.component().requestFocusInWindow();
      next.shown();
      frame.setTitle(next.title());
      content.revalidate();
      content.repaint();
    }

    @Override
    public void home() {
      if (desk == null) {
        end();
        return;
      }
      Page last = page;
      ending.execute(
          () -> {
            try {
              last.end();
            } finally {
              SwingUtilities.invokeLater(() -> open(new HomePage(tools)));
            }
          });
    }

    @Override
    public void close() {
      if (page.mayClose()) {
        end();
      }
    }

    @Override
    public void dress(WindowOptions next) {
      options = next;
      tools = tools();
      open(new HomePage(tools));
    }

    @Override
    public WindowOptions options() {
      return options;
    }

    @Override
    public <T> void aside(Callable<T> task, Consumer<T> then, Consumer<Exception> otherwise) {
      if (tasks.isShutdown()) {
        return;
      }
      tasks.execute(
          () -> {
            try {
              T result = task.call();
              goOn(() -> then.accept(result));
            } catch (Exception failed) {
              // The page says it; at the top of a thread nothing may be lost.
              goOn(() -> otherwise.accept(failed));
            }
          });
    }

    /** There is no page left to go on with once the window is closed. */
    private void goOn(Runnable next) {
      SwingUtilities.invokeLater(
          () -> {
            if (!tasks.isShutdown()) {
              next.run();
            }
          });
    }
  }
}
