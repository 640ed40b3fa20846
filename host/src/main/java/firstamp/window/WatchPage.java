package firstamp.window;

import firstamp.model.TimeSource;
import firstamp.session.BenchSession;
import firstamp.session.Snapshot;
import java.awt.KeyEventDispatcher;
import java.awt.Toolkit;
import java.awt.Window;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;

/** A set being watched, or the replay of one. Leaving it asks while the set is being watched. */
final class WatchPage implements Page {
  /** Where hours are in view figures that change 11 times a second can be read as well. */
  private static final int WIDE_ONE_IN = 3;

  private final Tools tools;
  private final Watched watched;
  private final BenchSession session;
  private final AwakeKeeper awake;
  private final BenchPanel panel;
  private final ExecutorService keeping =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "window-awake");
            thread.setDaemon(true);
            return thread;
          });
  private final TimeSource time = TimeSource.system();
  private Keys keys;
  private Runnable leave;
  private Tone lastTone = Tone.PLAIN;
  private boolean keptAwake;
  private int ticks;
  private boolean agreed;

  WatchPage(Tools tools, Watched watched) {
    this.tools = tools;
    this.watched = watched;
    this.session = watched.session();
    this.awake = tools.shell().options().keepAwake() ? AwakeKeeper.ofThisSystem() : null;
    this.leave = tools.shell()::close;
    panel =
        new BenchPanel(
            session,
            watched.hearing(),
            new BenchPresenter(tools.words().locale()),
            tools.palette(),
            this::leave);
    panel.whenThinking(this::search, this::wires);
    panel.show(session.snapshot(), null, true);
    if (watched.log() != null && tools.desk() != null) {
      panel.whenOver(this::verdict, this::home);
    }
  }

  BenchPanel panel() {
    return panel;
  }

  BenchSession session() {
    return session;
  }

  @Override
  public String name() {
    return "watch";
  }

  @Override
  public String title() {
    return panel.view().title();
  }

  @Override
  public JComponent component() {
    return panel.component();
  }

  @Override
  public KeyEventDispatcher keys(Window window) {
    keys = new Keys(window, panel);
    return new ThinkKeys(window, keys, this::search, this::wires);
  }

  Keys keys() {
    return keys;
  }

  @Override
  public void tick(boolean focused) {
    keys.tick(time.epochMillis());
    ticks++;
    if (panel.time().wide() && ticks % WIDE_ONE_IN != 0) {
      return;
    }
    Snapshot now = session.snapshot();
    panel.show(now, awake == null ? null : awake.problem(), focused);
    keepAwake(now);
    Tone tone = panel.view().sentence().tone();
    if (tone == Tone.ALARM && lastTone != Tone.ALARM && now.kind() != Snapshot.Kind.REPLAY) {
      if (watched.hearing().state() != Hearing.State.NOT_WANTED) {
        Toolkit.getDefaultToolkit().beep();
      }
      Window window = SwingUtilities.getWindowAncestor(panel.component());
      if (window != null) {
        window.toFront();
      }
    }
    lastTone = tone;
  }

  private void keepAwake(Snapshot now) {
    boolean wanted =
        awake != null
            && now.kind() != Snapshot.Kind.REPLAY
            && now.phase() != Snapshot.Phase.ENDED
            && now.phase() != Snapshot.Phase.CONNECTING;
    if (wanted != keptAwake) {
      keptAwake = wanted;
      keeping.execute(wanted ? awake::keep : awake::let);
    }
  }

  @Override
  public boolean mayClose() {
    if (!over() && !agreed) {
      leave = tools.shell()::close;
      panel.askClose();
      return false;
    }
    return true;
  }

  /** A window that cannot show the set must not leave it on. */
  @Override
  public void failed() {
    session.off();
  }

  /** To the first screen; asks while the set is being watched. */
  void home() {
    leave = tools.shell()::home;
    if (over() || agreed) {
      leave.run();
    } else {
      panel.askClose();
    }
  }

  private void verdict() {
    Integer number = session.snapshot().powerUp();
    if (over() && number != null) {
      tools.shell().open(new VerdictPage(tools, watched, number, this));
    }
  }

  /** The search for a lost signal: live, or as it was in the power-up that is played. */
  void search() {
    if (session.search() != null) {
      tools.shell().open(new LocatePage(tools, session, null, this));
      return;
    }
    Integer number = session.snapshot().powerUp();
    if (tools.desk() != null && watched.log() != null && number != null) {
      tools
          .shell()
          .aside(
              () -> tools.desk().search(watched.log(), number),
              found -> {
                if (found != null) {
                  tools.shell().open(new LocatePage(tools, null, found, this));
                }
              },
              nothing -> {});
    }
  }

  /** The wires of unknown place that the sheet names. */
  void wires() {
    if (tools.desk() != null && !session.snapshot().sheet().unknownWires().isEmpty()) {
      WireShelf shelf = new WireShelf(tools.desk(), watched.log());
      tools
          .shell()
          .aside(
              () -> shelf.of(session.snapshot().sheet()),
              wires -> tools.shell().open(new TrialPage(tools, wires, shelf, this)),
              nothing -> {});
    }
  }

  private void leave() {
    agreed = true;
    leave.run();
  }

  private boolean over() {
    Snapshot now = session.snapshot();
    return now.kind() == Snapshot.Kind.REPLAY || now.phase() == Snapshot.Phase.ENDED;
  }

  @Override
  public void end() {
    watched.end();
    if (awake != null && keptAwake) {
      keeping.execute(awake::let);
    }
    keeping.shutdown();
  }
}
