package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.analysis.figures.FigureText;
import firstamp.window.words.Numbers;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.ResourceBundle;
import org.junit.jupiter.api.Test;

/** A current reads the same in a sentence, in a figure of the log and in the window's header. */
class OneCurrentTest {
  private final Numbers header = new Numbers(Locale.ENGLISH);

  @Test
  void writesMilliampereBelowOneAmpereEverywhere() {
    assertThat(firstamp.model.text.Numbers.amps(0.13)).isEqualTo("130 mA");
    assertThat(firstamp.model.text.Numbers.amps(0.0098)).isEqualTo("9.8 mA");
    assertThat(firstamp.model.text.Numbers.amps(0.99949)).isEqualTo("999 mA");
    assertThat(firstamp.model.text.Numbers.amps(0.9995)).isEqualTo("1 A");
    assertThat(firstamp.model.text.Numbers.amps(3.094)).isEqualTo("3.09 A");
    assertThat(firstamp.model.text.Numbers.amps(0)).isEqualTo("0 A");
    assertThat(FigureText.amps(0.13)).isEqualTo("130 mA");
    assertThat(header.amps(0.13).toString()).isEqualTo("130 mA");
  }

  /** Same unit; the header's fixed places and the sentence's three digits differ by rounding. */
  @Test
  void theSentenceNamesTheUnitOfTheHeader() {
    Random random = new Random(7);
    for (int k = 0; k < 10_000; k++) {
      double amps = 0.001 * Math.pow(12_500, random.nextDouble());
      String[] said = firstamp.model.text.Numbers.amps(amps).split(" ");
      assertThat(said[1]).as("%s A", amps).isEqualTo(header.amps(amps).unit());
      double unit = said[1].equals("mA") ? 1000 : 1;
      assertThat(Double.parseDouble(said[0]) / unit)
          .isCloseTo(amps, org.assertj.core.data.Offset.offset(0.0051 * amps));
    }
  }

  /** A sentence that brings its own unit writes its own currents. */
  @Test
  void noSentenceOfAnAlarmBringsItsOwnAmpere() {
    for (Locale locale : List.of(Locale.ROOT, Locale.GERMAN)) {
      ResourceBundle alarms =
          ResourceBundle.getBundle(
              "firstamp.alarm.alarms",
              locale,
              ResourceBundle.Control.getNoFallbackControl(
                  ResourceBundle.Control.FORMAT_PROPERTIES));
      for (String key : alarms.keySet()) {
        assertThat(alarms.getString(key)).as(key).doesNotContainPattern("\\{\\d\\} m?A\\b");
      }
    }
  }
}
