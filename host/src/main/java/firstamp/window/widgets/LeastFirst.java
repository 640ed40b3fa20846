package firstamp.window.widgets;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Insets;
import java.awt.LayoutManager;

/** One below the other at full width; where the height does not do, the last ones give way. */
public final class LeastFirst implements LayoutManager {
  private final int gap;

  public LeastFirst(int gap) {
    this.gap = gap;
  }

  @Override
  public void addLayoutComponent(String name, Component component) {
    // Only their order counts.
  }

  @Override
  public void removeLayoutComponent(Component component) {
    // Only their order counts.
  }

  @Override
  public Dimension preferredLayoutSize(Container parent) {
    Insets insets = parent.getInsets();
    int width = 0;
    int height = 0;
    for (Component each : parent.getComponents()) {
      if (each.isVisible()) {
        Dimension size = each.getPreferredSize();
        width = Math.max(width, size.width);
        height += (height == 0 ? 0 : gap) + size.height;
      }
    }
    return new Dimension(width + insets.left + insets.right, height + insets.top + insets.bottom);
  }

  @Override
  public Dimension minimumLayoutSize(Container parent) {
    return new Dimension(preferredLayoutSize(parent).width, 0);
  }

  @Override
  public void layoutContainer(Container parent) {
    Insets insets = parent.getInsets();
    int width = parent.getWidth() - insets.left - insets.right;
    int y = insets.top;
    int end = parent.getHeight() - insets.bottom;
    for (Component each : parent.getComponents()) {
      if (each.isVisible()) {
        int height = each.getPreferredSize().height;
        boolean fits = y + height <= end;
        each.setBounds(insets.left, y, fits ? width : 0, fits ? height : 0);
        y += fits ? height + gap : 0;
      }
    }
  }
}
