package firstamp.window.pages;

import firstamp.app.Watched;
import firstamp.app.WireShelf;
import firstamp.bench.BenchSession;
import firstamp.bench.Snapshot;
import firstamp.model.TimeSource;
import firstamp.run.TripsInARow;
import firstamp.window.page.Page;
import firstamp.window.page.PageStrokes;
import firstamp.window.page.Tools;
import firstamp.window.present.BenchPresenter;
import firstamp.window.present.BenchView;
import firstamp.window.present.LiveSet;
import firstamp.window.search.LocatePage;
import firstamp.window.search.TrialPage;
import firstamp.window.watch.BenchPanel;
import firstamp.window.watch.Keys;
import firstamp.window.words.Spoken;
import javax.swing.JComponent;

/**
 * A set being watched, or the replay of one. Leaving it asks once while something is on, and waits
 * until the rails are down.
 */
public final class WatchPage implements Page, LiveSet.Feeding {
  /** Where hours are in view figures that change 11 times a second can be read as well. */
  private static final int WIDE_ONE_IN = 3;

  private final Tools tools;
  private final Watched watched;
  private final BenchSession session;
  private final WatchAwake awake;
  private final WatchBeeps beeps;
  private final BenchPanel panel;
  private final Keys keys;
  private final Spoken spoken;
  private Runnable wished;
  private Runnable leaving;
  private LocatePage searching;
  private TrialPage wiring;
  private boolean portKept;
  private int ticks;

  public WatchPage(Tools tools, Watched watched) {
    this.tools = tools;
    this.watched = watched;
    this.session = watched.session();
    spoken = new Spoken(tools.words().locale());
    awake = new WatchAwake(tools.shell().options().keepAwake());
    beeps = new WatchBeeps(tools.shell()::toFront, watched.hearing());
    panel =
        new BenchPanel(
            session,
            watched.hearing(),
            new BenchPresenter(tools.words().locale()),
            tools.palette(),
            TimeSource.system(),
            this::agree);
    keys = new Keys(panel);
    panel.whenMarking(() -> tools.shell().mark(session));
    panel.whenThinking(this::search, this::wires);
    panel.whenAgain(this::again);
    if (watched.sheet() != null && tools.desk() != null) {
      panel.whenPortRefused(
          () -> tools.shell().leaveFor(() -> new ReadyPage(tools, watched.sheet())));
    }
    panel.show(session.snapshot(), null, true);
    if (watched.log() != null && tools.desk() != null) {
      panel.whenOver(this::verdict, tools.shell()::home);
    }
  }

  public BenchPanel panel() {
    return panel;
  }

  @Override
  public BenchSession session() {
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
  public JComponent controls() {
    return panel.controls();
  }

  @Override
  public JComponent sentenceKeys() {
    return panel.sentenceKeys();
  }

  @Override
  public PageStrokes strokes() {
    return keys;
  }

  @Override
  public LiveSet.Stand stand() {
    return LiveSet.Stand.of(session.snapshot());
  }

  @Override
  public void off() {
    panel.off();
  }

  @Override
  public void touched() {
    session.touched();
  }

  @Override
  public BenchView view() {
    return panel.view();
  }

  @Override
  public void tick(boolean focused) {
    ticks++;
    if (panel.time().wide() && ticks % WIDE_ONE_IN != 0) {
      return;
    }
    Snapshot now = session.snapshot();
    panel.show(now, awake.problem(), focused);
    heard(now);
    if (leaving != null && over()) {
      Runnable go = leaving;
      leaving = null;
      go.run();
    }
  }

  /** The same where another page is in front: what the frame says of it, and what is heard. */
  public void follow(boolean focused) {
    Snapshot now = session.snapshot();
    panel.look(now, awake.problem(), focused);
    heard(now);
  }

  private void heard(Snapshot now) {
    awake.follow(now);
    keepPort(now);
    beeps.follow(now, panel.view().sentence().tone());
  }

  /** Once a probe box has answered its port is kept, whatever comes of the power-up. */
  private void keepPort(Snapshot now) {
    boolean answered = now.powerUp() != null || now.beside().latched() != null;
    if (!portKept && answered && now.kind() == Snapshot.Kind.PROBE && tools.desk() != null) {
      portKept = true;
      tools
          .shell()
          .aside(
              () -> {
                tools.desk().keepPort(now.link().port());
                return null;
              },
              kept -> {},
              this::unreadable);
    }
  }

  /**
   * Leaves once it is over. While the switch is closed or may close it asks, once; then it waits
   * until the rails are down, and a second wish does not wait.
   */
  public void leave(Runnable then) {
    if (over() || leaving != null) {
      leaving = null;
      then.run();
    } else if (LiveSet.Stand.closable(session.snapshot().phase())) {
      wished = then;
      panel.askClose();
    } else {
      leaving = then;
      panel.leaving();
    }
  }

  private void agree() {
    session.leave();
    leaving = wished;
    panel.leaving();
  }

  /** A window that cannot show the set must not leave it on. */
  @Override
  public void failed() {
    session.leave();
  }

  private void verdict() {
    Integer number = session.snapshot().powerUp();
    if (over() && number != null) {
      tools.shell().open(new VerdictPage(tools, watched, number, this));
    }
  }

  /** What is different now? Asked before it is switched on again after a trip. */
  private void again(int trip) {
    Snapshot now = session.snapshot();
    if (tools.desk() == null || watched.log() == null) {
      again(trip, TripsInARow.FIRST);
      return;
    }
    String set = now.sheet().set().name();
    String justNow =
        now.phase() == Snapshot.Phase.ENDED || now.findings().trip() == null
            ? null
            : now.findings().trip().cause().id();
    tools
        .shell()
        .aside(
            () -> tools.desk().trips(watched.log(), set, justNow),
            trips -> again(trip, trips),
            unreadable -> again(trip, TripsInARow.FIRST));
  }

  private void again(int trip, TripsInARow trips) {
    tools.shell().open(new AgainPage(tools, session, trip, trips, this));
  }

  /** The search for a lost signal: live, or as it was in the power-up that is played. */
  void search() {
    if (session.search() != null) {
      // The one that was left: what was half typed is still there.
      searching = searching == null ? new LocatePage(tools, session, null, this) : searching;
      tools.shell().open(searching);
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
              this::unreadable);
    }
  }

  /** The wires of unknown place that the sheet names. */
  void wires() {
    if (wiring != null) {
      tools.shell().open(wiring);
    } else if (tools.desk() != null && !session.snapshot().sheet().unknownWires().isEmpty()) {
      WireShelf shelf = new WireShelf(tools.desk(), watched.log());
      tools
          .shell()
          .aside(
              () -> shelf.of(session.snapshot().sheet()),
              wires -> {
                wiring = new TrialPage(tools, wires, shelf, this);
                tools.shell().open(wiring);
              },
              this::unreadable);
    }
  }

  private void unreadable(Exception failure) {
    panel.refuse(tools.why(failure));
  }

  private boolean over() {
    Snapshot now = session.snapshot();
    return now.kind() == Snapshot.Kind.REPLAY || now.phase() == Snapshot.Phase.ENDED;
  }

  /** Another page shows the same session now. */
  public void replaced() {
    awake.end();
  }

  @Override
  public void end() {
    watched.end();
    awake.end();
  }
}
