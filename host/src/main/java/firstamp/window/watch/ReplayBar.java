package firstamp.window.watch;

import firstamp.bench.BenchSession;
import firstamp.window.present.BenchView.EventMark;
import firstamp.window.present.BenchView.ReplayView;
import firstamp.window.present.ReplayPresenter;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Shapes;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.widgets.WrapRow;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.BasicStroke;
import java.awt.BorderLayout;
import java.awt.Graphics2D;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;

/** The time bar of a replay with its events, hold, step, speed and next event. */
final class ReplayBar {
  private static final double[] SPEEDS = {0.1, 0.25, 1, 4, 16, 64, Double.POSITIVE_INFINITY};
  private static final int HEIGHT = 30;

  private final Palette palette;
  private final Words words;
  private final BenchSession session;
  private final JPanel panel = new JPanel(new BorderLayout(10, 4));
  private final Canvas bar;
  private final JPanel row;
  private final JButton hold = new JButton(" ");
  private final JLabel position = new JLabel(" ");
  private final JComboBox<String> speed = new JComboBox<>();
  private ReplayView shown;
  private boolean filling;

  ReplayBar(Palette palette, Words words, Numbers numbers, BenchSession session) {
    this.palette = palette;
    this.words = words;
    this.session = session;
    bar = new Canvas("replay-bar", 400, HEIGHT, this::paint);
    bar.say(words.get("replay.bar.accessible"));
    MouseAdapter mouse =
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent event) {
            go(event.getX());
          }

          @Override
          public void mouseDragged(MouseEvent event) {
            go(event.getX());
          }
        };
    bar.addMouseListener(mouse);
    bar.addMouseMotionListener(mouse);
    row = new JPanel(new WrapRow(8, 4, 0));
    row.setOpaque(false);
    add(row, hold, "replay-hold", this::toggle);
    add(row, new JButton(words.get("replay.step")), "replay-step", session::step);
    add(row, new JButton(words.get("replay.previous")), "replay-previous", () -> jump(false));
    add(row, new JButton(words.get("replay.next")), "replay-next", () -> jump(true));
    for (double factor : SPEEDS) {
      speed.addItem(
          Double.isInfinite(factor)
              ? words.get("replay.speed.max")
              : words.get("replay.speed.times", numbers.short3(factor)));
    }
    speed.setName("replay-speed");
    speed.setForeground(WindowTheme.colour(palette.ink()));
    speed.setFont(WindowTheme.font(true, 16));
    speed.getAccessibleContext().setAccessibleName(words.get("replay.speed"));
    speed.getAccessibleContext().setAccessibleDescription(words.get("replay.speed"));
    speed.addActionListener(
        event -> {
          if (!filling) {
            session.speed(SPEEDS[speed.getSelectedIndex()]);
          }
        });
    row.add(speed);
    position.setName("replay-position");
    position.setFont(WindowTheme.font(true, 17));
    row.add(position);
    panel.setName("replay");
    panel.setOpaque(false);
    panel.add(bar, BorderLayout.CENTER);
    panel.add(row, BorderLayout.SOUTH);
  }

  private static void add(JPanel row, JButton button, String name, Runnable action) {
    button.setName(name);
    button.setFont(WindowTheme.font(true, 16));
    button.getAccessibleContext().setAccessibleDescription(name);
    button.addActionListener(event -> action.run());
    row.add(button);
  }

  JComponent component() {
    return panel;
  }

  /** A further control behind the others. */
  void add(JComponent control) {
    row.add(control);
  }

  void show(ReplayView view) {
    boolean first = shown == null;
    shown = view;
    hold.setText(words.get(view.held() ? "replay.go" : "replay.hold"));
    position.setText(view.position());
    if (first || !speed.isPopupVisible()) {
      filling = true;
      for (int at = 0; at < SPEEDS.length; at++) {
        if (SPEEDS[at] == view.speed()) {
          speed.setSelectedIndex(at);
        }
      }
      filling = false;
    }
    bar.repaint();
  }

  void toggle() {
    if (shown != null) {
      session.pause(!shown.held());
    }
  }

  void jump(boolean forward) {
    Double to = shown == null ? null : ReplayPresenter.neighbour(shown, forward);
    if (to != null) {
      session.seek(to);
    }
  }

  private void go(int x) {
    if (shown != null) {
      double share = Math.max(0, Math.min(1, (x - 8.0) / (bar.getWidth() - 16)));
      session.seek(shown.fromMs() + share * (shown.toMs() - shown.fromMs()));
    }
  }

  private void paint(Graphics2D g, int width, int height) {
    g.setColor(WindowTheme.colour(palette.surface()));
    g.fillRect(0, 0, width, height);
    if (shown == null || shown.toMs() <= shown.fromMs()) {
      return;
    }
    double scale = (width - 16) / (shown.toMs() - shown.fromMs());
    double at = 8 + (shown.atMs() - shown.fromMs()) * scale;
    g.setColor(WindowTheme.colour(palette.spread()));
    g.fill(new Rectangle2D.Double(8, height - 11, at - 8, 5));
    g.setColor(WindowTheme.colour(palette.edge()));
    g.setStroke(new BasicStroke(1));
    g.draw(new Rectangle2D.Double(8, height - 11, width - 16, 5));
    List<EventMark> events = new ArrayList<>(shown.events());
    // What is more urgent is painted over what is less.
    events.sort(Comparator.comparing(EventMark::tone));
    for (EventMark event : events) {
      double x = 8 + (event.ms() - shown.fromMs()) * scale;
      boolean state = event.tone() == Tone.ALARM || event.tone() == Tone.CAUTION;
      if (state) {
        g.setColor(WindowTheme.colour(palette.groundOf(event.tone())));
        g.fill(new Rectangle2D.Double(x - 8, 1, 16, 16));
        g.setColor(WindowTheme.colour(palette.inkOn(event.tone())));
        Shapes.draw(g, event.tone(), x - 5.5, 3.5, 11);
      }
      g.setColor(WindowTheme.colour(palette.ink()));
      g.setStroke(new BasicStroke(1.4f));
      g.draw(new Line2D.Double(x, state ? 17 : 6, x, height - 4));
    }
    g.setColor(WindowTheme.colour(palette.ink()));
    g.fill(new Rectangle2D.Double(at - 2.5, 2, 5, height - 4));
  }
}
