package firstamp;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.cli.HelpTexts;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * No sentence promises harmlessness, and no word of the workshop of this program reaches the
 * screen. Read are all bundles, the JSON resources, the help texts and the papers.
 */
class HouseWordsTest {
  private static final Path RESOURCES = Path.of("src", "main", "resources");

  /** Words that promise; a few of them warn where they stand, see {@link #WARNINGS}. */
  private static final Pattern PROMISES =
      Pattern.compile(
          "\\b(safe|safer|safest|safely|harmless|works|pass|foolproof|guaranteed?)\\b"
              + "|nothing burns|cannot burn|no risk|no danger"
              + "|\\b(sicher|sichere[rsnm]?|sicherste[nr]?|harmlos\\w*|funktioniert|ungef\u00e4hrlich\\w*)\\b"
              + "|nichts verbrennt|kein Risiko",
          Pattern.CASE_INSENSITIVE);

  /** The same words where they warn or mean something else. */
  private static final List<String> WARNINGS =
      List.of(
          "No figure on this page says that a set is safe",
          "a fuse that works",
          "can pass 60 V",
          "may pass round the switch",
          "the bleeder works with the box unplugged",
          "Everything works as with a real one",
          "works with nominal values",
          "Works with job sheets",
          "pass the tests",
          "that works without the computer");

  private static final Pattern OFF_THE_SCREEN =
      Pattern.compile(
          "\\b(conversions?|latched|unacknowledged|deadband|on-delay|fold-?back|I2t|tau|odds"
              + "|entropy|normal)\\b",
          Pattern.CASE_INSENSITIVE);

  /** Where a text comes from, and the text. */
  private record Said(String where, String text) {}

  private static List<Path> files(Path root, String ending) throws IOException {
    try (Stream<Path> all = Files.walk(root)) {
      return all.filter(each -> each.toString().endsWith(ending)).sorted().toList();
    }
  }

  private static List<Said> bundles(Path root) throws IOException {
    List<Said> said = new ArrayList<>();
    for (Path file : files(root, ".properties")) {
      Properties lines = new Properties();
      lines.load(new StringReader(Files.readString(file)));
      lines.forEach(
          (key, value) -> said.add(new Said(file.getFileName() + " " + key, value.toString())));
    }
    return said;
  }

  private static List<Said> everything() throws IOException {
    List<Said> said = new ArrayList<>(bundles(RESOURCES));
    for (Path file : files(RESOURCES, ".json")) {
      Files.readString(file).lines().forEach(line -> said.add(new Said(file.toString(), line)));
    }
    for (Path paper :
        List.of(
            Path.of("..", "README.md"),
            Path.of("guide.md"),
            Path.of("..", "firmware-protocol", "hardware", "README.md"))) {
      String whole = Files.readString(paper).replaceAll("\\s*\\n(?![\\n|#-])", " ");
      whole.lines().forEach(line -> said.add(new Said(paper.toString(), line)));
    }
    HelpTexts.all().forEach((name, text) -> said.add(new Said("help of " + name, text)));
    return said;
  }

  private static List<String> promises(List<Said> said) {
    List<String> found = new ArrayList<>();
    for (Said each : said) {
      String text = each.text();
      for (String warning : WARNINGS) {
        text = text.replace(warning, "");
      }
      Matcher promise = PROMISES.matcher(text);
      while (promise.find()) {
        found.add(each.where() + ": " + promise.group());
      }
    }
    return found;
  }

  @Test
  void noSentencePromisesHarmlessness() throws IOException {
    List<Said> said = everything();
    assertThat(said).hasSizeGreaterThan(1500);
    assertThat(promises(said)).isEmpty();
  }

  @Test
  void aPromiseIsFoundAndAWarningIsNone() {
    assertThat(promises(List.of(new Said("x", "Your probe works. Nothing burns."))))
        .containsExactly("x: works", "x: Nothing burns");
    assertThat(promises(List.of(new Said("x", "Dein Messkasten funktioniert.")))).hasSize(1);
    assertThat(promises(List.of(new Said("x", "One hand, a fuse that works.")))).isEmpty();
  }

  /** What the window shows: its own bundles, and those of the sentences that it takes over. */
  @Test
  void noWordOfTheProgramsWorkshopReachesTheScreen() throws IOException {
    List<String> found = new ArrayList<>();
    for (Said each : bundles(RESOURCES.resolve("firstamp"))) {
      Matcher word = OFF_THE_SCREEN.matcher(each.text());
      if (word.find()) {
        found.add(each.where() + ": " + word.group());
      }
    }
    assertThat(found).isEmpty();
  }
}
