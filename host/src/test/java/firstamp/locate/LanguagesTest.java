package firstamp.locate;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.locate.wire.WireWords;
import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The texts about wires and lost signals are there in both languages, with the same values. */
class LanguagesTest {
  private static Properties bundle(String name) throws IOException {
    Properties properties = new Properties();
    try (InputStream in =
        WireWords.class.getResourceAsStream("/firstamp/locate/" + name + ".properties")) {
      properties.load(in);
    }
    return properties;
  }

  private static TreeSet<String> values(String text) {
    TreeSet<String> values = new TreeSet<>();
    Pattern.compile("\\{\\d}").matcher(text).results().map(MatchResult::group).forEach(values::add);
    return values;
  }

  @ParameterizedTest
  @ValueSource(strings = {"wires"})
  void everySentenceHasItsGerman(String name) throws IOException {
    Properties english = bundle(name);
    Properties german = bundle(name + "_de");
    assertThat(german.stringPropertyNames())
        .hasSizeGreaterThan(20)
        .containsExactlyInAnyOrderElementsOf(english.stringPropertyNames());
    for (String key : english.stringPropertyNames()) {
      String said = german.getProperty(key);
      assertThat(values(said)).as(key).isEqualTo(values(english.getProperty(key)));
      // A single quote would swallow what follows it.
      assertThat(said.replace("''", "")).as(key).doesNotContain("'");
      assertThat(english.getProperty(key).replace("''", "")).as(key).doesNotContain("'");
    }
  }
}
