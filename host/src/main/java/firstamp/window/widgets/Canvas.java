package firstamp.window.widgets;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import javax.accessibility.Accessible;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;

/** A component that a {@link Painter} fills; says in words what it shows. */
public final class Canvas extends JComponent implements Accessible {
  private static final long serialVersionUID = 1L;

  private final transient Painter painter;

  /** Paints into an area that begins at 0, 0. */
  public interface Painter {
    /**
     * Paints.
     *
     * @param g with smooth edges switched on
     * @param width of the area
     * @param height of the area
     */
    void paint(Graphics2D g, int width, int height);
  }

  public Canvas(String name, int width, int height, Painter painter) {
    this.painter = painter;
    setName(name);
    setPreferredSize(new Dimension(width, height));
    setMinimumSize(new Dimension(width, height));
    setOpaque(true);
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics.create();
    try {
      smooth(g);
      painter.paint(g, getWidth(), getHeight());
    } finally {
      g.dispose();
    }
  }

  public static void smooth(Graphics2D g) {
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
  }

  /** Sets what is said instead of what is painted. */
  public void say(String words) {
    if (!words.equals(getAccessibleContext().getAccessibleName())) {
      getAccessibleContext().setAccessibleName(words);
    }
  }

  @Override
  public AccessibleContext getAccessibleContext() {
    if (accessibleContext == null) {
      accessibleContext = new AccessibleCanvas();
    }
    return accessibleContext;
  }

  private final class AccessibleCanvas extends AccessibleJComponent {
    private static final long serialVersionUID = 1L;

    @Override
    public AccessibleRole getAccessibleRole() {
      return AccessibleRole.CANVAS;
    }
  }
}
