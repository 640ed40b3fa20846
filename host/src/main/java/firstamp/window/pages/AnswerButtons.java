package firstamp.window.pages;

import firstamp.sheet.SheetQuestion;
import firstamp.window.page.Tools;
import firstamp.window.widgets.Pieces;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.GridBagConstraints;
import java.awt.Insets;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.SwingConstants;

/** A numbered button for each answer of a question. */
final class AnswerButtons {
  private AnswerButtons() {}

  /**
   * Puts them one below the other.
   *
   * @param take is given the answer's id
   */
  static void fill(JPanel choices, Tools tools, SheetQuestion question, Consumer<String> take) {
    Words words = tools.words();
    Pieces pieces = tools.pieces();
    choices.removeAll();
    GridBagConstraints at = new GridBagConstraints();
    at.gridx = 0;
    at.anchor = GridBagConstraints.WEST;
    at.fill = GridBagConstraints.HORIZONTAL;
    at.weightx = 1;
    at.insets = new Insets(0, 0, 8, 0);
    List<SheetQuestion.Choice> all = question.choices();
    for (int k = 0; k < all.size(); k++) {
      SheetQuestion.Choice choice = all.get(k);
      JButton button = pieces.plain("questions.choice", () -> take.accept(choice.id()));
      String text = words.get(question.id() + "." + choice.id());
      button.setName("questions-choice-" + (k + 1));
      button.setText(words.get("flow.numbered", k + 1, text));
      button.setHorizontalAlignment(SwingConstants.LEFT);
      button.getAccessibleContext().setAccessibleName(text);
      choices.add(button, at);
    }
    at.weighty = 1;
    JPanel rest = pieces.clear(new BorderLayout());
    rest.setPreferredSize(new Dimension(0, 0));
    choices.add(rest, at);
  }
}
