package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.window.frame.FrameKeys;
import firstamp.window.page.Page;
import java.awt.Component;
import java.awt.Container;
import java.awt.KeyEventDispatcher;
import java.awt.Rectangle;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JList;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every page that there is, in every state in which a switch is closed or may close, with the focus
 * on everything that takes it: space bar, Escape, a stamp on the pedal and the mouse on OFF each
 * switch off.
 *
 * <p>After ISO 13850 (from memory): the stop is there at all times and no other function comes
 * before it. After WCAG 2.2, 2.1.2 (from memory): the focus can always go on.
 */
@NeedsDisplay
class OffEverywhereTest {
  private static Views views;

  @BeforeAll
  static void views() throws Exception {
    views = new Views();
  }

  @AfterAll
  static void gone() throws Exception {
    views.close();
  }

  /** Every class of the window and the rooms in it, from where it was compiled to. */
  private static List<Class<?>> classes() throws Exception {
    Path root = Path.of(Page.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    List<Class<?>> found = new ArrayList<>();
    try (Stream<Path> files = Files.walk(root.resolve("firstamp/window"))) {
      for (Path file : files.toList()) {
        String name = root.relativize(file).toString().replace('/', '.');
        if (name.endsWith(".class") && !name.endsWith("package-info.class")) {
          found.add(Class.forName(name.substring(0, name.length() - ".class".length())));
        }
      }
    }
    return found;
  }

  @Test
  void everyPageIsHere() throws Exception {
    List<String> pages =
        classes().stream()
            .filter(each -> Page.class.isAssignableFrom(each) && !each.isInterface())
            .map(Class::getSimpleName)
            .toList();
    assertThat(pages).isNotEmpty().containsExactlyInAnyOrderElementsOf(EveryPage.NAMES);
  }

  /** A page cannot take keys past the frame. */
  @Test
  void keysComeInAtOnePlaceOnly() throws Exception {
    assertThat(classes().stream().filter(KeyEventDispatcher.class::isAssignableFrom))
        .containsExactly(FrameKeys.class);
  }

  @TestFactory
  Stream<DynamicTest> whateverIsInFrontAndHasTheFocusItSwitchesOff() {
    return EveryPage.NAMES.stream()
        .flatMap(
            page ->
                Stream.of(LiveStates.values())
                    .map(
                        state ->
                            DynamicTest.dynamicTest(
                                page + " " + state, () -> on(() -> walk(page, state)))));
  }

  private static <T> T on(Callable<T> task) throws Exception {
    return Components.onSwing(task);
  }

  private static Void walk(String name, LiveStates state) throws Exception {
    EveryPage bench = new EveryPage(views, name, state);
    List<String> faults = new ArrayList<>();
    frame(bench, faults);
    List<Component> focusable = focusable(bench);
    assertThat(focusable).isNotEmpty();
    for (Component source : focusable) {
      String at = source.getClass().getSimpleName() + " " + source.getName();
      stroke(bench, source, KeyEvent.VK_SPACE, ' ', at + " space", faults);
      stroke(bench, source, KeyEvent.VK_ESCAPE, '\u001b', at + " escape", faults);
      stroke(bench, source, FrameKeys.PEDAL, KeyEvent.CHAR_UNDEFINED, at + " stamp", faults);
      mouse(bench, at + " mouse", faults);
    }
    bench.shell.closed();
    bench.window.dispose();
    assertThat(faults).isEmpty();
    return null;
  }

  /** State, sentence and OFF are there, whole; what lies at the middle of OFF is OFF. */
  private static void frame(EveryPage bench, List<String> faults) {
    for (String part : new String[] {"header", "sentence", "off"}) {
      Component found = Components.named(bench.window.getContentPane(), part);
      Rectangle bounds =
          SwingUtilities.convertRectangle(
              found.getParent(), found.getBounds(), bench.window.getContentPane());
      if (bounds.height < 30
          || bounds.width < 100
          || !new Rectangle(Screenshots.SIZE).contains(bounds)) {
        faults.add(part + " lies at " + bounds);
      }
    }
    if (!Components.named(bench.window.getContentPane(), "off").isEnabled()) {
      faults.add("OFF cannot be pressed");
    }
  }

  private static void stroke(
      EveryPage bench, Component source, int code, char letter, String what, List<String> faults) {
    long when = bench.time.epochMillis();
    boolean eaten = true;
    eaten &= key(bench, source, KeyEvent.KEY_PRESSED, code, letter, when);
    if (letter != KeyEvent.CHAR_UNDEFINED) {
      eaten &= key(bench, source, KeyEvent.KEY_TYPED, KeyEvent.VK_UNDEFINED, letter, when);
    }
    eaten &= key(bench, source, KeyEvent.KEY_PRESSED, code, letter, when + 40);
    eaten &= key(bench, source, KeyEvent.KEY_RELEASED, code, letter, when + 80);
    check(bench, what, eaten, faults);
  }

  private static boolean key(
      EveryPage bench, Component source, int id, int code, char letter, long when) {
    return bench.shell.keys().dispatchKeyEvent(new KeyEvent(source, id, when, 0, code, letter));
  }

  private static void mouse(EveryPage bench, String what, List<String> faults) {
    Container content = bench.window.getRootPane();
    Component off = Components.named(bench.window.getContentPane(), "off");
    int x = off.getWidth() / 2;
    int y = off.getHeight() / 2;
    java.awt.Point there = SwingUtilities.convertPoint(off, x, y, content);
    Component hit = SwingUtilities.getDeepestComponentAt(content, there.x, there.y);
    boolean meets = hit == off || SwingUtilities.isDescendingFrom(hit, off);
    off.dispatchEvent(
        new MouseEvent(
            off,
            MouseEvent.MOUSE_PRESSED,
            1,
            InputEvent.BUTTON1_DOWN_MASK,
            x,
            y,
            1,
            false,
            MouseEvent.BUTTON1));
    check(bench, what, meets, faults);
  }

  private static void check(EveryPage bench, String what, boolean whole, List<String> faults) {
    if (!bench.session.wishes.contains("off")
        || !bench.session.wishes.stream().allMatch("off"::equals)) {
      faults.add(what + ": asked for " + bench.session.wishes);
    }
    if (!whole) {
      faults.add(what + ": the stroke was not eaten whole, or did not meet OFF");
    }
    if (bench.shell.front() != bench.watch) {
      faults.add(what + ": " + bench.shell.front().name() + " stayed in front");
    }
    bench.again();
  }

  /** The page itself, and what on it and round it takes the focus. */
  private static List<Component> focusable(EveryPage bench) {
    List<Component> found = new ArrayList<>(List.of(bench.page.component()));
    for (Component each : Components.visible(bench.window.getContentPane())) {
      boolean takes =
          each instanceof AbstractButton
              || each instanceof JTextComponent text && text.isEditable()
              || each instanceof JComboBox<?>
              || each instanceof JList<?>;
      if (takes && each.isFocusable() && each.isEnabled()) {
        found.add(each);
      }
    }
    return found;
  }
}
