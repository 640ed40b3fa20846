package firstamp.window.pages;

import firstamp.window.present.HomePresenter;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.Shapes;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import java.awt.BasicStroke;
import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.List;
import java.util.function.IntConsumer;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.Icon;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.ListCellRenderer;
import javax.swing.ListSelectionModel;
import javax.swing.ScrollPaneConstants;
import javax.swing.SwingUtilities;

/**
 * A list of two-line rows, each with the shape of its state; the chosen one has a bar beside it.
 */
final class RowList {
  private static final int SHAPE = 20;

  private final Palette palette;
  private final DefaultListModel<HomePresenter.Row> model = new DefaultListModel<>();
  private final JList<HomePresenter.Row> list = new JList<>(model);
  private final JScrollPane scroll;
  private boolean states;

  RowList(String name, Pieces pieces, Palette palette, IntConsumer chosen) {
    this.palette = palette;
    list.setName(name);
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.setBackground(WindowTheme.colour(palette.surface()));
    list.setCellRenderer(new Renderer());
    pieces.describe(list, name);
    list.addListSelectionListener(
        event -> {
          if (!event.getValueIsAdjusting() && list.getSelectedIndex() >= 0) {
            list.ensureIndexIsVisible(list.getSelectedIndex());
            chosen.accept(list.getSelectedIndex());
          }
        });
    scroll = new JScrollPane(list);
    scroll.setName(name + "-scroll");
    scroll.setBorder(BorderFactory.createLineBorder(WindowTheme.colour(palette.edge())));
    scroll.setHorizontalScrollBarPolicy(ScrollPaneConstants.HORIZONTAL_SCROLLBAR_NEVER);
    scroll.setPreferredSize(new Dimension(380, 200));
    scroll.getVerticalScrollBar().setFocusable(false);
    scroll.getVerticalScrollBar().getAccessibleContext().setAccessibleName(name);
  }

  JComponent component() {
    return scroll;
  }

  /** What two clicks on a row do. */
  void whenOpened(Runnable open) {
    list.addMouseListener(
        new MouseAdapter() {
          @Override
          public void mouseClicked(MouseEvent event) {
            int at = list.locationToIndex(event.getPoint());
            boolean onRow = at >= 0 && list.getCellBounds(at, at).contains(event.getPoint());
            if (onRow && event.getClickCount() == 2 && SwingUtilities.isLeftMouseButton(event)) {
              choose(at);
              open.run();
            }
          }
        });
  }

  JList<HomePresenter.Row> list() {
    return list;
  }

  void show(List<HomePresenter.Row> rows, String spokenName) {
    list.getAccessibleContext().setAccessibleName(spokenName);
    int at = Math.max(0, list.getSelectedIndex());
    states = rows.stream().anyMatch(row -> row.tone() != Tone.PLAIN);
    model.clear();
    model.addAll(rows);
    if (!rows.isEmpty()) {
      choose(Math.min(at, rows.size() - 1));
    }
  }

  int chosen() {
    return list.getSelectedIndex();
  }

  void choose(int index) {
    if (index >= 0 && index < model.size()) {
      list.setSelectedIndex(index);
    }
  }

  void move(int by) {
    choose(list.getSelectedIndex() + by);
  }

  /** Paints a row; one panel is used for all of them, as lists do. */
  private final class Renderer implements ListCellRenderer<HomePresenter.Row> {
    private final JPanel panel = new JPanel(new BorderLayout(10, 0));
    private final JLabel shape = new JLabel();
    private final JLabel main = new JLabel();
    private final JLabel more = new JLabel();

    Renderer() {
      JPanel texts = new JPanel(new BorderLayout(0, 2));
      texts.setOpaque(false);
      main.setFont(WindowTheme.font(true, 18));
      more.setFont(WindowTheme.font(false, 15));
      texts.add(main, BorderLayout.NORTH);
      texts.add(more, BorderLayout.SOUTH);
      panel.add(shape, BorderLayout.WEST);
      panel.add(texts, BorderLayout.CENTER);
    }

    @Override
    public Component getListCellRendererComponent(
        JList<? extends HomePresenter.Row> of,
        HomePresenter.Row row,
        int index,
        boolean selected,
        boolean focused) {
      main.setText(row.main());
      more.setText(row.more().isEmpty() ? " " : row.more());
      main.setForeground(WindowTheme.colour(palette.ink()));
      more.setForeground(WindowTheme.colour(palette.quietInk()));
      // A list without any state needs no room for it.
      shape.setVisible(states);
      shape.setIcon(new ShapeIcon(row.tone()));
      panel.setBackground(WindowTheme.colour(selected ? palette.control() : palette.surface()));
      int edge = selected ? palette.focus() : palette.surface();
      panel.setBorder(
          BorderFactory.createCompoundBorder(
              BorderFactory.createMatteBorder(0, 7, 0, 0, WindowTheme.colour(edge)),
              BorderFactory.createEmptyBorder(8, 10, 8, 8)));
      panel.getAccessibleContext().setAccessibleName(row.spoken());
      panel.setToolTipText(row.spoken());
      return panel;
    }
  }

  /** The shape of a state on its colour. */
  private final class ShapeIcon implements Icon {
    private final Tone tone;

    ShapeIcon(Tone tone) {
      this.tone = tone;
    }

    @Override
    public void paintIcon(Component on, Graphics graphics, int x, int y) {
      Graphics2D g = (Graphics2D) graphics.create();
      Canvas.smooth(g);
      g.setStroke(new BasicStroke(1));
      if (tone != Tone.PLAIN) {
        g.setColor(WindowTheme.colour(palette.groundOf(tone)));
        g.fillRect(x, y, getIconWidth(), getIconHeight());
        g.setColor(WindowTheme.colour(palette.inkOn(tone)));
        Shapes.draw(g, tone, x + 6, y + 6, SHAPE);
      }
      g.dispose();
    }

    @Override
    public int getIconWidth() {
      return SHAPE + 12;
    }

    @Override
    public int getIconHeight() {
      return SHAPE + 12;
    }
  }
}
