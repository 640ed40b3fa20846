package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Every text of every view as painted: whole, on no other, and large enough for where it is read
 * from. Heights of characters after ISO 9241-303 (from memory): 16 minutes of arc at least, 20 to
 * 22 where there is much to read.
 */
@NeedsDisplay
class PaintedTextTest {
  private static final double LEAST_MINUTES = 16;
  private static final double ARM_MM = 600;

  private static Views views;

  @BeforeAll
  static void views() throws Exception {
    views = new Views();
  }

  @AfterAll
  static void gone() throws Exception {
    views.close();
  }

  @TestFactory
  Stream<DynamicTest> everyTextIsWholeAndLargeEnough() {
    return Words.LANGUAGES.stream()
        .flatMap(
            locale ->
                views.makers().entrySet().stream()
                    .map(
                        view ->
                            DynamicTest.dynamicTest(
                                view.getKey() + " " + locale, () -> walk(view, locale))));
  }

  private static void walk(Map.Entry<String, Views.Maker> view, Locale locale) throws Exception {
    WindowOptions options = new WindowOptions(WindowOptions.Theme.LIGHT, locale, false);
    for (Dimension size : new Dimension[] {Screenshots.SIZE, new Dimension(1280, 764)}) {
      List<RecordingGraphics.Ink> inks =
          Components.onSwing(() -> PaintedText.of(view.getValue().make(options), size));
      assertThat(inks).isNotEmpty();
      List<String> faults = new ArrayList<>(PaintedText.faults(inks));
      for (RecordingGraphics.Ink ink : inks) {
        double minutes = PaintedText.arcMinutes(ink.capPixels(), ARM_MM);
        if (minutes < LEAST_MINUTES) {
          faults.add("\"" + ink.text() + "\" is seen under " + minutes + " minutes of arc");
        }
      }
      assertThat(faults).as("at %s", size).isEmpty();
    }
  }
}
