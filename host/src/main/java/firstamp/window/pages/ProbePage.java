package firstamp.window.pages;

import firstamp.analysis.calibrate.MeterAccuracy;
import firstamp.app.Desk;
import firstamp.app.ProbeFlow;
import firstamp.app.SheetEntries;
import firstamp.model.PedalJob;
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
import java.awt.FlowLayout;
import java.util.concurrent.Callable;
import javax.swing.JButton;
import javax.swing.JComboBox;
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
  private final JComboBox<String> port = new JComboBox<>();
  private final JTextField volts = new JTextField("0.8", 5);
  private final JTextField amps = new JTextField("1.5", 5);
  private final JTextField ohms = new JTextField("1", 5);
  private final JPanel start;
  private final JButton on;
  private final JButton cut;
  private final JButton skip;
  private final JComboBox<String> pedal = new JComboBox<>();
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
    start = start();
    layOut();
    show();
  }

  private JPanel start() {
    JPanel rows = pieces.clear(new BorderLayout(0, 10));
    port.setName("probe.port");
    port.setEditable(true);
    port.setPrototypeDisplayValue(words.get("probe.emulated") + "    ");
    rows.add(labelled("probe.port", port), BorderLayout.NORTH);
    JPanel meter = pieces.clear(new FlowLayout(FlowLayout.LEFT, 0, 0));
    volts.setName("probe.volts");
    amps.setName("probe.amps");
    ohms.setName("probe.ohms");
    meter.add(labelled("probe.volts", volts));
    meter.add(labelled("probe.amps", amps));
    meter.add(labelled("probe.ohms", ohms));
    rows.add(meter, BorderLayout.CENTER);
    for (PedalJob job : PedalJob.values()) {
      pedal.addItem(words.get("probe.pedal." + job.id()));
    }
    pedal.setSelectedIndex(tools.shell().pedal().ordinal());
    pedal.setName("probe.pedal");
    pedal.addActionListener(event -> pedal(PedalJob.values()[pedal.getSelectedIndex()]));
    rows.add(labelled("probe.pedal", pedal), BorderLayout.SOUTH);
    return rows;
  }

  /** A pedal has one job, kept for the next time too. */
  private void pedal(PedalJob job) {
    if (job != tools.shell().pedal()) {
      tools.shell().pedal(job);
      Desk desk = tools.desk();
      tools
          .shell()
          .aside(
              () -> {
                desk.settings().withPedal(job).save(desk.folder());
                return job;
              },
              kept -> {},
              this::failed);
    }
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

  private JPanel labelled(String name, JComponent field) {
    JLabel label = pieces.label(name + "-title", words.get("flow." + name), true, 19);
    label.setLabelFor(field);
    field.setFont(WindowTheme.font(false, 20));
    field.getAccessibleContext().setAccessibleName(words.get("flow." + name));
    pieces.describe(field, name);
    return pieces.row(label, field);
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
    below.add(start, BorderLayout.NORTH);
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
    ProbeFlow.Step now = flow.step();
    step.setText(words.get(flow.emulated() ? "probe.stepEmulated" : "probe.step"));
    title.setText(presenter.title(now));
    Tone tone = presenter.tone(flow);
    boolean verdict = now == ProbeFlow.Step.CUT_DONE;
    todo.setFont(WindowTheme.font(verdict, verdict ? WindowTheme.FAR_POINTS : 28));
    Pieces.say(todo, presenter.todo(flow), TEXT_WIDTH);
    todo.setForeground(WindowTheme.colour(tools.palette().inkOn(tone)));
    sheet.setBackground(WindowTheme.colour(tools.palette().groundOf(tone)));
    entryRow.setVisible(now.asksNumber());
    unit.setText(now.asksNumber() ? now.unit() : " ");
    Double reading = flow.demoReading();
    entry.setText(reading == null ? "" : tools.numbers().short4(reading));
    start.setVisible(now == ProbeFlow.Step.START);
    on.setText(presenter.go(now));
    cut.setVisible(now == ProbeFlow.Step.START);
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
    tools.shell().aside(() -> PortsOffered.of(desk), this::ports, this::failed);
    if (flow.step().asksNumber()) {
      entry.requestFocusInWindow();
    }
  }

  private void ports(PortsOffered offered) {
    port.removeAllItems();
    offered.paths().forEach(port::addItem);
    port.addItem(words.get("probe.emulated"));
    port.setSelectedItem(offered.first() == null ? words.get("probe.emulated") : offered.first());
  }

  private String path() {
    Object item = port.getEditor().getItem();
    String text = item == null ? "" : item.toString().strip();
    return text.equals(words.get("probe.emulated")) || text.isEmpty() ? null : text;
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
      case START -> begin(ProbeFlow.Step.ZERO);
      case CUT_DONE -> leave();
      default -> go();
    }
  }

  private void begin(ProbeFlow.Step first) {
    MeterAccuracy voltsAccuracy = accuracy(volts);
    MeterAccuracy ampsAccuracy = accuracy(amps);
    MeterAccuracy ohmsAccuracy = accuracy(ohms);
    if (voltsAccuracy == null || ampsAccuracy == null || ohmsAccuracy == null) {
      say(words.get("probe.accuracy"));
      return;
    }
    String path = path();
    flow.accuracy(voltsAccuracy, ampsAccuracy, ohmsAccuracy);
    wait(
        () -> {
          flow.begin(path, first);
          return true;
        });
  }

  private static MeterAccuracy accuracy(JTextField field) {
    Double percent = SheetEntries.number(field.getText());
    return percent == null || percent <= 0 || percent > 20 ? null : new MeterAccuracy(percent, 0);
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
    if (number == 1 && flow.step() == ProbeFlow.Step.START && !busy) {
      begin(ProbeFlow.Step.CUT);
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
    port.setSelectedItem(words.get("probe.emulated"));
  }

  public ProbeFlow flow() {
    return flow;
  }
}
