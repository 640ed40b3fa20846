package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.WindowOptions;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Priority;
import firstamp.model.RuleId;
import firstamp.window.present.AlarmSentences;
import firstamp.window.present.BenchPresenter;
import firstamp.window.present.BenchView;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
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
  private static final double FAR_MM = 2000;

  /** Between shape and buttons of the bar, German. */
  private static final int BAR_WIDTH = 995;

  private final FontMetrics metrics =
      new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB)
          .createGraphics()
          .getFontMetrics(WindowTheme.font(true, WindowTheme.FAR_POINTS));

  private static Views views;

  @BeforeAll
  static void views() throws Exception {
    views = new Views();
  }

  @AfterAll
  static void gone() throws Exception {
    views.close();
  }

  /** Headline of the bar and the large figures, live, in both languages. */
  @TestFactory
  Stream<DynamicTest> barAndFiguresAreReadFromTwoMetres() {
    return Words.LANGUAGES.stream()
        .flatMap(
            locale ->
                Stream.of(FakeSession.Scene.values())
                    .map(
                        scene ->
                            DynamicTest.dynamicTest(
                                scene + " " + locale, () -> far(scene, locale))));
  }

  private static void far(FakeSession.Scene scene, Locale locale) throws Exception {
    WindowOptions options = new WindowOptions(WindowOptions.Theme.LIGHT, locale, false);
    BenchView shown = new BenchPresenter(locale).view(new FakeSession(scene).snapshot(), null);
    List<RecordingGraphics.Ink> inks =
        Components.onSwing(
            () -> PaintedText.of(WatchViews.watch(options, scene), Screenshots.SIZE));
    List<String> wanted = new ArrayList<>(List.of(shown.sentence().headline()));
    shown.figures().forEach(figure -> wanted.add(figure.number()));
    for (String text : wanted) {
      double minutes =
          inks.stream()
              .filter(ink -> ink.text().equals(text))
              .mapToDouble(ink -> PaintedText.arcMinutes(ink.capPixels(), FAR_MM))
              .max()
              .orElse(0);
      assertThat(minutes).as(text).isGreaterThanOrEqualTo(LEAST_MINUTES);
    }
  }

  /** Every alarm that there is, on a rail with a name and with a figure of five signs. */
  @Test
  void everyAlarmFitsIntoOneLineOfTheBar() {
    List<String> tooLong = new ArrayList<>();
    for (Locale locale : Words.LANGUAGES) {
      AlarmSentences sentences = new AlarmSentences(new Words(locale), new Numbers(locale));
      for (RuleId rule : RuleId.values()) {
        String text = sentences.farHeadline(alarm(rule));
        int width = metrics.stringWidth(text);
        if (width > BAR_WIDTH) {
          tooLong.add(locale + " " + width + ": " + text);
        }
      }
    }
    assertThat(tooLong).isEmpty();
  }

  private static Alarm alarm(RuleId rule) {
    boolean onRail = rule.id().startsWith("rail") || rule.id().contains("ripple");
    boolean amps = rule.id().matches("over-current|current-creep|no-draw|switch-failed");
    boolean ohm = rule.id().equals("short");
    boolean none = rule.id().matches("not-logging|clip-off");
    return new Alarm(
        1,
        rule.id(),
        onRail ? 2 : 0,
        onRail ? "B2 bias" : null,
        4000,
        3900,
        4000,
        Priority.HIGH,
        AlarmState.UNACKNOWLEDGED,
        none ? null : ohm ? 0.51 : amps ? 0.118 : -7.1,
        ohm,
        null,
        ohm ? "ohm" : amps ? "A" : "V",
        "",
        0);
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
