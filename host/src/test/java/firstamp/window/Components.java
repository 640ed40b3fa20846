package firstamp.window;

import java.awt.Component;
import java.awt.Container;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import javax.swing.SwingUtilities;

/** Walks what is in a window. */
public final class Components {
  private Components() {}

  static List<Component> visible(Container root) {
    List<Component> found = new ArrayList<>();
    for (Component child : root.getComponents()) {
      if (child.isVisible()) {
        found.add(child);
        if (child instanceof Container container) {
          found.addAll(visible(container));
        }
      }
    }
    return found;
  }

  /** Also what is hidden now. */
  static List<Component> all(Container root) {
    List<Component> found = new ArrayList<>();
    for (Component child : root.getComponents()) {
      found.add(child);
      if (child instanceof Container container) {
        found.addAll(all(container));
      }
    }
    return found;
  }

  public static Component named(Container root, String name) {
    return visible(root).stream()
        .filter(component -> name.equals(component.getName()))
        .findFirst()
        .orElseThrow(() -> new AssertionError("nothing visible is named " + name));
  }

  /** Runs on the Swing thread and hands back what it gives. */
  public static <T> T onSwing(Callable<T> task) throws Exception {
    FutureTask<T> future = new FutureTask<>(task);
    SwingUtilities.invokeAndWait(future);
    return future.get();
  }
}
