package firstamp.alarm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class AlarmTextsTest {
  private static final ResourceBundle WORDS =
      ResourceBundle.getBundle("firstamp.alarm.alarms", Locale.ROOT);

  /** Words that mean nothing to somebody who never saw the program. */
  private static final List<String> FORBIDDEN =
      List.of(
          "conversion",
          "latch",
          "unacknowledged",
          "deadband",
          "on-delay",
          "off-delay",
          "fold-back",
          "foldback",
          "i2t",
          "tau",
          "odds",
          "entropy",
          "counts",
          "crowbar",
          "safe");

  static List<String> forbiddenIn(String text) {
    return FORBIDDEN.stream()
        .filter(
            word ->
                Pattern.compile("\\b" + Pattern.quote(word), Pattern.CASE_INSENSITIVE)
                    .matcher(text)
                    .find())
        .toList();
  }

  @Test
  void noForbiddenWordReachesTheScreen() {
    for (String key : Collections.list(WORDS.getKeys())) {
      assertThat(forbiddenIn(WORDS.getString(key))).as(key).isEmpty();
    }
    assertThat(forbiddenIn("The latched trip")).containsExactly("latch");
  }

  @Test
  void everyTextSaysWhatWasSeenAndWhatToDoFirst() {
    AlarmTexts texts = new AlarmTexts(TestSheets.unit(), "W3 went to P7");
    int found = 0;
    for (String key : Collections.list(WORDS.getKeys())) {
      if (key.endsWith(".seen")) {
        String name = key.substring(0, key.length() - ".seen".length());
        String text = AlarmWords.ENGLISH.say(texts.text(name, true, "one", "two", "three", "four"));
        assertThat(text).as(key).doesNotContain("{").contains(" (Since W3 went to P7.)");
        assertThat(text).as(key).matches(".*[.)]( .*)?");
        // What to do about the log depends on its cause, which is the figure of the sentence.
        boolean toldByCause = name.startsWith("not-logging");
        assertThat(WORDS.containsKey(name + ".first")).as(key).isEqualTo(!toldByCause);
        found++;
      }
    }
    assertThat(found).isGreaterThan(30);
  }

  @Test
  void anApostropheSurvives() {
    AlarmTexts texts = new AlarmTexts(TestSheets.unit(), null);
    assertThat(AlarmWords.ENGLISH.say(texts.text("wrong-polarity", false, "B1", -8.2, 8.2)))
        .isEqualTo(
            "B1 is on the wrong side of the chassis: -8.2 V, 8.2 V was expected. Look at the"
                + " polarity of the supply and of this rail's rectifier or wire.");
  }
}
