package firstamp.window.pages;

import firstamp.app.QuestionFlow;
import firstamp.app.SheetEntries;
import firstamp.app.SheetShelf;
import firstamp.sheet.SheetQuestion;
import firstamp.window.page.Page;
import firstamp.window.page.PageRoom;
import firstamp.window.page.Tools;
import firstamp.window.present.QuestionsPresenter;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.GridBagLayout;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.JTextField;

/**
 * Five questions, one at a time, then what follows from them. Number keys choose an answer, an
 * empty one means "don't know". Leaving keeps what was answered.
 */
public final class QuestionsPage implements Page {
  private static final int TEXT_WIDTH = 1150;

  private final Tools tools;
  private final Words words;
  private final Pieces pieces;
  private final QuestionFlow flow;
  private final QuestionsPresenter presenter;
  private final JPanel page;
  private final JLabel step;
  private final JLabel title;
  private final JTextArea hint;
  private final CardLayout cards = new CardLayout();
  private final JPanel middle = new JPanel(cards);
  private final JTextField entry = new JTextField();
  private final JLabel unit;
  private final JPanel choices = new JPanel(new GridBagLayout());
  private final JTextArea summary;
  private final JTextArea problem;
  private final JButton on;
  private final JButton unknown;
  private final JButton more;
  private final JButton form;
  private String keptName;
  private boolean busy;

  /**
   * A page.
   *
   * @param begunJson answers that were begun and left, null = none
   */
  public QuestionsPage(Tools tools, String begunJson) {
    this.tools = tools;
    words = tools.words();
    pieces = tools.pieces();
    flow = new QuestionFlow(begunJson);
    keptName = begunJson == null ? null : flow.name();
    presenter = new QuestionsPresenter(words, tools.numbers());
    page = pieces.page("questions", new BorderLayout(0, 14));
    step = pieces.quiet("questions-step", " ", WindowTheme.READING_POINTS);
    title = pieces.label("questions-title", " ", true, 34);
    hint = pieces.prose("questions-hint", "", 22, TEXT_WIDTH);
    summary = pieces.prose("questions-summary", "", WindowTheme.READING_POINTS, TEXT_WIDTH);
    problem = pieces.prose("questions-problem", "", 22, TEXT_WIDTH);
    unit = pieces.label("questions-unit", " ", true, 26);
    on = pieces.main("questions.on", this::goOn);
    unknown = pieces.plain("questions.unknown", () -> take(""));
    more = pieces.plain("questions.more", () -> choose(2));
    form = pieces.plain("questions.form", () -> choose(1));
    layOut();
    show();
  }

  private void layOut() {
    JPanel top = pieces.clear(new BorderLayout(0, 6));
    top.add(step, BorderLayout.NORTH);
    top.add(title, BorderLayout.CENTER);
    top.add(hint, BorderLayout.SOUTH);
    entry.setName("questions.entry");
    entry.setFont(WindowTheme.font(true, 28));
    entry.setColumns(22);
    entry.getAccessibleContext().setAccessibleName(words.get("flow.questions.entry"));
    pieces.describe(entry, "questions.entry");
    JPanel typed = pieces.clear(new BorderLayout());
    typed.add(pieces.row(entry, unit), BorderLayout.NORTH);
    choices.setOpaque(false);
    middle.setOpaque(false);
    middle.add(typed, "typed");
    middle.add(choices, "choices");
    JPanel end = pieces.sheet("questions-end", new BorderLayout());
    end.add(PageRoom.middle(summary, null), BorderLayout.CENTER);
    middle.add(end, "end");
    JPanel bottom = pieces.clear(new BorderLayout(0, 8));
    bottom.add(problem, BorderLayout.NORTH);
    JComponent[] choices = {on, unknown, form, more};
    JComponent[] back = {pieces.plain("questions.back", this::back)};
    bottom.add(pieces.ends(choices, back), BorderLayout.SOUTH);
    page.add(top, BorderLayout.NORTH);
    page.add(middle, BorderLayout.CENTER);
    page.add(bottom, BorderLayout.SOUTH);
  }

  @Override
  public String name() {
    return "questions";
  }

  @Override
  public String title() {
    return words.get("questions.windowTitle");
  }

  @Override
  public JComponent component() {
    return page;
  }

  @Override
  public void shown() {
    focus();
  }

  private void show() {
    SheetQuestion question = flow.question();
    boolean ended = question == null;
    boolean typed = !ended && question.choices().isEmpty();
    step.setText(presenter.step(flow));
    title.setText(ended ? words.get("questions.end") : words.get(question.id() + ".ask"));
    Pieces.say(
        hint,
        ended ? words.get("questions.end.more") : words.get(question.id() + ".hint"),
        TEXT_WIDTH);
    if (typed) {
      String before = flow.form().answer(question);
      entry.setText(
          before == null ? "" : question.unit().isEmpty() ? before : presenter.number(before));
      unit.setText(question.unit().isEmpty() ? " " : question.unit());
      entry.selectAll();
    } else if (!ended) {
      AnswerButtons.fill(choices, tools, question, this::take);
    } else {
      Pieces.say(summary, presenter.summary(flow.form()), TEXT_WIDTH);
    }
    cards.show(middle, ended ? "end" : typed ? "typed" : "choices");
    Pieces.say(problem, presenter.problem(flow), TEXT_WIDTH);
    problem.setVisible(!problem.getText().isEmpty());
    on.setText(words.get(ended ? "flow.questions.keep" : "flow.questions.on"));
    on.setVisible(ended || typed);
    unknown.setVisible(!ended);
    // Beside a field a digit is text: no key is promised there.
    unknown.setText(words.get(typed ? "questions.unknownTyped" : "flow.questions.unknown"));
    more.setVisible(ended && !flow.form().alsoUseful().isEmpty());
    form.setVisible(ended);
    page.revalidate();
    page.repaint();
    focus();
  }

  private void focus() {
    SheetQuestion question = flow.question();
    if (question != null && question.choices().isEmpty()) {
      entry.requestFocusInWindow();
    } else {
      page.requestFocusInWindow();
    }
  }

  /** Takes an answer; empty means "don't know". */
  public void take(String answer) {
    flow.answer(answer);
    show();
  }

  @Override
  public void choose(int number) {
    SheetQuestion question = flow.question();
    if (question == null) {
      if (number == 1) {
        tools.shell().open(new FormPage(tools, flow.sheetJson()));
      } else if (number == 2) {
        flow.more();
        show();
      }
    } else if (number <= question.choices().size()) {
      take(question.choices().get(number - 1).id());
    } else if (number == 9 && !question.choices().isEmpty()) {
      take("");
    }
  }

  @Override
  public void goOn() {
    SheetQuestion question = flow.question();
    if (question == null) {
      keep();
    } else if (question.choices().isEmpty()) {
      take(entry.getText());
    }
  }

  private void keep() {
    if (busy) {
      return;
    }
    busy = true;
    String json = flow.sheetJson();
    String name = SheetEntries.nameIn(json);
    SheetShelf shelf = tools.desk().shelf();
    tools
        .shell()
        .aside(
            () -> shelf.holds(name) ? null : shelf.keep(name, json),
            file -> {
              busy = false;
              if (file == null) {
                flow.ask(SheetQuestion.WHAT);
                show();
                Pieces.say(problem, words.get("questions.taken", name), TEXT_WIDTH);
                problem.setVisible(true);
              } else {
                tools.shell().open(new ReadyPage(tools, json));
              }
            },
            this::failed);
  }

  private void failed(Exception failure) {
    busy = false;
    Pieces.say(problem, tools.why(failure), TEXT_WIDTH);
    problem.setVisible(true);
    page.revalidate();
  }

  /** To the question before; from the first one to the first screen, answers kept. */
  @Override
  public void back() {
    if (flow.question() != null && !flow.form().isAnswered(SheetQuestion.WHAT) || !flow.back()) {
      leave();
    } else {
      show();
    }
  }

  private void leave() {
    if (!flow.isBegun()) {
      tools.shell().home();
      return;
    }
    SheetShelf shelf = tools.desk().shelf();
    String before = keptName;
    tools
        .shell()
        .aside(
            () -> {
              if (before != null && !before.equals(flow.name())) {
                shelf.forget(before);
              }
              shelf.keepBegun(flow.name(), flow.begun());
              return true;
            },
            done -> tools.shell().home(),
            this::failed);
  }

  public QuestionFlow flow() {
    return flow;
  }

  /** Lines of the summary, for tests. */
  List<String> lines() {
    return new ArrayList<>(List.of(summary.getText().split("\n")));
  }
}
