package firstamp.window.frame;

import firstamp.window.present.BenchView;
import firstamp.window.present.BenchView.LinkView;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.FlowLayout;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.BoxLayout;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;

/** The line at the top: which set, which power-up, how long, and the state of cable and log. */
final class HeaderBar {
  static final int HEIGHT = 40;
  private static final int GAP = 12;
  private static final int BETWEEN = 20;
  private static final int STATES_GAP = 8;

  /** Words are a little wider on screens of another scale. */
  private static final int ROOM = 8;

  private final Palette palette;
  private final JPanel bar = new JPanel(new BorderLayout(BETWEEN, 0));
  private final JLabel nothing = new JLabel();
  private final JLabel set = new JLabel(" ");
  private final JLabel about = new JLabel(" ");
  private final JLabel phase = new JLabel(" ");
  private final JLabel elapsed = new JLabel(" ");
  private final JPanel left = new JPanel();
  private final JPanel states = new JPanel(new FlowLayout(FlowLayout.RIGHT, STATES_GAP, 2));
  private List<LinkView> shown = List.of();

  HeaderBar(Palette palette, Words words) {
    this.palette = palette;
    label(nothing, "nothing-switched", true, 19, palette.askInk());
    nothing.setText(words.get("replay.nothing"));
    nothing.setBackground(WindowTheme.colour(palette.ask()));
    nothing.setOpaque(true);
    nothing.setVisible(false);
    label(set, "set", true, 19, palette.ink());
    label(about, "about", false, 15, palette.quietInk());
    label(phase, "phase", true, 19, palette.ink());
    label(elapsed, "elapsed", true, 26, palette.ink());
    // In one line: what is said last gives way, a set and its label may have long names.
    left.setLayout(new BoxLayout(left, BoxLayout.X_AXIS));
    left.setOpaque(false);
    for (JLabel part : List.of(elapsed, phase, set, about)) {
      part.setBorder(BorderFactory.createEmptyBorder(0, GAP, 0, 0));
      part.setAlignmentY(0.5f);
      left.add(part);
    }
    nothing.setBorder(BorderFactory.createEmptyBorder(6, GAP, 6, GAP));
    nothing.setAlignmentY(0.5f);
    left.add(nothing, 0);
    about.setMinimumSize(new Dimension(0, 0));
    states.setOpaque(false);
    bar.setOpaque(false);
    bar.setName("header");
    bar.setPreferredSize(new Dimension(100, HEIGHT));
    bar.add(left, BorderLayout.CENTER);
    bar.add(states, BorderLayout.EAST);
  }

  private static void label(JLabel label, String name, boolean bold, int points, int rgb) {
    label.setName(name);
    label.setFont(WindowTheme.font(bold, points));
    label.setForeground(WindowTheme.colour(rgb));
  }

  JComponent component() {
    return bar;
  }

  void show(BenchView now) {
    nothing.setVisible(now.replay() != null);
    set(elapsed, now.elapsed());
    set(phase, now.phase());
    set(set, now.set());
    set(about, now.about());
    if (!now.links().equals(shown)) {
      shown = now.links();
      states.removeAll();
      for (LinkView link : shown) {
        states.add(state(link));
      }
      states.revalidate();
      states.repaint();
    }
    makeRoom(now.about());
  }

  /**
   * When much is wrong at once the states need the room: the quiet line goes first, then states in
   * which nothing is wrong, then the name of the set.
   */
  private void makeRoom(String text) {
    if (bar.getWidth() == 0) {
      about.setVisible(!text.isEmpty());
      return;
    }
    int room = bar.getWidth() - BETWEEN - ROOM;
    int must = width(elapsed) + width(phase) + (nothing.isVisible() ? width(nothing) : 0);
    int wrong = 0;
    for (int at = 0; at < shown.size(); at++) {
      Component state = states.getComponent(at);
      boolean plain = shown.get(at).tone() == Tone.PLAIN;
      wrong += plain ? 0 : state.getPreferredSize().width + STATES_GAP;
    }
    int left = room - must - wrong;
    boolean named = width(set) <= left;
    left -= named ? width(set) : 0;
    for (int at = 0; at < shown.size(); at++) {
      if (shown.get(at).tone() == Tone.PLAIN) {
        int width = states.getComponent(at).getPreferredSize().width + STATES_GAP;
        states.getComponent(at).setVisible(width <= left);
        left -= width <= left ? width : 0;
      }
    }
    set.setVisible(named && !set.getText().isEmpty());
    about.setVisible(width(about) <= left && !text.isEmpty());
  }

  private static int width(JLabel label) {
    return label.getText().isEmpty() ? 0 : label.getPreferredSize().width;
  }

  private static void set(JLabel label, String text) {
    if (!label.getText().equals(text)) {
      label.setText(text);
      label.setVisible(!text.isEmpty());
    }
  }

  private JComponent state(LinkView link) {
    JLabel label = new JLabel(link.text());
    label.setName("state");
    label.setFont(WindowTheme.font(link.tone() != Tone.PLAIN, 15));
    label.setOpaque(true);
    label.setBackground(WindowTheme.colour(palette.groundOf(link.tone())));
    label.setForeground(WindowTheme.colour(palette.inkOn(link.tone())));
    label.setBorder(BorderFactory.createEmptyBorder(3, 9, 3, 9));
    label.setToolTipText(link.detail());
    label
        .getAccessibleContext()
        .setAccessibleName(
            link.detail() == null ? link.text() : link.text() + ": " + link.detail());
    return label;
  }
}
