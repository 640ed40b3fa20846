package firstamp.window.pages;

import firstamp.analysis.calibrate.MeterAccuracy;
import firstamp.app.Desk;
import firstamp.app.ProbeFlow;
import firstamp.app.ProbeStep;
import firstamp.app.SheetEntries;
import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import firstamp.window.present.BenchView;
import firstamp.window.present.LiveSet;
import firstamp.window.present.ProbePresenter;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.util.concurrent.Callable;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;

/**
 * Guided steps with the probe box: calibrate it with what is at hand, let it prove that it cuts.
 * Enter goes on; leaving keeps what was measured, the switch is open meanwhile.
 */
public final class ProbePage implements Page, LiveSet.Feeding {
  private static final int TEXT_WIDTH = 1120;

  private final Tools tools;
  private final Words words;
  private final Pieces pieces;
  private final ProbeFlow flow;
  private final ProbePresenter presenter;
  private final JPanel page;
  private final JPanel sheet;
  private final JLabel step;
  private final JLabel title;
  private final JTextArea todo;
  private final JTextArea said;
  private final JTextField entry = new JTextField(10);
  private final JLabel unit;
  private final JPanel entryRow;
  private final ProbeStartForm start;
  private final JButton on;
  private final JButton cut;
  private final JButton skip;
  private boolean busy;
  private boolean feeds;

  public ProbePage(Tools tools) {
    this.tools = tools;
    words = tools.words();
    pieces = tools.pieces();
    flow = tools.desk().probeFlow();
    presenter = new ProbePresenter(words, tools.numbers());
    page = pieces.page("probe", new BorderLayout(0, 14));
    sheet = pieces.sheet("probe-sheet", new BorderLayout(0, 16));
    step = pieces.quiet("probe-step", " ", WindowTheme.READING_POINTS);
    title = pieces.label("probe-title", " ", true, 34);
    todo = pieces.prose("probe-todo", "", 28, TEXT_WIDTH);
    said = pieces.prose("probe-said", "", WindowTheme.READING_POINTS, TEXT_WIDTH);
    unit = pieces.label("probe-unit", " ", true, 34);
    on = pieces.main("probe.on", this::goOn);
    cut = pieces.plain("probe.cut", () -> choose(1));
    skip = pieces.plain("probe.skip", this::skip);
    entryRow = pieces.row(entry, unit);
    start = new ProbeStartForm(tools, this::failed);
    layOut();
    show();
  }

  @Override
  public LiveSet.Stand stand() {
    return feeds ? new LiveSet.Stand(true, true, false, false, true) : LiveSet.Stand.NOTHING;
  }

  @Override
  public void off() {
    flow.off();
  }

  /** There are no figures here: what it does, and how it is stopped. */
  @Override
  public BenchView view() {
    return BenchView.plain(
        title(),
        words.get("probe.feeding.phase"),
        new BenchView.Sentence(
            Tone.CAUTION, words.get("probe.feeding"), words.get("probe.feeding.action")),
        words.get("off.ready"));
  }

  private void layOut() {
    entry.setName("probe.entry");
    entry.setFont(WindowTheme.font(true, 34));
    entry.getAccessibleContext().setAccessibleName(words.get("flow.probe.entry"));
    pieces.describe(entry, "probe.entry");
    JPanel top = pieces.clear(new BorderLayout(0, 4));
    top.add(step, BorderLayout.NORTH);
    top.add(title, BorderLayout.CENTER);
    JPanel inner = pieces.clear(new BorderLayout(0, 16));
    inner.add(entryRow, BorderLayout.NORTH);
    JPanel below = pieces.clear(new BorderLayout());
    below.add(start.component(), BorderLayout.NORTH);
    inner.add(below, BorderLayout.CENTER);
    sheet.add(todo, BorderLayout.NORTH);
    sheet.add(inner, BorderLayout.CENTER);
    JPanel bottom = pieces.clear(new BorderLayout(0, 8));
    bottom.add(said, BorderLayout.NORTH);
    bottom.add(
        pieces.ends(
            new JComponent[] {on, cut, skip},
            new JComponent[] {
              pieces.plain("probe.back", this::back), pieces.plain("probe.home", this::leave)
            }),
        BorderLayout.SOUTH);
    page.add(top, BorderLayout.NORTH);
    page.add(sheet, BorderLayout.CENTER);
    page.add(bottom, BorderLayout.SOUTH);
  }

  private void show() {
    ProbeStep now = flow.step();
    step.setText(words.get(flow.emulated() ? "probe.stepEmulated" : "probe.step"));
    title.setText(presenter.title(now));
    Tone tone = presenter.tone(flow);
    boolean verdict = now == ProbeStep.CUT_DONE;
    todo.setFont(WindowTheme.font(verdict, verdict ? WindowTheme.FAR_POINTS : 28));
    Pieces.say(todo, presenter.todo(flow), TEXT_WIDTH);
    todo.setForeground(WindowTheme.colour(tools.palette().inkOn(tone)));
    sheet.setBackground(WindowTheme.colour(tools.palette().groundOf(tone)));
    entryRow.setVisible(now.asksNumber());
    unit.setText(now.asksNumber() ? now.unit() : " ");
    Double reading = flow.demoReading();
    entry.setText(reading == null ? "" : tools.numbers().short4(reading));
    start.component().setVisible(now == ProbeStep.START);
    on.setText(presenter.go(now));
    cut.setVisible(now == ProbeStep.START);
    skip.setVisible(now.canBeSkipped());
    say(presenter.leftOut(flow.leftOut()));
    if (now.asksNumber()) {
      entry.requestFocusInWindow();
      entry.selectAll();
    } else {
      page.requestFocusInWindow();
    }
    page.revalidate();
    page.repaint();
  }

  private void say(String text) {
    Pieces.say(said, text, TEXT_WIDTH);
    said.setVisible(!text.isEmpty());
    page.revalidate();
  }

  @Override
  public String name() {
    return "probe";
  }

  @Override
  public String title() {
    return words.get("probe.windowTitle", title.getText());
  }

  @Override
  public JComponent component() {
    return page;
  }

  @Override
  public void shown() {
    Desk desk = tools.desk();
    tools.shell().aside(() -> PortsOffered.of(desk), start::offer, this::failed);
    if (flow.step().asksNumber()) {
      entry.requestFocusInWindow();
    }
  }

  private void failed(Exception failure) {
    busy = false;
    feeds = false;
    show();
    say(tools.why(failure));
  }

  @Override
  public void goOn() {
    if (busy) {
      return;
    }
    switch (flow.step()) {
      case START -> begin(ProbeStep.ZERO);
      case CUT_DONE -> leave();
      default -> go();
    }
  }

  private void begin(ProbeStep first) {
    MeterAccuracy voltsAccuracy = start.volts();
    MeterAccuracy ampsAccuracy = start.amps();
    MeterAccuracy ohmsAccuracy = start.ohms();
    if (voltsAccuracy == null || ampsAccuracy == null || ohmsAccuracy == null) {
      say(words.get("probe.accuracy"));
      return;
    }
    String path = start.path();
    flow.accuracy(voltsAccuracy, ampsAccuracy, ohmsAccuracy);
    wait(
        () -> {
          flow.begin(path, first);
          return true;
        });
  }

  private void go() {
    Double reading = SheetEntries.number(entry.getText());
    if (flow.step().asksNumber() && reading == null) {
      say(words.get("probe.noNumber"));
      return;
    }
    wait(
        () -> {
          flow.go(reading);
          return true;
        });
  }

  private void wait(Callable<Boolean> task) {
    busy = true;
    feeds = flow.step().feeds();
    if (feeds) {
      tools.shell().feeds(this);
    }
    say(words.get("probe.busy"));
    tools
        .shell()
        .aside(
            task,
            done -> {
              busy = false;
              feeds = false;
              show();
            },
            this::failed);
  }

  @Override
  public void choose(int number) {
    if (number == 1 && flow.step() == ProbeStep.START && !busy) {
      begin(ProbeStep.CUT);
    }
  }

  /** Meter and head stay as they are; the field of these steps takes the digits. */
  private void skip() {
    if (!busy && flow.step().canBeSkipped()) {
      flow.skip();
      show();
    }
  }

  @Override
  public void back() {
    if (busy) {
      return;
    }
    if (flow.back()) {
      show();
    } else {
      leave();
    }
  }

  private void leave() {
    if (!busy) {
      tools.shell().home();
    }
  }

  @Override
  public void end() {
    tools.desk().leaveProbe();
  }

  /** Chooses the emulated box. */
  public void emulated() {
    start.emulated();
  }

  public ProbeFlow flow() {
    return flow;
  }
}
