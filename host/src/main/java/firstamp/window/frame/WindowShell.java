package firstamp.window.frame;

import firstamp.app.Desk;
import firstamp.app.Watched;
import firstamp.app.WindowOptions;
import firstamp.bench.BenchSession;
import firstamp.model.PedalJob;
import firstamp.model.TimeSource;
import firstamp.window.page.Page;
import firstamp.window.page.PageStrokes;
import firstamp.window.page.Shell;
import firstamp.window.page.Tools;
import firstamp.window.pages.HomePage;
import firstamp.window.pages.LeavePage;
import firstamp.window.pages.WatchPage;
import firstamp.window.present.BenchView;
import firstamp.window.present.LiveSet;
import firstamp.window.watch.MarkHand;
import firstamp.window.watch.OhmGuard;
import firstamp.window.watch.Pedal;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.KeyboardFocusManager;
import java.awt.event.MouseAdapter;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;

/**
 * The inside of the window: the page in front, the frame that is round it while something is fed or
 * may be, and what the frame's keys do. Swing thread only.
 */
public final class WindowShell implements Shell, FrameKeys.Hands {
  private final Background background;
  private final Desk desk;
  private final TimeSource time;
  private final JFrame window;
  private final LiveSet live;
  private final Pedal pedal = new Pedal(this);
  private final FrameKeys keys;
  private final JPanel content = new JPanel(new BorderLayout());
  private WindowOptions options;
  private Tools tools;
  private LiveFrame frame;
  private MarkHand marks;
  private WatchPage watching;
  private Page page;
  private PageStrokes strokes;

  /** What is done away from the Swing thread, and the end of it all. */
  public interface Background {
    <T> void aside(Callable<T> task, Consumer<T> then, Consumer<Exception> otherwise);

    /** Ends a page, then goes on in the Swing thread. */
    void ending(Page last, Runnable then);

    /** Closes the window. */
    void end();
  }

  public WindowShell(
      Background background, Desk desk, WindowOptions options, TimeSource time, JFrame window) {
    this.background = background;
    this.desk = desk;
    this.options = options;
    this.time = time;
    this.window = window;
    live = new LiveSet(time);
    keys = new FrameKeys(window, this, pedal);
    new FieldGuard(live::armed).guard(content);
    clothe();
    window.setContentPane(content);
    window.setGlassPane(new Shield());
    KeyboardFocusManager.getCurrentKeyboardFocusManager().addKeyEventDispatcher(keys);
  }

  private void clothe() {
    WindowTheme theme = new WindowTheme(options.theme());
    Words words = new Words(options.locale());
    tools = new Tools(words, new Numbers(options.locale()), theme.palette(), this, desk);
    frame = new LiveFrame(theme.palette(), words, this::off);
    marks = new MarkHand(time, words);
    content.removeAll();
    content.add(frame.component(), BorderLayout.CENTER);
  }

  public Tools tools() {
    return tools;
  }

  public Page front() {
    return page;
  }

  public FrameKeys keys() {
    return keys;
  }

  LiveFrame frame() {
    return frame;
  }

  /** Somebody is there. */
  @Override
  public void touched() {
    live.touched();
  }

  @Override
  public void open(Page next) {
    if (page != null) {
      strokes.stop();
      page.hidden();
    }
    page = next;
    if (next instanceof WatchPage watch && watch != live.feeding()) {
      started(watch);
    }
    strokes = next.strokes();
    frame.put(next);
    round();
    next.component().requestFocusInWindow();
    next.shown();
    window.setTitle(next.title());
  }

  /** A power-up has begun: the frame follows it from now on, whatever page comes to the front. */
  private void started(WatchPage watch) {
    boolean same = watching != null && watching.session() == watch.session();
    if (same && watching != watch) {
      watching.replaced();
    }
    if (same || watch.stand().there() || !live.there()) {
      watching = watch;
      live.take(watch);
      live.follow();
    }
  }

  /** The same where no page was opened for it yet. */
  public void started(Watched watched) {
    if (watching == null || watching.session() != watched.session()) {
      started(new WatchPage(tools, watched));
    }
  }

  @Override
  public void feeds(LiveSet.Feeding feeding) {
    if (!live.there()) {
      live.take(feeding);
      live.follow();
      round();
    }
  }

  /** Puts the frame round the page, or takes it away. */
  private void round() {
    boolean round = page.session() != null || live.there() || live.armed();
    Component focused =
        KeyboardFocusManager.getCurrentKeyboardFocusManager().getPermanentFocusOwner();
    boolean moved = round != frame.framed();
    frame.frame(round);
    if (moved && focused != null && SwingUtilities.isDescendingFrom(focused, page.component())) {
      focused.requestFocusInWindow();
    }
    if (round) {
      boolean own = page.session() == null || page.session() == session();
      frame.show(view(), own && live.armed(), live.there() ? pedal.job() : null, marks.says());
    }
  }

  private BenchView view() {
    return page instanceof WatchPage watch ? watch.view() : live.feeding().view();
  }

  private BenchSession session() {
    return live.feeding() instanceof WatchPage watch ? watch.session() : null;
  }

  /** About twenty times a second. */
  public void tick() {
    keys.tick(time.epochMillis());
    boolean focused = window.isFocused();
    if (live.feeding() instanceof WatchPage watch && watch != page && live.there()) {
      watch.follow(focused);
    }
    if (live.follow()) {
      takeOver();
    }
    page.tick(focused);
    marks.follow();
    round();
    window.getGlassPane().setVisible(live.dead());
    if (!page.title().equals(window.getTitle())) {
      window.setTitle(page.title());
    }
  }

  /** What was switched off comes to the front. */
  private void takeOver() {
    if (live.feeding() instanceof WatchPage watch && watch != page) {
      open(watch);
    }
  }

  /** The window has failed: nothing stays switched on. */
  public void failed() {
    live.off();
    if (page != live.feeding()) {
      page.failed();
    }
  }

  public void lost() {
    keys.lost();
  }

  public void closed() {
    KeyboardFocusManager.getCurrentKeyboardFocusManager().removeKeyEventDispatcher(keys);
    page.hidden();
  }

  @Override
  public void off() {
    if (live.there() || live.armed()) {
      live.off();
      live.follow();
      takeOver();
      window.getGlassPane().setVisible(live.dead());
    }
  }

  @Override
  public void mark() {
    if (session() != null && live.there()) {
      marks.put(session());
    }
  }

  @Override
  public void mark(BenchSession session) {
    marks.put(session);
  }

  @Override
  public boolean word(int number) {
    // What is asked, and a limit that is held, have the digits first.
    return !(page instanceof WatchPage watch && watch.panel().wantsDigits()) && marks.word(number);
  }

  @Override
  public boolean armed() {
    return live.armed();
  }

  @Override
  public boolean dead() {
    return live.dead();
  }

  @Override
  public boolean counting() {
    return live.stand().counting();
  }

  @Override
  public boolean fed() {
    return live.stand().fed();
  }

  @Override
  public PageStrokes page() {
    return strokes;
  }

  @Override
  public String noOhms() {
    BenchSession now = session();
    if (live.there() && now == null) {
      return tools.words().get("ohms.on");
    }
    return now == null
        ? null
        : new OhmGuard(tools.words(), tools.numbers()).refusal(now.snapshot());
  }

  @Override
  public PedalJob pedal() {
    return pedal.job();
  }

  @Override
  public void pedal(PedalJob job) {
    pedal.job(job);
  }

  @Override
  public void home() {
    if (desk == null) {
      close();
    } else {
      leaveFor(() -> new HomePage(tools));
    }
  }

  @Override
  public void leaveFor(Supplier<Page> next) {
    leave(
        () -> {
          Page last = page;
          background.ending(last, () -> open(next.get()));
        });
  }

  /** Asks once while something is on, and waits until it is down. */
  private void leave(Runnable then) {
    if (live.there() && live.feeding() instanceof WatchPage watch) {
      if (watch != page) {
        open(watch);
      }
      watch.leave(then);
    } else {
      then.run();
    }
  }

  @Override
  public void close() {
    if (live.there() || page instanceof LeavePage) {
      closeWindow();
    } else {
      open(new LeavePage(tools, page));
    }
  }

  /** The window's own sign for closing was pressed: asks only while something is on. */
  public void closeWindow() {
    leave(background::end);
  }

  @Override
  public void toFront() {
    window.toFront();
  }

  @Override
  public void dress(WindowOptions next) {
    options = next;
    clothe();
    open(new HomePage(tools));
  }

  @Override
  public WindowOptions options() {
    return options;
  }

  @Override
  public <T> void aside(Callable<T> task, Consumer<T> then, Consumer<Exception> otherwise) {
    background.aside(task, then, otherwise);
  }

  /** For a second after an off it lies over everything but OFF: a click may be meant for before. */
  private final class Shield extends JComponent {
    private static final long serialVersionUID = 1L;

    Shield() {
      setName("shield");
      setOpaque(false);
      addMouseListener(new MouseAdapter() {});
    }

    @Override
    public boolean contains(int x, int y) {
      JComponent off = frame.offButton();
      return !(off.isShowing() && off.contains(SwingUtilities.convertPoint(this, x, y, off)));
    }
  }
}
