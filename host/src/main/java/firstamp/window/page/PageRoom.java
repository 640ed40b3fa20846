package firstamp.window.page;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Rectangle;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.Scrollable;

/** The room that the frame leaves to a page; what does not fit in height can be scrolled. */
public final class PageRoom extends JPanel implements Scrollable {
  private static final long serialVersionUID = 1L;
  private static final int STEP = 24;
  private static final int LEAST_MIDDLE = 120;

  private final JComponent below;

  private PageRoom(JComponent page, JComponent below) {
    super(new BorderLayout());
    this.below = below;
    setOpaque(false);
    add(page, BorderLayout.CENTER);
  }

  /** A page in a room that scrolls. */
  public static JScrollPane of(JComponent page) {
    return of(page, null);
  }

  private static JScrollPane of(JComponent page, JComponent below) {
    JScrollPane room = new JScrollPane(new PageRoom(page, below));
    room.setName("page-room");
    room.setBorder(BorderFactory.createEmptyBorder());
    room.setOpaque(false);
    room.getViewport().setOpaque(false);
    room.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    room.getVerticalScrollBar().setUnitIncrement(STEP);
    room.getVerticalScrollBar().setFocusable(false);
    room.getVerticalScrollBar().getAccessibleContext().setAccessibleName(page.getName());
    return room;
  }

  /**
   * The middle of a page: where there is little height it is scrolled, so that the keys below it
   * stay where they are.
   *
   * @param below part of it that is seen whole or has to be scrolled to, null = none
   */
  public static JScrollPane middle(JComponent middle, JComponent below) {
    JScrollPane room = of(middle, below);
    room.setName("middle-room");
    room.setPreferredSize(new Dimension(middle.getPreferredSize().width, LEAST_MIDDLE));
    return room;
  }

  @Override
  public Dimension getPreferredSize() {
    Dimension needed = super.getPreferredSize();
    int seen = getParent() == null ? 0 : getParent().getHeight();
    if (below != null && seen > 0 && seen < needed.height) {
      int rest = below.getPreferredSize().height + STEP;
      needed.height = Math.max(needed.height, seen + rest);
    }
    return needed;
  }

  @Override
  public Dimension getPreferredScrollableViewportSize() {
    return getPreferredSize();
  }

  @Override
  public int getScrollableUnitIncrement(Rectangle seen, int orientation, int direction) {
    return STEP;
  }

  @Override
  public int getScrollableBlockIncrement(Rectangle seen, int orientation, int direction) {
    return Math.max(STEP, seen.height - STEP);
  }

  @Override
  public boolean getScrollableTracksViewportWidth() {
    return true;
  }

  @Override
  public boolean getScrollableTracksViewportHeight() {
    return getParent() == null || getPreferredSize().height <= getParent().getHeight();
  }
}
