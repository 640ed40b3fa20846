package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import javax.accessibility.Accessible;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JTextArea;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every view at the size of a small screen: nothing cut off, nothing on top of another. */
@NeedsDisplay
class WindowLayoutTest {
  /** A screen of 1280 x 800 less the title bar of a desktop. */
  private static final Dimension DECORATED = new Dimension(1280, 764);

  @ParameterizedTest
  @EnumSource(FakeSession.Scene.class)
  void nothingIsCutOffAndNothingOverlaps(FakeSession.Scene scene) throws Exception {
    for (Dimension size : new Dimension[] {Screenshots.SIZE, DECORATED}) {
      List<String> faults =
          Components.onSwing(
              () -> {
                Screenshots.Opened opened =
                    Screenshots.Opened.of(scene, WindowOptions.Theme.LIGHT, size);
                List<String> found = faults(opened.panel().component());
                opened.frame().dispose();
                return found;
              });
      assertThat(faults).as("%s at %s", scene, size).isEmpty();
    }
  }

  @Test
  void aLongTextMakesItsBarHigherAndTheOtherAlarmsFitBelow() throws Exception {
    List<String> faults =
        Components.onSwing(
            () -> {
              Screenshots.Opened opened =
                  Screenshots.Opened.of(
                      FakeSession.Scene.SHORT, WindowOptions.Theme.LIGHT, DECORATED);
              opened.panel().toggleMore();
              opened.session().set(Scenes.withLongText(opened.session().snapshot()));
              opened.settle();
              List<String> found = faults(opened.panel().component());
              JTextArea action =
                  (JTextArea) Components.named(opened.panel().component(), "sentence-action");
              assertThat(action.getText().length()).isGreaterThan(300);
              assertThat(Components.named(opened.panel().component(), "others")).isNotNull();
              opened.frame().dispose();
              return found;
            });
    assertThat(faults).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(FakeSession.Scene.class)
  void everythingThatActsOrIsPaintedHasANameToBeSpoken(FakeSession.Scene scene) throws Exception {
    List<String> mute =
        Components.onSwing(
            () -> {
              Screenshots.Opened opened =
                  Screenshots.Opened.of(scene, WindowOptions.Theme.LIGHT, Screenshots.SIZE);
              List<String> found = new ArrayList<>();
              int seen = 0;
              for (Component component : Components.visible(opened.panel().component())) {
                if (component instanceof AbstractButton
                    || component instanceof Canvas
                    || component instanceof JComboBox<?>) {
                  if (component.getName() == null
                      && component.getParent() instanceof JComboBox<?>) {
                    continue; // the arrow of the list belongs to the list
                  }
                  seen++;
                  String spoken =
                      ((Accessible) component).getAccessibleContext().getAccessibleName();
                  if (component.getName() == null || spoken == null || spoken.isBlank()) {
                    found.add(component.toString());
                  }
                }
              }
              assertThat(seen).isGreaterThan(8);
              opened.frame().dispose();
              return found;
            });
    assertThat(mute).isEmpty();
  }

  private static List<String> faults(Container root) {
    List<String> faults = new ArrayList<>();
    walk(root, faults);
    return faults;
  }

  private static void walk(Container parent, List<String> faults) {
    List<Component> children = new ArrayList<>();
    for (Component child : parent.getComponents()) {
      if (child.isVisible()) {
        children.add(child);
      }
    }
    Rectangle room = new Rectangle(0, 0, parent.getWidth(), parent.getHeight());
    for (int at = 0; at < children.size(); at++) {
      Component child = children.get(at);
      if (!room.contains(child.getBounds()) && child.getWidth() > 0 && child.getHeight() > 0) {
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
          || child instanceof JComboBox<?>) {
        tooSmall(child, faults);
      }
      if (child instanceof Container container && !(child instanceof JComboBox<?>)) {
        walk(container, faults);
      }
    }
  }

  private static void tooSmall(Component child, List<String> faults) {
    Dimension preferred = child.getPreferredSize();
    if (child.getHeight() < preferred.height
        || child.getWidth() < preferred.width && !(child instanceof JTextArea)) {
      faults.add(name(child) + " " + child.getSize() + " is smaller than it needs: " + preferred);
    }
    if (child instanceof JTextArea area && area.isPreferredSizeSet()) {
      Dimension set = area.getPreferredSize();
      area.setPreferredSize(null);
      if (area.getPreferredSize().height > area.getHeight()) {
        faults.add(name(area) + " loses the end of its text: " + area.getText());
      }
      area.setPreferredSize(set);
    }
  }

  private static String name(Component component) {
    return component.getName() == null ? component.getClass().getSimpleName() : component.getName();
  }
}
