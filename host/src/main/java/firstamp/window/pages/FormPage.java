package firstamp.window.pages;

import firstamp.app.SheetEntries;
import firstamp.app.SheetShelf;
import firstamp.model.RuleId;
import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import firstamp.window.present.HomePresenter;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/**
 * The whole job sheet as a form: sections at the left, their entries at the right, each with its
 * unit and with what is taken where it is left empty. Leaving without keeping asks once.
 */
public final class FormPage implements Page {
  private static final int TEXT_WIDTH = 900;

  private final Tools tools;
  private final Words words;
  private final Pieces pieces;
  private final SheetEntries entries;
  private final String given;
  private final String nameBefore;
  private final List<FormSections.Section> sections = FormSections.all();
  private final JPanel page;
  private final JLabel title;
  private final RowList chapters;
  private final JPanel right;
  private final JTextArea problem;
  private final JComboBox<String> rules = new JComboBox<>();
  private final JButton back;
  private FormFields fields;
  private boolean askedToLeave;
  private boolean busy;

  public FormPage(Tools tools, String json) {
    this.tools = tools;
    words = tools.words();
    pieces = tools.pieces();
    given = json;
    entries = SheetEntries.of(json);
    nameBefore = entries.name();
    page = pieces.page("form", new BorderLayout(18, 12));
    title = pieces.label("form-title", " ", true, 26);
    chapters = new RowList("form.sections", pieces, tools.palette(), this::turnTo);
    right = pieces.sheet("form-entries", new BorderLayout(0, 10));
    problem = pieces.prose("form-problem", "", WindowTheme.READING_POINTS, TEXT_WIDTH);
    back = pieces.plain("form.back", this::back);
    for (RuleId rule : RuleId.values()) {
      rules.addItem(words.get("watch." + rule.id()));
    }
    rules.setName("form.rule");
    rules.setFont(WindowTheme.font(true, 17));
    rules.setMaximumRowCount(12);
    rules.getAccessibleContext().setAccessibleName(words.get("flow.form.rule"));
    pieces.describe(rules, "form.rule");
    rules.addActionListener(event -> turnTo(chapters.chosen()));
    layOut();
    chapters.show(sections.stream().map(this::row).toList(), words.get("flow.form.sections"));
    chapters.choose(0);
    judge();
  }

  private HomePresenter.Row row(FormSections.Section section) {
    return new HomePresenter.Row(
        words.get("section." + section.id()),
        words.get("section." + section.id() + ".more"),
        Tone.PLAIN);
  }

  private void layOut() {
    JComponent left = chapters.component();
    left.setPreferredSize(new Dimension(272, 100));
    JPanel bottom = pieces.clear(new BorderLayout(0, 8));
    bottom.add(problem, BorderLayout.NORTH);
    JPanel buttons = pieces.clear(new BorderLayout());
    buttons.add(pieces.main("form.keep", this::goOn), BorderLayout.WEST);
    buttons.add(back, BorderLayout.EAST);
    bottom.add(buttons, BorderLayout.SOUTH);
    page.add(title, BorderLayout.NORTH);
    page.add(left, BorderLayout.WEST);
    page.add(right, BorderLayout.CENTER);
    page.add(bottom, BorderLayout.SOUTH);
  }

  @Override
  public String name() {
    return "form";
  }

  @Override
  public String title() {
    return words.get("form.windowTitle", shownName());
  }

  private String shownName() {
    return entries.name().isBlank() ? words.get("home.noName") : entries.name();
  }

  @Override
  public JComponent component() {
    return page;
  }

  private void turnTo(int index) {
    if (index < 0) {
      return;
    }
    FormSections.Section section = sections.get(index);
    boolean ruleShown = section.id().equals(FormSections.RULES);
    List<FormSections.Entry> shown =
        ruleShown ? FormSections.of(RuleId.values()[rules.getSelectedIndex()]) : section.entries();
    fields = new FormFields(words, pieces, tools.palette(), entries, shown, this::judge);
    right.removeAll();
    if (ruleShown) {
      right.add(pieces.row(rules), BorderLayout.NORTH);
    }
    right.add(fields.component(), BorderLayout.CENTER);
    judge();
    page.revalidate();
    page.repaint();
  }

  /** Says what stands against the sheet, and where. */
  private void judge() {
    title.setText(words.get("form.title", shownName()));
    String text = "";
    if (entries.problem() != null) {
      int section = FormSections.sectionOf(entries.problemPlace());
      Spoken spoken = new Spoken(words.locale());
      String remedy = spoken.say(entries.problem().remedy());
      text =
          section < 0
              ? tools.why(entries.problem())
              : words.get(
                  "form.problem",
                  words.get("section." + sections.get(section).id()),
                  FormSections.name(words, entries.problemPlace()),
                  spoken.say(entries.problem().value()),
                  remedy);
    }
    Pieces.say(problem, text, TEXT_WIDTH);
    problem.setVisible(!text.isEmpty());
    if (fields != null) {
      fields.mark(entries.problemPlace());
    }
    page.revalidate();
  }

  @Override
  public void turn(int by) {
    chapters.move(by);
    page.requestFocusInWindow();
  }

  @Override
  public void move(int by) {
    turn(by);
  }

  @Override
  public void choose(int number) {
    chapters.choose(number - 1);
  }

  /** Keeps the sheet and goes on; a sheet that cannot be watched is not kept. */
  @Override
  public void goOn() {
    if (fields != null) {
      fields.take();
    }
    judge();
    if (entries.problem() != null) {
      int section = FormSections.sectionOf(entries.problemPlace());
      if (section >= 0) {
        chapters.choose(section);
      }
      return;
    }
    if (busy) {
      return;
    }
    busy = true;
    String json = entries.json();
    String name = entries.name();
    SheetShelf shelf = tools.desk().shelf();
    boolean other = !SheetShelf.stem(name).equals(SheetShelf.stem(nameBefore));
    tools
        .shell()
        .aside(
            () -> other && shelf.holds(name) ? null : shelf.keep(name, json),
            file -> {
              busy = false;
              if (file == null) {
                say(words.get("questions.taken", name));
              } else {
                tools.shell().open(new ReadyPage(tools, json));
              }
            },
            failure -> {
              busy = false;
              say(tools.why(failure));
            });
  }

  private void say(String text) {
    Pieces.say(problem, text, TEXT_WIDTH);
    problem.setVisible(true);
    page.revalidate();
  }

  @Override
  public void back() {
    if (fields != null) {
      fields.take();
    }
    boolean changed = !entries.json().equals(SheetEntries.of(given).json());
    if (changed && !askedToLeave) {
      askedToLeave = true;
      say(words.get("form.leave"));
      back.setText(words.get("flow.form.drop"));
      page.requestFocusInWindow();
    } else {
      tools.shell().home();
    }
  }

  public SheetEntries entries() {
    return entries;
  }
}
