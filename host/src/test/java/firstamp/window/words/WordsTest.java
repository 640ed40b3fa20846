package firstamp.window.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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
          "tau\\b",
          "odds",
          "entropy",
          "commit",
          "interlock",
          "normal",
          "safe\\b");

  /** What the words above are called in German, and what else nobody says at a bench. */
  private static final List<String> REFUSED_GERMAN =
      List.of(
          "wandlungsrate",
          "umsetzung",
          "verriegel",
          "gelatcht",
          "unquittiert",
          "quittier",
          "totband",
          "hysterese",
          "einschaltverz\u00f6gerung",
          "ausschaltverz\u00f6gerung",
          "r\u00fcckfaltung",
          "foldback",
          "i2t",
          "tau\\b",
          "quote\\b",
          "entropie",
          "normal",
          "sicher\\b",
          "gefahrlos");

  private static Properties bundle() {
    Properties all = new Properties();
    Words.BUNDLES.forEach(name -> all.putAll(bundle(name, "")));
    return all;
  }

  private static Properties bundle(String name, String ending) {
    Properties properties = new Properties();
    String file = "/" + name.replace('.', '/') + ending + ".properties";
    try (InputStream in = WordsTest.class.getResourceAsStream(file)) {
      assertThat(in).as(file).isNotNull();
      properties.load(in);
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
    return properties;
  }

  @Test
  void refusesWordsThatMeanNothingAtTheBench() {
    refuse(bundle(), REFUSED, 400);
    Properties german = new Properties();
    Words.BUNDLES.forEach(name -> german.putAll(bundle(name, "_de")));
    refuse(german, REFUSED_GERMAN, 400);
  }

  private static void refuse(Properties bundle, List<String> refused, int least) {
    assertThat(bundle.stringPropertyNames()).hasSizeGreaterThan(least);
    for (String key : bundle.stringPropertyNames()) {
      String text = bundle.getProperty(key).toLowerCase(Locale.ROOT);
      for (String word : refused) {
        Pattern whole = Pattern.compile("\\b" + word, Pattern.UNICODE_CHARACTER_CLASS);
        assertThat(whole.matcher(text).find()).as("%s says \"%s\": %s", key, word, text).isFalse();
      }
    }
  }

  /** No key is in two bundles: the first one would hide the other. */
  @Test
  void everyKeyStandsInOneBundleOnly() {
    int keys = Words.BUNDLES.stream().mapToInt(name -> bundle(name, "").size()).sum();
    assertThat(bundle()).hasSize(keys);
  }

  /** Bundles of other packages whose sentences the window says in the person's language. */
  private static final List<String> SPOKEN =
      List.of("firstamp.alarm.alarms", "firstamp.account.verdict", "firstamp.account.figures");

  @Test
  void theSecondLanguageHasTheSameKeysWithTheSameFigures() {
    for (String name : Words.BUNDLES) {
      Properties english = bundle(name, "");
      Properties german = bundle(name, "_de");
      assertThat(german.stringPropertyNames())
          .as(name)
          .containsExactlyInAnyOrderElementsOf(english.stringPropertyNames());
      compare(name, english, german);
    }
  }

  /** A sentence that was added meanwhile stays English; that must remain the exception. */
  @Test
  void sentencesOfOtherPackagesAreSpokenInTheSecondLanguageToo() {
    for (String name : SPOKEN) {
      Properties english = bundle(name, "");
      Properties german = bundle(name, "_de");
      german.keySet().retainAll(english.keySet());
      assertThat(german.size()).as(name).isGreaterThan(english.size() / 2);
      compare(name, english, german);
    }
  }

  private static void compare(String name, Properties english, Properties german) {
    int same = 0;
    for (String key : german.stringPropertyNames()) {
      assertThat(figures(german.getProperty(key)))
          .as("%s %s", name, key)
          .isEqualTo(figures(english.getProperty(key)));
      assertThat(german.getProperty(key).isBlank())
          .as("%s %s", name, key)
          .isEqualTo(english.getProperty(key).isBlank());
      same += german.getProperty(key).equals(english.getProperty(key)) ? 1 : 0;
    }
    // A word or a mark may be the same in both; a file may not.
    assertThat(same).as("%s: left in English", name).isLessThan(english.size() / 5 + 3);
  }

  private static Set<String> figures(String text) {
    Set<String> found = new TreeSet<>();
    Matcher matcher = Pattern.compile("\\{\\d}").matcher(text);
    while (matcher.find()) {
      found.add(matcher.group());
    }
    return found;
  }

  /** Of the command line: printed behind the program's name, "firstamp: there is no ...". */
  private static final Set<String> BEHIND_THE_NAME =
      Set.of(
          "sheets.there-is-no-job-sheet",
          "standard-output.live",
          "standard-output.incomplete",
          "sheet-learn.power-up-ended-with-a",
          "prompt.standard-input-ended-before-this",
          "headless-run.the-run-did-not-end",
          "main.a-defect-in-this-program");

  @Test
  void everySentenceBeginsWithACapital() throws IOException {
    List<String> small = new ArrayList<>();
    int sentences = 0;
    try (Stream<Path> files = Files.walk(Path.of("src/main/resources/firstamp"))) {
      for (Path file : files.filter(each -> each.toString().endsWith(".properties")).toList()) {
        Properties bundle = new Properties();
        try (InputStream in = Files.newInputStream(file)) {
          bundle.load(in);
        }
        boolean said = file.getFileName().toString().startsWith("said");
        for (String key : bundle.stringPropertyNames()) {
          String text = bundle.getProperty(key).strip();
          boolean sentence = text.endsWith(".") && !text.endsWith("...");
          sentences += sentence ? 1 : 0;
          if (sentence
              && Character.isLowerCase(text.charAt(0))
              && !(said && BEHIND_THE_NAME.contains(key))) {
            small.add(file.getFileName() + " " + key + ": " + text);
          }
        }
      }
    }
    assertThat(sentences).isGreaterThan(1000);
    assertThat(small).isEmpty();
  }

  /** MessageFormat eats single apostrophes in lines with figures. */
  @Test
  void noApostropheIsEaten() {
    for (String ending : List.of("", "_de")) {
      for (String name : Words.BUNDLES) {
        Properties bundle = bundle(name, ending);
        for (String key : bundle.stringPropertyNames()) {
          String text = bundle.getProperty(key);
          if (text.contains("{")) {
            assertThat(text.replace("''", "")).as(key).doesNotContain("'");
          }
        }
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
    for (firstamp.bench.Snapshot.Phase phase : firstamp.bench.Snapshot.Phase.values()) {
      assertThat(keys).contains("phase." + phase.name().toLowerCase(Locale.ROOT));
    }
    for (firstamp.model.AlarmState state : firstamp.model.AlarmState.values()) {
      assertThat(keys).contains("alarm.state." + state.id());
    }
    for (firstamp.bench.Snapshot.EventKind kind : firstamp.bench.Snapshot.EventKind.values()) {
      assertThat(keys).contains("event." + kind.name().toLowerCase(Locale.ROOT));
    }
  }
}
