package firstamp.window;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Rectangle;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.Scrollable;

/** The room that the frame leaves to a page; what does not fit in height can be scrolled. */
final class PageRoom extends JPanel implements Scrollable {
  private static final long serialVersionUID = 1L;
  private static final int STEP = 24;

  private PageRoom(JComponent page) {
    super(new BorderLayout());
    setOpaque(false);
    add(page, BorderLayout.CENTER);
  }

  /** A page in a room that scrolls. */
  static JScrollPane of(JComponent page) {
    JScrollPane room = new JScrollPane(new PageRoom(page));
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
