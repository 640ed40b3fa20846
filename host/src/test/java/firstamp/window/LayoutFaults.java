package firstamp.window;

import firstamp.app.WindowOptions;
import firstamp.window.widgets.Canvas;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JScrollBar;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.JViewport;

/** Finds what is cut off, overlaps or reaches out of its room. */
final class LayoutFaults {
  private LayoutFaults() {}

  static List<String> of(Container root) {
    List<String> faults = new ArrayList<>();
    walk(root, faults);
    return faults;
  }

  /** Walks every view in a process of its own, at the scale that it was started with. */
  public static void main(String[] arguments) throws Exception {
    List<String> faults = new ArrayList<>();
    int views = 0;
    try (Views all = new Views()) {
      for (String language : arguments) {
        WindowOptions options =
            new WindowOptions(WindowOptions.Theme.LIGHT, Locale.forLanguageTag(language), false);
        for (Map.Entry<String, Views.Maker> view : all.makers().entrySet()) {
          views++;
          Components.onSwing(
              () -> {
                JFrame frame = Views.laidOut(view.getValue().make(options), Screenshots.SIZE);
                of(frame.getContentPane())
                    .forEach(fault -> faults.add(view.getKey() + " " + language + ": " + fault));
                frame.dispose();
                return null;
              });
        }
      }
    }
    faults.forEach(System.out::println);
    System.out.println(views + " views, " + faults.size() + " faults");
    System.exit(faults.isEmpty() ? 0 : 1);
  }

  private static void walk(Container parent, List<String> faults) {
    List<Component> children = new ArrayList<>();
    for (Component child : parent.getComponents()) {
      if (child.isVisible()) {
        children.add(child);
      }
    }
    Rectangle room = new Rectangle(0, 0, parent.getWidth(), parent.getHeight());
    // What is scrolled is larger than its room on purpose.
    boolean scrolled = parent instanceof JViewport;
    for (int at = 0; at < children.size(); at++) {
      Component child = children.get(at);
      if (!scrolled
          && !room.contains(child.getBounds())
          && child.getWidth() > 0
          && child.getHeight() > 0) {
        faults.add(name(child) + " " + child.getBounds() + " reaches out of " + room);
      }
      for (int other = at + 1; other < children.size(); other++) {
        if (child.getBounds().intersects(children.get(other).getBounds())) {
          faults.add(name(child) + " lies on " + name(children.get(other)));
        }
      }
      if (child instanceof AbstractButton
          || child instanceof Canvas
          || child instanceof JLabel
          || child instanceof JTextArea
          || child instanceof JTextField
          || child instanceof JComboBox<?>) {
        tooSmall(child, faults);
      }
      if (child instanceof Container container
          && !(child instanceof JComboBox<?>)
          && !(child instanceof JScrollBar)) {
        walk(container, faults);
      }
    }
  }

  private static void tooSmall(Component child, List<String> faults) {
    Dimension preferred = child.getPreferredSize();
    if (child.getHeight() < preferred.height
        || child.getWidth() < preferred.width && !(child instanceof JTextArea)) {
      String says = child instanceof javax.swing.JLabel label ? " \"" + label.getText() + "\"" : "";
      faults.add(
          name(child) + says + " " + child.getSize() + " is smaller than it needs: " + preferred);
    }
    if (child instanceof JTextArea area && area.isPreferredSizeSet()) {
      Dimension set = area.getPreferredSize();
      area.setPreferredSize(null);
      if (!area.getText().isEmpty() && area.getPreferredSize().height > area.getHeight()) {
        faults.add(name(area) + " loses the end of its text: " + area.getText());
      }
      area.setPreferredSize(set);
    }
  }

  private static String name(Component component) {
    return component.getName() == null ? component.getClass().getSimpleName() : component.getName();
  }
}
