package firstamp.window.pages;

import firstamp.app.SheetEntries;
import firstamp.bench.BenchSession;
import firstamp.bench.Snapshot;
import firstamp.model.Difference;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.run.TripsInARow;
import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.util.ArrayList;
import java.util.List;
import javax.swing.BoxLayout;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;

/** After it switched itself off: what is different now? Nothing here closes a switch. */
public final class AgainPage implements Page {
  private static final int TEXT_WIDTH = 1120;

  private final Tools tools;
  private final Words words;
  private final Pieces pieces;
  private final BenchSession session;
  private final Page watching;
  private final AgainFlow flow;
  private final JPanel page;
  private final JLabel title;
  private final JTextArea about;
  private final JTextArea problem;
  private final JPanel middle;
  private final JComboBox<String> rail = new JComboBox<>();
  private final JTextField ohms = new JTextField(10);
  private final JPanel typed;
  private final JButton on;
  private final Canvas left;
  private long restShown = -1;

  /**
   * Asks.
   *
   * @param session that is switched on again
   * @param trip number to be given back
   * @param trips in a row, of this set
   * @param watching page to go back to
   */
  public AgainPage(Tools tools, BenchSession session, int trip, TripsInARow trips, Page watching) {
    this.tools = tools;
    this.session = session;
    this.watching = watching;
    words = tools.words();
    pieces = tools.pieces();
    flow = new AgainFlow(session.snapshot().sheet(), trip, trips);
    page = pieces.page("again", new BorderLayout(0, 14));
    title = pieces.label("again-title", " ", true, 34);
    about = pieces.prose("again-about", "", 22, TEXT_WIDTH);
    problem = pieces.prose("again-problem", "", 22, TEXT_WIDTH);
    middle = pieces.clear(null);
    middle.setLayout(new BoxLayout(middle, BoxLayout.Y_AXIS));
    on = pieces.main("again.on", this::goOn);
    RestClock clock = new RestClock(tools, () -> restShown);
    left = new Canvas("again-left", TEXT_WIDTH, 150, clock::paint);
    left.setAlignmentX(0);
    typed = typed();
    layOut();
    show();
  }

  private JPanel typed() {
    rail.setName("again.rail");
    rail.addItem(words.get("again.supply"));
    for (JobSheet.Rail each : session.snapshot().sheet().rails()) {
      rail.addItem(words.get("again.rail", each.input(), each.name()));
    }
    rail.setSelectedIndex(rail.getItemCount() > 1 ? 1 : 0);
    rail.setFont(WindowTheme.font(false, 20));
    rail.getAccessibleContext().setAccessibleName(words.get("flow.again.rail"));
    pieces.describe(rail, "again.rail");
    ohms.setName("again.ohms");
    ohms.setFont(WindowTheme.font(true, 28));
    ohms.getAccessibleContext().setAccessibleName(words.get("flow.again.ohms"));
    pieces.describe(ohms, "again.ohms");
    return pieces.row(ohms, pieces.label("again-unit", "\u03a9", true, 26), rail);
  }

  private void layOut() {
    JPanel top = pieces.clear(new BorderLayout(0, 8));
    top.add(title, BorderLayout.NORTH);
    top.add(about, BorderLayout.CENTER);
    JPanel bottom = pieces.clear(new BorderLayout(0, 8));
    bottom.add(problem, BorderLayout.NORTH);
    JPanel buttons = pieces.clear(new BorderLayout());
    buttons.add(pieces.row(on), BorderLayout.WEST);
    buttons.add(pieces.plain("again.back", this::back), BorderLayout.EAST);
    bottom.add(buttons, BorderLayout.SOUTH);
    page.add(top, BorderLayout.NORTH);
    page.add(middle, BorderLayout.CENTER);
    page.add(bottom, BorderLayout.SOUTH);
  }

  private void show() {
    long rest = restS();
    restShown = rest;
    middle.removeAll();
    title.setText(words.get(rest > 0 ? "again.rest" : "again." + flow.stage()));
    Pieces.say(about, about(rest), TEXT_WIDTH);
    if (rest > 0) {
      left.say(words.get("again.left", tools.numbers().clock(rest * 1000.0)));
      middle.add(left);
    } else {
      choices().forEach(middle::add);
      if (flow.stage() == AgainFlow.Stage.OHM) {
        typed.setAlignmentX(0);
        typed.setMaximumSize(typed.getPreferredSize());
        middle.add(typed);
      }
    }
    on.setVisible(rest == 0 && flow.stage() == AgainFlow.Stage.OHM);
    say("");
    page.revalidate();
    page.repaint();
  }

  private String about(long restS) {
    TripsInARow trips = flow.trips();
    String often =
        trips.count() > 1
            ? words.get("again.often", trips.count(), words.get("trip." + trips.cause()))
            : words.get("again.once");
    return restS > 0
        ? often + " " + words.get("again.resting", tools.numbers().clock(restS * 1000.0))
        : often;
  }

  private long restS() {
    return tools.desk() == null ? 0 : flow.trips().restS(tools.desk().time().epochMillis());
  }

  private List<JComponent> choices() {
    List<String> keys = new ArrayList<>();
    if (flow.stage() == AgainFlow.Stage.DIFFERENT) {
      for (Difference each : Difference.values()) {
        keys.add(words.get("again.different." + each.id()));
      }
    } else if (flow.stage() == AgainFlow.Stage.PROOF) {
      keys.add(words.get("again.proof.ohms"));
      if (flow.halfV() != null) {
        keys.add(words.get("again.proof.half", tools.numbers().volts(flow.halfV()).toString()));
      }
    }
    List<JComponent> buttons = new ArrayList<>();
    for (int k = 0; k < keys.size(); k++) {
      int number = k + 1;
      JButton button = pieces.plain("again.choice", () -> choose(number));
      button.setName("again-choice-" + number);
      button.setText(words.get("flow.numbered", number, keys.get(k)));
      button.getAccessibleContext().setAccessibleName(keys.get(k));
      button.setAlignmentX(0);
      buttons.add(button);
      buttons.add((JComponent) javax.swing.Box.createVerticalStrut(8));
    }
    return buttons;
  }

  private void say(String text) {
    Pieces.say(problem, text, TEXT_WIDTH);
    problem.setVisible(!text.isEmpty());
    page.revalidate();
  }

  @Override
  public String name() {
    return "again";
  }

  @Override
  public String title() {
    return words.get("again.windowTitle", title.getText());
  }

  @Override
  public JComponent component() {
    return page;
  }

  @Override
  public void tick(boolean focused) {
    if (restShown != 0 && restS() != restShown) {
      show();
    }
  }

  @Override
  public void choose(int number) {
    if (restS() > 0) {
      return;
    }
    switch (flow.stage()) {
      case DIFFERENT -> {
        if (number <= Difference.values().length) {
          done(flow.different(Difference.values()[number - 1]));
        }
      }
      case PROOF -> proof(number);
      case OHM -> {
        // Digits belong to the field.
      }
    }
  }

  private void proof(int number) {
    if (number == 1) {
      flow.ohms();
      show();
      ohms.setText("");
      ohms.requestFocusInWindow();
    } else if (number == 2 && flow.halfV() != null) {
      done(flow.half());
    }
  }

  @Override
  public void goOn() {
    if (flow.stage() != AgainFlow.Stage.OHM || restS() > 0) {
      return;
    }
    Double ohm = SheetEntries.number(ohms.getText());
    if (ohm == null || ohm < 0) {
      say(words.get("again.noNumber"));
      return;
    }
    String up = stillUp();
    if (up != null) {
      say(words.get("again.stillUp", up));
      return;
    }
    ProbeEvent.SwitchedOnAgain what = flow.ohm(railNumber(), ohm);
    if (what == null) {
      say(words.get("again.forbids", tools.numbers().amps(flow.forbids()).toString()));
    } else {
      done(what);
    }
  }

  private int railNumber() {
    int chosen = rail.getSelectedIndex();
    return chosen <= 0 ? 0 : session.snapshot().sheet().rails().get(chosen - 1).input();
  }

  /** A rail that still has volts: no ohmmeter belongs there. */
  private String stillUp() {
    for (Snapshot.Rail each : session.snapshot().figures().rails()) {
      if (each.volts() != null && Math.abs(each.volts()) > 1) {
        return each.name() + " " + tools.numbers().volts(each.volts());
      }
    }
    return null;
  }

  private void done(ProbeEvent.SwitchedOnAgain what) {
    if (what == null) {
      show();
      return;
    }
    session.restore(what);
    tools.shell().open(watching);
  }

  @Override
  public void back() {
    if (flow.back()) {
      show();
      page.requestFocusInWindow();
    } else {
      tools.shell().open(watching);
    }
  }

  @Override
  public void end() {
    watching.end();
  }
}
