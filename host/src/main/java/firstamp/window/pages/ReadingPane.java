package firstamp.window.pages;

import java.awt.Dimension;
import javax.swing.BorderFactory;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.ScrollPaneConstants;

/** The lines of the verdict, scrolled up and down. */
final class ReadingPane {
  private ReadingPane() {}

  static JScrollPane of(JTextArea lines, int width) {
    JScrollPane scroll = new JScrollPane(lines);
    scroll.setName("verdict-scroll");
    scroll.setBorder(BorderFactory.createEmptyBorder(6, 18, 6, 6));
    scroll.getViewport().setOpaque(false);
    scroll.setOpaque(false);
    scroll.setPreferredSize(new Dimension(width, 200));
    scroll.setHorizontalScrollBarPolicy(ScrollPaneConstants.HORIZONTAL_SCROLLBAR_NEVER);
    scroll.getVerticalScrollBar().setUnitIncrement(24);
    scroll.getVerticalScrollBar().getAccessibleContext().setAccessibleName("verdict");
    return scroll;
  }
}
