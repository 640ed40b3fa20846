package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.WindowOptions;
import java.awt.Dimension;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.swing.JFrame;
import javax.swing.JTextArea;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every view at the size of a small screen: nothing cut off, nothing on top of another. */
@NeedsDisplay
class WindowLayoutTest {
  /** A screen of 1280 x 800 less the title bar of a desktop. */
  private static final Dimension DECORATED = new Dimension(1280, 764);

  private static Views views;

  @BeforeAll
  static void views() throws Exception {
    views = new Views();
  }

  @AfterAll
  static void gone() throws Exception {
    views.close();
  }

  /** Every view in both languages at both sizes. */
  @TestFactory
  Stream<DynamicTest> nothingIsCutOffAndNothingOverlaps() {
    return WindowOptions.languages().stream()
        .flatMap(
            locale ->
                views.makers().entrySet().stream()
                    .map(
                        view ->
                            DynamicTest.dynamicTest(
                                view.getKey() + " " + locale,
                                () -> walk(view.getValue(), locale))));
  }

  private static void walk(Views.Maker maker, Locale locale) throws Exception {
    WindowOptions options = new WindowOptions(WindowOptions.Theme.LIGHT, locale, false);
    for (Dimension size : new Dimension[] {Screenshots.SIZE, DECORATED}) {
      List<String> faults =
          Components.onSwing(
              () -> {
                JFrame frame = Views.laidOut(maker.make(options), size);
                List<String> found = LayoutFaults.of(frame.getContentPane());
                frame.dispose();
                return found;
              });
      assertThat(faults).as("at %s", size).isEmpty();
    }
  }

  /** A scale is set before the first window part is made, so each needs a process of its own. */
  @ParameterizedTest
  @ValueSource(strings = {"1.5", "2"})
  void nothingIsCutOffAtOtherScales(String scale) throws Exception {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Dsun.java2d.uiScale=" + scale,
                "-Xmx600m",
                "-cp",
                System.getProperty("java.class.path"),
                LayoutFaults.class.getName(),
                "en",
                "de")
            .redirectErrorStream(true)
            .start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    assertThat(said).contains(views.makers().size() * 2 + " views, 0 faults");
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
              List<String> found = LayoutFaults.of(opened.framed().component());
              JTextArea action =
                  (JTextArea) Components.named(opened.framed().component(), "sentence-action");
              assertThat(action.getText().length()).isGreaterThan(300);
              assertThat(Components.named(opened.panel().component(), "others")).isNotNull();
              opened.frame().dispose();
              return found;
            });
    assertThat(faults).isEmpty();
  }
}
