package firstamp.window.watch;

import firstamp.model.TimeSource;
import firstamp.window.page.HeldKey;
import firstamp.window.present.BenchView.QuestionView;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.FlowLayout;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Insets;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JCheckBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;
import javax.swing.Timer;

/**
 * One question at a time, in the place of the strips. Key 1 and Enter say yes (to the next line
 * first where each must be seen), key 0 says no; the space bar never says yes. What switches on has
 * to be held: key 1, or the button under the mouse.
 */
final class QuestionCard {
  private static final int WRAP_WIDTH = 960;
  private static final int HOLD_TICK_MS = 20;

  private final Palette palette;
  private final Words words;
  private final BiConsumer<String, Boolean> answer;
  private final JPanel card = new JPanel(new BorderLayout(0, 8));
  private final JLabel title = new JLabel(" ");
  private final JPanel lines = new JPanel(new GridBagLayout());
  private final JButton yes = new JButton();
  private final JButton no = new JButton();
  private final List<JCheckBox> ticks = new ArrayList<>();
  private final HeldKey held = new HeldKey();
  private final TimeSource time = TimeSource.system();
  private final Timer holding = new Timer(HOLD_TICK_MS, event -> tick());
  private QuestionView shown;

  QuestionCard(Palette palette, Words words, BiConsumer<String, Boolean> answer) {
    this.palette = palette;
    this.words = words;
    this.answer = answer;
    card.setName("question");
    card.setBackground(WindowTheme.colour(palette.surface()));
    card.setBorder(
        BorderFactory.createCompoundBorder(
            BorderFactory.createMatteBorder(0, 8, 0, 0, WindowTheme.colour(palette.ask())),
            BorderFactory.createEmptyBorder(8, 22, 10, 22)));
    title.setName("question-title");
    title.setFont(WindowTheme.font(true, 23));
    lines.setOpaque(false);
    button(yes, "question-yes", palette.ask(), palette.askInk());
    button(no, "question-no", palette.control(), palette.ink());
    yes.addActionListener(event -> yes());
    yes.addMouseListener(
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent event) {
            hold(SwingUtilities.isLeftMouseButton(event));
          }

          @Override
          public void mouseReleased(MouseEvent event) {
            hold(false);
          }
        });
    no.addActionListener(event -> no());
    JPanel buttons = new JPanel(new FlowLayout(FlowLayout.LEFT, 14, 0));
    buttons.setOpaque(false);
    buttons.add(yes);
    buttons.add(no);
    card.add(title, BorderLayout.NORTH);
    card.add(lines, BorderLayout.CENTER);
    card.add(buttons, BorderLayout.SOUTH);
  }

  private static void button(JButton button, String name, int ground, int ink) {
    button.setName(name);
    button.setFont(WindowTheme.font(true, 18));
    button.setBackground(WindowTheme.colour(ground));
    button.setForeground(WindowTheme.colour(ink));
    button.setMargin(new Insets(10, 18, 10, 18));
  }

  JComponent component() {
    return card;
  }

  void show(QuestionView question) {
    if (question.equals(shown)) {
      return;
    }
    shown = question;
    title.setText(question.title());
    card.getAccessibleContext()
        .setAccessibleName(question.title() + ". " + String.join(" ", question.lines()));
    lines.removeAll();
    ticks.clear();
    GridBagConstraints at = new GridBagConstraints();
    at.gridx = 0;
    at.fill = GridBagConstraints.HORIZONTAL;
    at.weightx = 1;
    at.insets = new Insets(1, 0, 1, 0);
    for (String line : question.lines()) {
      lines.add(question.tick() ? tick(line) : text(line), at);
    }
    at.weighty = 1;
    JPanel rest = new JPanel();
    rest.setOpaque(false);
    rest.setPreferredSize(new Dimension(0, 0));
    lines.add(rest, at);
    no.setText(question.no());
    no.getAccessibleContext().setAccessibleDescription(question.title());
    yes.getAccessibleContext().setAccessibleDescription(question.title());
    refresh();
    lines.revalidate();
    card.repaint();
  }

  private JComponent tick(String line) {
    JCheckBox box = new JCheckBox(line);
    box.setName("question-tick-" + ticks.size());
    box.setFont(WindowTheme.font(false, 20));
    box.setOpaque(false);
    box.getAccessibleContext().setAccessibleDescription(shown.title());
    box.addActionListener(event -> refresh());
    ticks.add(box);
    return box;
  }

  private JComponent text(String line) {
    JTextArea area = new JTextArea(line);
    area.setName("question-line");
    area.setEditable(false);
    area.setFocusable(false);
    area.setLineWrap(true);
    area.setWrapStyleWord(true);
    area.setOpaque(false);
    area.setBorder(null);
    area.setFont(WindowTheme.font(false, WindowTheme.READING_POINTS));
    // A wrapped text knows its height only for a width.
    area.setSize(WRAP_WIDTH, 1000);
    area.setPreferredSize(new Dimension(100, area.getPreferredSize().height));
    area.setForeground(WindowTheme.colour(palette.ink()));
    return area;
  }

  private void refresh() {
    boolean all = ticks.stream().allMatch(JCheckBox::isSelected);
    yes.setText(all ? shown.yes() : words.get("question.tick"));
  }

  /**
   * The key that switches on goes down (again and again while it repeats itself) or up.
   *
   * @param down whether it is down
   */
  void hold(boolean down) {
    if (down) {
      held.pressed(millis(), asksToHold());
      holding.start();
    } else {
      held.released(millis());
    }
  }

  private boolean asksToHold() {
    return card.isShowing() && shown != null && shown.held();
  }

  private long millis() {
    return time.monotonicNanos() / 1_000_000;
  }

  private void tick() {
    if (!asksToHold()) {
      held.unask();
    }
    if (held.tick(millis())) {
      answer.accept(shown.id(), true);
    }
    if (held.isUp()) {
      holding.stop();
    }
  }

  /** Ticks the next line, or says yes once all are ticked; what has to be held is not said so. */
  void yes() {
    if (shown.held()) {
      return;
    }
    for (JCheckBox box : ticks) {
      if (!box.isSelected()) {
        box.setSelected(true);
        refresh();
        return;
      }
    }
    answer.accept(shown.id(), true);
  }

  void no() {
    answer.accept(shown.id(), false);
  }
}
