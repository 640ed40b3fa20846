package firstamp.window.widgets;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.EventQueue;
import java.awt.Insets;
import java.awt.LayoutManager;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;

/**
 * Parts beside each other, in a further line where the width does not do: none lies on another and
 * none is left out. The last ones can keep to the right.
 */
public final class WrapRow implements LayoutManager {
  private final int gap;
  private final int lineGap;
  private final int atRight;
  private int askedAtWidth = -1;

  /**
   * A row.
   *
   * @param gap between two parts and before the first one
   * @param atRight so many of the last parts keep to the right
   */
  public WrapRow(int gap, int lineGap, int atRight) {
    this.gap = gap;
    this.lineGap = lineGap;
    this.atRight = atRight;
  }

  @Override
  public void addLayoutComponent(String name, Component component) {
    // Only their order counts.
  }

  @Override
  public void removeLayoutComponent(Component component) {
    // Only their order counts.
  }

  private record Line(List<Component> parts, int width, int height) {}

  private List<Line> lines(Container parent, int room) {
    List<Line> lines = new ArrayList<>();
    List<Component> parts = new ArrayList<>();
    int width = gap;
    int height = 0;
    for (Component each : parent.getComponents()) {
      if (!each.isVisible()) {
        continue;
      }
      Dimension size = each.getPreferredSize();
      if (!parts.isEmpty() && width + size.width > room) {
        lines.add(new Line(parts, width - gap, height));
        parts = new ArrayList<>();
        width = gap;
        height = 0;
      }
      parts.add(each);
      width += size.width + gap;
      height = Math.max(height, size.height);
    }
    if (!parts.isEmpty()) {
      lines.add(new Line(parts, width - gap, height));
    }
    return lines;
  }

  private static int room(Container parent) {
    Insets insets = parent.getInsets();
    int width = parent.getWidth() - insets.left - insets.right;
    return width <= 0 ? Integer.MAX_VALUE : width;
  }

  private Dimension needed(Container parent, int room) {
    Insets insets = parent.getInsets();
    int width = 0;
    int height = 0;
    for (Line line : lines(parent, room)) {
      width = Math.max(width, line.width());
      height += (height == 0 ? 0 : lineGap) + line.height();
    }
    return new Dimension(
        width + gap + insets.left + insets.right, height + insets.top + insets.bottom);
  }

  @Override
  public Dimension preferredLayoutSize(Container parent) {
    int width = needed(parent, Integer.MAX_VALUE).width;
    return new Dimension(width, needed(parent, room(parent)).height);
  }

  @Override
  public Dimension minimumLayoutSize(Container parent) {
    return new Dimension(0, needed(parent, room(parent)).height);
  }

  @Override
  public void layoutContainer(Container parent) {
    Insets insets = parent.getInsets();
    int room = room(parent);
    int right = firstAtRight(parent);
    int y = insets.top;
    for (Line line : lines(parent, room)) {
      int x = insets.left + gap;
      int spare = room - line.width() - gap;
      for (Component each : line.parts()) {
        if (parent.getComponentZOrder(each) >= right && spare > 0) {
          x += spare;
          spare = 0;
        }
        Dimension size = each.getPreferredSize();
        int width = Math.min(size.width, Math.max(0, room - gap));
        each.setBounds(x, y + (line.height() - size.height) / 2, width, size.height);
        x += size.width + gap;
      }
      y += line.height() + lineGap;
    }
    int needed = preferredLayoutSize(parent).height;
    // A row that is too high is asked about once for a width: whoever holds it may want it so.
    boolean tooHigh = needed < parent.getHeight() && askedAtWidth != room;
    if ((needed > parent.getHeight() || tooHigh) && parent.isDisplayable()) {
      // Known only now that the width is.
      askedAtWidth = room;
      EventQueue.invokeLater(((JComponent) parent)::revalidate);
    }
  }

  private int firstAtRight(Container parent) {
    return parent.getComponentCount() - atRight;
  }
}
