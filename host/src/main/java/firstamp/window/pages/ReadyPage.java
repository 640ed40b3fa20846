package firstamp.window.pages;

import firstamp.app.Desk;
import firstamp.app.DeskSettings;
import firstamp.app.ReadySheet;
import firstamp.model.Conditions;
import firstamp.sheet.SheetException;
import firstamp.window.page.Page;
import firstamp.window.page.PageRoom;
import firstamp.window.page.Tools;
import firstamp.window.present.HomePresenter;
import firstamp.window.present.ReadyPresenter;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.util.List;
import javax.swing.BoxLayout;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;

/** The last page before current can flow: what is watched, what is clipped where, which port. */
public final class ReadyPage implements Page {
  private static final int LEFT_WIDTH = 640;
  private static final int RIGHT_WIDTH = 500;

  private final Tools tools;
  private final Words words;
  private final Pieces pieces;
  private final String json;
  private final ReadySheet sheet;
  private final String unreadable;
  private final JPanel page;
  private final JComboBox<String> port = new JComboBox<>();
  private final JTextArea portMore;
  private final JTextField label = new JTextField(24);
  private final JTextArea problem;
  private final JButton on;
  private final LeftChips left;
  private PortsOffered offered = new PortsOffered(List.of(), DeskSettings.none());
  private boolean busy;

  public ReadyPage(Tools tools, String json) {
    this.tools = tools;
    this.json = json;
    words = tools.words();
    pieces = tools.pieces();
    ReadySheet read = null;
    String why = null;
    try {
      read = ReadySheet.of("job sheet", json == null ? "" : json);
    } catch (SheetException bad) {
      why = tools.why(bad);
    }
    sheet = read;
    unreadable = why;
    page = pieces.page("ready", new BorderLayout(24, 12));
    portMore = pieces.prose("ready-port-more", " ", 17, RIGHT_WIDTH);
    problem = pieces.prose("ready-problem", "", WindowTheme.READING_POINTS, Pieces.WIDTH);
    on = pieces.main("ready.on", this::goOn);
    left =
        sheet == null
            ? null
            : new LeftChips(pieces, words, sheet.effective().set().kind(), this::keepLeft);
    layOut();
  }

  private void layOut() {
    String name = sheet == null ? words.get("home.noName") : sheet.effective().set().name();
    page.add(
        pieces.label("ready-title", words.get("ready.title", name), true, 28), BorderLayout.NORTH);
    if (sheet == null) {
      page.add(pieces.prose("ready-unreadable", unreadable, 19, Pieces.WIDTH), BorderLayout.CENTER);
      on.setEnabled(false);
    } else {
      JPanel middle = pieces.clear(new BorderLayout(24, 0));
      middle.add(left(), BorderLayout.CENTER);
      middle.add(right(), BorderLayout.EAST);
      page.add(PageRoom.middle(middle, null), BorderLayout.CENTER);
    }
    JPanel bottom = pieces.clear(new BorderLayout(0, 8));
    bottom.add(problem, BorderLayout.NORTH);
    problem.setVisible(false);
    if (left != null) {
      bottom.add(pieces.row(left.buttons().toArray(new JComponent[0])), BorderLayout.CENTER);
    }
    JPanel buttons = pieces.clear(new BorderLayout());
    buttons.add(pieces.row(on, pieces.plain("ready.sheet", () -> choose(1))), BorderLayout.WEST);
    buttons.add(pieces.plain("ready.back", this::back), BorderLayout.EAST);
    bottom.add(buttons, BorderLayout.SOUTH);
    page.add(bottom, BorderLayout.SOUTH);
  }

  private JComponent left() {
    ReadyPresenter presenter = new ReadyPresenter(words, tools.numbers());
    JPanel column = pieces.sheet("ready-facts", null);
    column.setLayout(new BoxLayout(column, BoxLayout.Y_AXIS));
    HomePresenter facts =
        new HomePresenter(words, tools.numbers(), java.time.ZoneId.systemDefault());
    add(column, "facts", String.join("\n", facts.about(sheet.effective())), LEFT_WIDTH);
    for (String line : presenter.watched(sheet.effective())) {
      add(column, "watched", line, LEFT_WIDTH);
    }
    String gaps = presenter.notWatched(sheet.effective());
    if (!gaps.isEmpty()) {
      add(column, "not-watched", words.get("verdict.notWatched", gaps), LEFT_WIDTH);
    }
    for (String warning : presenter.warnings(sheet.stated())) {
      add(column, "warning", words.get("ready.warning", warning), LEFT_WIDTH);
    }
    return column;
  }

  private JComponent right() {
    ReadyPresenter presenter = new ReadyPresenter(words, tools.numbers());
    JPanel column = pieces.sheet("ready-clips", null);
    column.setLayout(new BoxLayout(column, BoxLayout.Y_AXIS));
    // The port comes first: it is seen however little height there is.
    port.setName("ready.port");
    port.setEditable(true);
    field(column, "ready.port", port);
    port.addActionListener(event -> tellPort());
    portMore.setAlignmentX(0);
    column.add(portMore);
    JPanel again = pieces.row(pieces.plain("ready.look", () -> choose(2)));
    again.setAlignmentX(0);
    again.setMaximumSize(new Dimension(RIGHT_WIDTH, again.getPreferredSize().height));
    column.add(again);
    label.setName("ready.label");
    field(column, "ready.label", label);
    column.add(javax.swing.Box.createVerticalStrut(14));
    add(column, "clips", words.get("ready.clips"), RIGHT_WIDTH);
    for (String line : presenter.clips(sheet.effective())) {
      add(column, "clip", line, RIGHT_WIDTH);
    }
    return column;
  }

  private void add(JPanel column, String name, String text, int width) {
    JTextArea area = pieces.prose("ready-" + name, text, 20, width);
    area.setAlignmentX(0);
    area.setMaximumSize(new Dimension(width, area.getPreferredSize().height));
    column.add(area);
    column.add(javax.swing.Box.createVerticalStrut(8));
  }

  private void field(JPanel column, String name, JComponent field) {
    JLabel title = pieces.label(name + "-title", words.get("flow." + name), true, 18);
    title.setAlignmentX(0);
    title.setLabelFor(field);
    field.setFont(WindowTheme.font(false, 19));
    field.setAlignmentX(0);
    field.setMaximumSize(new Dimension(RIGHT_WIDTH, 38));
    field.setPreferredSize(new Dimension(RIGHT_WIDTH, 38));
    field.getAccessibleContext().setAccessibleName(words.get("flow." + name));
    pieces.describe(field, name);
    column.add(javax.swing.Box.createVerticalStrut(8));
    column.add(title);
    column.add(field);
  }

  @Override
  public String name() {
    return "ready";
  }

  @Override
  public String title() {
    return sheet == null
        ? words.get("home.windowTitle")
        : words.get("title", sheet.effective().set().name(), words.get("ready.phase"));
  }

  @Override
  public JComponent component() {
    return page;
  }

  @Override
  public void shown() {
    busy = false;
    lookForPorts();
    if (left != null) {
      rememberLeft();
    }
  }

  private void rememberLeft() {
    String set = sheet.effective().set().name();
    tools.shell().aside(() -> tools.desk().answers().conditions(set), left::remember, this::failed);
  }

  /** How the set is left is kept for the next time too, whatever becomes of this page. */
  private void keepLeft() {
    Conditions now = left.conditions();
    tools.shell().aside(() -> keep(now), done -> page.revalidate(), this::failed);
  }

  private boolean keep(Conditions now) {
    tools.desk().answers().conditions(sheet.effective().set().name(), now);
    return true;
  }

  private void lookForPorts() {
    Desk desk = tools.desk();
    tools.shell().aside(() -> PortsOffered.of(desk), this::showPorts, this::failed);
  }

  private void showPorts(PortsOffered now) {
    offered = now;
    port.removeAllItems();
    now.paths().forEach(port::addItem);
    port.setSelectedItem(now.first());
    tellPort();
  }

  private void tellPort() {
    Pieces.say(portMore, offered.about(words, port()), RIGHT_WIDTH);
    portMore.setMaximumSize(new Dimension(RIGHT_WIDTH, portMore.getPreferredSize().height));
    page.revalidate();
  }

  private String port() {
    Object item = port.getEditor().getItem();
    return item == null ? "" : item.toString().strip();
  }

  private void failed(Exception failure) {
    busy = false;
    say(tools.why(failure));
  }

  private void say(String text) {
    Pieces.say(problem, text, Pieces.WIDTH);
    problem.setVisible(true);
    page.revalidate();
  }

  /** To the cautions: they are asked while the probe box answers, the switch stays open. */
  @Override
  public void goOn() {
    if (sheet == null || busy) {
      return;
    }
    String path = port();
    if (path.isEmpty()) {
      say(words.get("ready.noPort"));
      return;
    }
    busy = true;
    Desk desk = tools.desk();
    String text = label.getText();
    Conditions now = left.touched() ? left.conditions() : null;
    tools
        .shell()
        .aside(
            () -> {
              if (now != null) {
                keep(now);
              }
              return desk.start(sheet, path, text, 0);
            },
            watched -> tools.shell().open(new WatchPage(tools, watched)),
            this::failed);
  }

  @Override
  public void choose(int number) {
    if (number == 1) {
      tools.shell().open(new FormPage(tools, json));
    } else if (number == 2) {
      lookForPorts();
    } else if (number <= 5 && left != null) {
      left.press(number - 2);
    }
  }

  @Override
  public void back() {
    tools.shell().home();
  }
}
