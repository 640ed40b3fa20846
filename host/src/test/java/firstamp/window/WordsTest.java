package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The bundle: every key that the code asks for is there, and no word of our own trade slips in. */
class WordsTest {
  private static final List<String> REFUSED =
      List.of(
          "conversion rate",
          "latch",
          "unacknowledged",
          "acknowledge",
          "deadband",
          "on-delay",
          "off-delay",
          "fold-back",
          "foldback",
          "i2t",
          "tau",
          "odds",
          "entropy",
          "commit",
          "interlock",
          "normal",
          "safe\\b");

  private static Properties bundle() {
    Properties all = new Properties();
    for (String name : Words.BUNDLES) {
      try (InputStream in =
          WordsTest.class.getResourceAsStream("/" + name.replace('.', '/') + ".properties")) {
        all.load(in);
      } catch (IOException failed) {
        throw new UncheckedIOException(failed);
      }
    }
    return all;
  }

  @Test
  void refusesWordsThatMeanNothingAtTheBench() {
    Properties bundle = bundle();
    assertThat(bundle.stringPropertyNames()).hasSizeGreaterThan(150);
    for (String key : bundle.stringPropertyNames()) {
      String text = bundle.getProperty(key).toLowerCase(Locale.ROOT);
      for (String word : REFUSED) {
        assertThat(Pattern.compile("\\b" + word).matcher(text).find())
            .as("%s says \"%s\": %s", key, word, text)
            .isFalse();
      }
    }
  }

  @Test
  void hasEveryKeyTheCodeAsksFor() throws IOException {
    Properties bundle = bundle();
    Pattern literal = Pattern.compile("words\\s*\\.\\s*get\\(\\s*\"([^\"]+)\"\\s*[,)]");
    Set<String> asked = new TreeSet<>();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/firstamp/window"))) {
      for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
        Matcher matcher = literal.matcher(Files.readString(file));
        while (matcher.find()) {
          asked.add(matcher.group(1));
        }
      }
    }
    assertThat(asked).hasSizeGreaterThan(60);
    assertThat(bundle.stringPropertyNames()).containsAll(asked);
  }

  @Test
  void namesEveryRuleAndEveryTripCause() {
    Set<String> keys = bundle().stringPropertyNames();
    for (String rule :
        ("over-current short no-draw current-creep rail-window rail-late rail-unsteady ripple"
                + " ripple-too-low over-voltage wrong-polarity rail-not-following rail-climbing"
                + " output-offset head-below-meter hum input-clipped clip-off probe-silent"
                + " not-logging switch-failed")
            .split(" ")) {
      assertThat(keys).contains("rule." + rule, "watch." + rule);
    }
    for (firstamp.model.TripCause cause : firstamp.model.TripCause.values()) {
      assertThat(keys).contains("trip." + cause.id());
    }
    for (firstamp.session.Snapshot.Phase phase : firstamp.session.Snapshot.Phase.values()) {
      assertThat(keys).contains("phase." + phase.name().toLowerCase(Locale.ROOT));
    }
    for (firstamp.model.AlarmState state : firstamp.model.AlarmState.values()) {
      assertThat(keys).contains("alarm.state." + state.id());
    }
    for (firstamp.session.Snapshot.EventKind kind : firstamp.session.Snapshot.EventKind.values()) {
      assertThat(keys).contains("event." + kind.name().toLowerCase(Locale.ROOT));
    }
  }
}
