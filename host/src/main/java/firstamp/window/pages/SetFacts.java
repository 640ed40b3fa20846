package firstamp.window.pages;

import firstamp.app.ReadySheet;
import firstamp.app.SetEntry;
import firstamp.emulate.Scenarios;
import firstamp.sheet.SheetException;
import firstamp.window.page.Tools;
import firstamp.window.present.HomePresenter;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import javax.swing.JComboBox;
import javax.swing.JTextArea;

/** The text about the set that is chosen on the first screen, and which emulated set is meant. */
final class SetFacts {
  private static final int WIDTH = 740;

  private final Tools tools;
  private final Words words;
  private final HomePresenter presenter;
  private final Supplier<SetEntry> set;
  private final JTextArea about;
  private final JComboBox<String> scenario = new JComboBox<>();

  /**
   * Facts of nothing yet.
   *
   * @param set that is chosen, gives null = none
   */
  SetFacts(Tools tools, HomePresenter presenter, Supplier<SetEntry> set) {
    this.tools = tools;
    this.presenter = presenter;
    this.set = set;
    words = tools.words();
    Pieces pieces = tools.pieces();
    about = pieces.prose("home-about", " \n \n ", WindowTheme.READING_POINTS, WIDTH);
    for (String each : Scenarios.names()) {
      scenario.addItem(each);
    }
    scenario.setName("home.scenario");
    scenario.setFont(WindowTheme.font(false, 18));
    scenario.getAccessibleContext().setAccessibleName(words.get("flow.home.scenario"));
    pieces.describe(scenario, "home.scenario");
    scenario.addActionListener(event -> describe());
  }

  JTextArea text() {
    return about;
  }

  JComboBox<String> scenarios() {
    return scenario;
  }

  /** The scenario that is chosen. */
  String scenario() {
    return Scenarios.names().get(scenario.getSelectedIndex());
  }

  /** Says what a job sheet says of the set that is chosen. */
  void say(String json) {
    try {
      ReadySheet ready = ReadySheet.of("job sheet", json == null ? "" : json);
      List<String> lines = new ArrayList<>(presenter.about(ready.effective()));
      lines.addAll(presenter.job(set.get()));
      tell(String.join("\n", lines));
    } catch (SheetException bad) {
      tell(tools.why(bad));
    }
  }

  /** Says what an emulated set, or one that was begun, is. */
  void describe() {
    SetEntry now = set.get();
    if (now != null && now.kind() == SetEntry.Kind.EMULATED) {
      tell(words.get("home.emulated.about") + "\n" + words.get("scenario." + scenario()));
    } else if (now != null && now.kind() == SetEntry.Kind.BEGUN) {
      tell(words.get("home.begun.about"));
    }
  }

  private void tell(String text) {
    Pieces.say(about, text, WIDTH);
    about.revalidate();
  }
}
