package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.WindowOptions;
import firstamp.model.LimitKind;
import java.awt.Component;
import java.awt.Rectangle;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The watching page laid out: its column of controls, and a limit that is held. */
@NeedsDisplay
class WatchColumnTest {
  private static Screenshots.Opened open(FakeSession.Scene scene) {
    return Screenshots.Opened.of(scene, WindowOptions.Theme.LIGHT, Screenshots.SIZE);
  }

  private static Rectangle place(Screenshots.Opened opened, String name) {
    Component part = Components.named(opened.frame(), name);
    return javax.swing.SwingUtilities.convertRectangle(
        part.getParent(), part.getBounds(), opened.frame());
  }

  @Test
  void theStripsKeepTheirWidthFromBeginningToEnd() throws Exception {
    Map<FakeSession.Scene, List<Integer>> sides = new EnumMap<>(FakeSession.Scene.class);
    for (FakeSession.Scene scene :
        List.of(FakeSession.Scene.HEALTHY, FakeSession.Scene.FALLING, FakeSession.Scene.OVER)) {
      sides.put(
          scene,
          Components.onSwing(
              () -> {
                Screenshots.Opened opened = open(scene);
                Rectangle strips = place(opened, "strips");
                Rectangle off = place(opened, "off");
                opened.frame().dispose();
                return List.of(strips.x, strips.width, off.x, off.width);
              }));
    }
    assertThat(sides.values()).as("%s", sides).containsOnly(sides.get(FakeSession.Scene.HEALTHY));
  }

  @Test
  void signalAndWiresAreInLineWithTheOthers() throws Exception {
    List<Rectangle> places =
        Components.onSwing(
            () -> {
              Screenshots.Opened opened = open(FakeSession.Scene.HEALTHY);
              opened.session().set(Scenes.withThinking(opened.session().snapshot()));
              opened.panel().whenThinking(() -> {}, () -> {});
              opened.settle();
              List<Rectangle> found =
                  List.of(place(opened, "mark"), place(opened, "search"), place(opened, "wires"));
              opened.frame().dispose();
              return found;
            });
    Rectangle mark = places.get(0);
    Rectangle search = places.get(1);
    Rectangle wires = places.get(2);
    assertThat(search.x).isEqualTo(mark.x);
    assertThat(wires.x + wires.width).isEqualTo(mark.x + mark.width);
    assertThat(List.of(wires.y, wires.width, wires.height))
        .isEqualTo(List.of(search.y, search.width, search.height));
    assertThat(search.height).as("what it does and its key are in one line").isEqualTo(38);
  }

  /** In the last two seconds 118 mA flow: the scale ends far below the limit of 1 A. */
  @Test
  void theScaleOpensToALimitThatIsHeld() throws Exception {
    Components.onSwing(
        () -> {
          Screenshots.Opened opened = open(FakeSession.Scene.HEALTHY);
          while (opened.panel().time().widthMs() > 2_500) {
            opened.panel().zoom(0.5);
          }
          opened.settle();
          assertThat(topOfCurrent(opened)).isLessThan(0.3);
          opened.panel().nextLimit();
          assertThat(topOfCurrent(opened)).as("held at 1 A").isBetween(1.0, 2.0);
          opened.settle();
          assertThat(topOfCurrent(opened)).as("and in the next picture").isBetween(1.0, 2.0);
          for (int step = 0; step < 20; step++) {
            opened.panel().nudgeLimit(1);
          }
          assertThat(topOfCurrent(opened)).as("moved to 2.65 A").isBetween(2.6, 5.0);
          opened.panel().no();
          opened.settle();
          assertThat(topOfCurrent(opened)).as("let go").isLessThan(0.3);
          opened.frame().dispose();
          return null;
        });
  }

  private static double topOfCurrent(Screenshots.Opened opened) {
    return opened.panel().strips().limits().stream()
        .filter(limit -> limit.kind() == LimitKind.RUNNING_A)
        .findFirst()
        .orElseThrow()
        .scale()
        .valueAt(1);
  }
}
