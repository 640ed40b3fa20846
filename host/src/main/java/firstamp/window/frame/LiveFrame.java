package firstamp.window.frame;

import firstamp.model.PedalJob;
import firstamp.window.page.Page;
import firstamp.window.page.PageRoom;
import firstamp.window.present.BenchView;
import firstamp.window.strips.FigureRow;
import firstamp.window.watch.ControlColumn;
import firstamp.window.widgets.KeyButton;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.LayoutManager;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;

/**
 * What is round every page while a switch is closed or may close: header, sentence, figures and a
 * large OFF. The page gets the room that is left; where there is little, OFF is the last thing to
 * go.
 */
public final class LiveFrame {
  /** Less high than this, the sentence has one line and the figures are small. */
  static final int ROOMY_HEIGHT = 690;

  private static final int OFF_LEAST = 92;
  private static final int OFF_MOST = 330;
  private static final int OFF_LEAST_WIDTH = 150;
  private static final int EDGE = 10;
  private static final int GAP = 6;

  private final Palette palette;
  private final Words words;
  private final JPanel whole = new JPanel(new Rooms());
  private final HeaderBar header;
  private final SentenceBar sentence;
  private final FigureRow figures;
  private final KeyButton off;
  private JComponent room = new JPanel();
  private JComponent controls;
  private Page page;
  private boolean framed;
  private boolean switched = true;
  private boolean pressed;

  public LiveFrame(Palette palette, Words words, Runnable switchOff) {
    this.palette = palette;
    this.words = words;
    header = new HeaderBar(palette, words);
    sentence = new SentenceBar(palette, words);
    figures = new FigureRow(palette);
    off =
        new KeyButton(
                words, "off", words.get("off.word"), words.get("off.key"), () -> off(switchOff))
            .large(58)
            .size(ControlColumn.WIDTH, OFF_LEAST);
    // At once, not when the button is let go.
    off.button()
        .addMouseListener(
            new MouseAdapter() {
              @Override
              public void mousePressed(MouseEvent event) {
                if (SwingUtilities.isLeftMouseButton(event) && off.button().isEnabled()) {
                  pressed = true;
                  switchOff.run();
                }
              }
            });
    whole.setName("bench");
    whole.setBackground(WindowTheme.colour(palette.ground()));
    whole.add(header.component());
    whole.add(sentence.component());
    whole.add(figures.component());
    whole.add(off.button());
    whole.add(room);
    off.button().setRequestFocusEnabled(false);
    frame(false);
  }

  private void off(Runnable switchOff) {
    if (!pressed) {
      switchOff.run();
    }
    pressed = false;
  }

  public JComponent component() {
    return whole;
  }

  JComponent offButton() {
    return off.button();
  }

  /** Puts a page into the room. */
  public void put(Page next) {
    page = next;
    refill();
  }

  /**
   * Puts the frame round the page, or takes it away.
   *
   * @param round whether it is there
   */
  public void frame(boolean round) {
    if (round != framed || page == null) {
      framed = round;
      for (JComponent part : parts()) {
        part.setVisible(round);
      }
      if (page != null) {
        refill();
      }
    }
  }

  boolean framed() {
    return framed;
  }

  private JComponent[] parts() {
    return new JComponent[] {
      header.component(), sentence.component(), figures.component(), off.button()
    };
  }

  private void refill() {
    whole.remove(room);
    if (controls != null) {
      whole.remove(controls);
    }
    boolean fills = page.session() != null;
    room = framed && !fills ? PageRoom.of(page.component()) : page.component();
    controls = framed ? page.controls() : null;
    whole.add(room);
    if (controls != null) {
      whole.add(controls);
    }
    sentence.beside(framed ? page.sentenceKeys() : null);
    whole.revalidate();
    whole.repaint();
  }

  /**
   * Shows where it stands.
   *
   * @param pedal what it does, written on every live page; null = nothing is live
   * @param said instead of what the sentence proposes, null = nothing
   */
  public void show(BenchView view, boolean armed, PedalJob pedal, String said) {
    BenchView.Sentence now = view.sentence();
    boolean urgent = now.tone() == Tone.ALARM;
    sentence.show(
        said == null || urgent ? now : new BenchView.Sentence(now.tone(), now.headline(), said));
    header.show(pedal == null ? view : with(view, pedal));
    figures.show(view.figures());
    switched = view.replay() == null;
    off.button().setVisible(framed && switched);
    off.enabled(armed);
    off.hint(armed ? words.get("off.key") : view.controls().offWords());
    if (armed) {
      off.colours(palette.off(), palette.offInk());
    } else {
      off.colours(palette.ground(), palette.quietInk());
    }
  }

  private BenchView with(BenchView view, PedalJob pedal) {
    List<BenchView.LinkView> links = new ArrayList<>();
    String key = "pedal." + pedal.id();
    links.add(new BenchView.LinkView(words.get(key), words.get(key + ".more"), Tone.PLAIN));
    links.addAll(view.links());
    return view.withLinks(links);
  }

  /** Where everything lies. */
  private final class Rooms implements LayoutManager {
    @Override
    public void addLayoutComponent(String name, Component component) {
      // The frame knows its parts.
    }

    @Override
    public void removeLayoutComponent(Component component) {
      // The frame knows its parts.
    }

    @Override
    public Dimension preferredLayoutSize(Container parent) {
      return room.getPreferredSize();
    }

    @Override
    public Dimension minimumLayoutSize(Container parent) {
      return new Dimension(OFF_LEAST_WIDTH, OFF_LEAST);
    }

    @Override
    public void layoutContainer(Container parent) {
      int width = parent.getWidth();
      int height = parent.getHeight();
      if (!framed) {
        room.setBounds(0, 0, width, height);
        return;
      }
      boolean fills = page != null && page.session() != null;
      boolean folded = height < ROOMY_HEIGHT || !fills;
      sentence.fold(folded);
      figures.fold(folded);
      int inner = width - 2 * EDGE;
      int least = switched ? OFF_LEAST + EDGE : EDGE;
      int y = 4;
      for (JComponent part :
          new JComponent[] {header.component(), sentence.component(), figures.component()}) {
        int needed = part.getPreferredSize().height;
        boolean fits = y + needed + least <= height;
        part.setBounds(EDGE, y, fits ? inner : 0, fits ? needed : 0);
        y += fits ? needed + (part == header.component() ? 4 : GAP) : 0;
      }
      column(width, height, y, inner, folded);
    }

    private void column(int width, int height, int y, int inner, boolean folded) {
      int bottom = height - EDGE + 2;
      int column = switched ? Math.max(OFF_LEAST_WIDTH, Math.min(columnWidth(), inner / 3)) : 0;
      int below = controls == null || !switched ? 0 : controls.getPreferredSize().height;
      int all = bottom - y;
      int offHeight = all - (below == 0 ? 0 : below + GAP);
      offHeight = Math.min(all, Math.max(OFF_LEAST, Math.min(OFF_MOST, offHeight)));
      int x = width - EDGE - column;
      off.button().setBounds(x, y, column, switched ? offHeight : 0);
      if (controls != null) {
        int rest = Math.max(0, all - offHeight - GAP);
        controls.setBounds(x, y + offHeight + GAP, column, switched ? rest : 0);
      }
      room.setBounds(EDGE, y, inner - column - (column == 0 ? 0 : GAP), all);
    }

    private int columnWidth() {
      int needed = controls == null ? 0 : controls.getPreferredSize().width;
      return Math.max(ControlColumn.WIDTH, needed);
    }
  }
}
