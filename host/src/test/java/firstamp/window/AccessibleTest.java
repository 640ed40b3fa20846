package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.WindowOptions;
import firstamp.window.widgets.Canvas;
import java.awt.Color;
import java.awt.Component;
import java.awt.Container;
import java.awt.FocusTraversalPolicy;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import javax.accessibility.Accessible;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JScrollBar;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Every view: what acts has a name, a role and a description, the keyboard reaches it, and what is
 * written on it has the contrast of WCAG 2.2 AA (success criterion 1.4.3), computed from the
 * colours that the laid out parts really have.
 */
@NeedsDisplay
class AccessibleTest {
  private static Views views;

  @BeforeAll
  static void views() throws Exception {
    views = new Views();
  }

  @AfterAll
  static void gone() throws Exception {
    views.close();
  }

  /** What is looked at in one view. */
  private interface Look {
    List<String> faults(JFrame frame);
  }

  private static Stream<DynamicTest> everyView(WindowOptions options, Look look) {
    return views.makers().entrySet().stream()
        .map(
            (Map.Entry<String, Views.Maker> view) ->
                DynamicTest.dynamicTest(
                    view.getKey() + " " + options.theme().id(),
                    () ->
                        assertThat(
                                Components.onSwing(
                                    () -> {
                                      JFrame frame =
                                          Views.laidOut(
                                              view.getValue().make(options), Screenshots.SIZE);
                                      List<String> found = look.faults(frame);
                                      frame.dispose();
                                      return found;
                                    }))
                            .isEmpty()));
  }

  private static WindowOptions options(WindowOptions.Theme theme) {
    return new WindowOptions(theme, Locale.ENGLISH, false);
  }

  @TestFactory
  Stream<DynamicTest> everythingThatActsHasANameARoleAndADescription() {
    return everyView(options(WindowOptions.Theme.LIGHT), AccessibleTest::mute);
  }

  private static List<String> mute(JFrame frame) {
    List<String> faults = new ArrayList<>();
    int seen = 0;
    for (Component component : parts(frame.getContentPane())) {
      if (!acts(component) && !(component instanceof Canvas)) {
        continue;
      }
      seen++;
      AccessibleContext context = ((Accessible) component).getAccessibleContext();
      if (blank(component.getName())
          || blank(context.getAccessibleName())
          || context.getAccessibleRole() == AccessibleRole.UNKNOWN
          || acts(component) && blank(context.getAccessibleDescription())) {
        faults.add(
            component.getClass().getSimpleName()
                + " "
                + component.getName()
                + ": \""
                + context.getAccessibleName()
                + "\", "
                + context.getAccessibleDescription());
      }
    }
    if (seen < 2) {
      faults.add("only " + seen + " parts were looked at");
    }
    return faults;
  }

  private static boolean acts(Component component) {
    return component instanceof AbstractButton
        || component instanceof JTextField
        || component instanceof JComboBox<?>
        || component instanceof JList<?>;
  }

  private static boolean blank(String text) {
    return text == null || text.isBlank();
  }

  /** Visible parts, but not the insides of lists of choices and scroll bars. */
  private static List<Component> parts(Container root) {
    List<Component> found = new ArrayList<>();
    for (Component child : root.getComponents()) {
      if (child.isVisible()) {
        found.add(child);
        if (child instanceof Container container
            && !(child instanceof JComboBox<?>)
            && !(child instanceof JScrollBar)) {
          found.addAll(parts(container));
        }
      }
    }
    return found;
  }

  @TestFactory
  Stream<DynamicTest> theKeyboardReachesEverythingThatActs() {
    return everyView(options(WindowOptions.Theme.LIGHT), AccessibleTest::unreached);
  }

  private static List<String> unreached(JFrame frame) {
    // What is not on a screen takes no part in the traversal.
    frame.setVisible(true);
    FocusTraversalPolicy policy = frame.getFocusTraversalPolicy();
    Set<Component> reached = new HashSet<>();
    Component at = policy.getFirstComponent(frame);
    while (at != null && reached.add(at)) {
      at = policy.getComponentAfter(frame, at);
    }
    List<String> faults = new ArrayList<>();
    for (Component component : parts(frame.getContentPane())) {
      boolean there = reached.contains(component);
      if (component instanceof JComboBox<?> box && box.isEditable()) {
        there |= reached.contains(box.getEditor().getEditorComponent());
      }
      if (acts(component) && component.isEnabled() && !there) {
        faults.add(component.getName());
      }
    }
    return faults;
  }

  @TestFactory
  Stream<DynamicTest> whatIsWrittenCanBeReadInEveryGround() {
    return Stream.of(WindowOptions.Theme.values())
        .flatMap(theme -> everyView(options(theme), AccessibleTest::faint));
  }

  private static List<String> faint(JFrame frame) {
    List<String> faults = new ArrayList<>();
    int seen = 0;
    for (Component component : parts(frame.getContentPane())) {
      String text =
          component instanceof JLabel label
              ? label.getText()
              : component instanceof JTextArea area
                  ? area.getText()
                  : component instanceof JTextField field
                      ? field.getText()
                      : component instanceof AbstractButton button ? button.getText() : "";
      // What cannot be used is exempt (1.4.3, "incidental").
      if (blank(text) || !component.isEnabled()) {
        continue;
      }
      seen++;
      double ratio =
          ContrastTest.ratio(
              component.getForeground().getRGB() & 0xFFFFFF, ground(component) & 0xFFFFFF);
      if (ratio < 4.5) {
        faults.add(component.getName() + " has " + ratio + ": " + text);
      }
    }
    if (seen < 3) {
      faults.add("only " + seen + " texts were looked at");
    }
    return faults;
  }

  private static int ground(Component component) {
    Component at = component;
    while (at != null) {
      boolean filled =
          at instanceof AbstractButton button ? button.isContentAreaFilled() : at.isOpaque();
      if (filled && !(at instanceof javax.swing.JCheckBox)) {
        Color ground = at.getBackground();
        return ground.getRGB();
      }
      at = at.getParent();
    }
    throw new AssertionError("nothing is painted under " + component);
  }
}
