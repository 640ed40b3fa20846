package firstamp;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.WrittenTexts.Written;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** No sentence of bundles, JSON resources, help texts and papers promises harmlessness. */
class HouseWordsTest {
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
          "sagt, dass ein Ger\u00e4t sicher ist",
          "a fuse that works",
          "can pass 60 V",
          "may pass round the switch",
          "the bleeder works with the box unplugged",
          "Everything works as with a real one",
          "works with nominal values",
          "Works with job sheets",
          "pass the tests",
          "that works without the computer");

  private static List<Written> everything() throws IOException {
    List<Written> written = new ArrayList<>(WrittenTexts.bundles(false));
    written.addAll(WrittenTexts.bundles(true));
    written.addAll(WrittenTexts.jsonResources());
    written.addAll(WrittenTexts.helpTexts());
    written.addAll(
        WrittenTexts.papers(
            Path.of("..", "README.md"),
            Path.of("guide.md"),
            Path.of("..", "firmware-protocol", "hardware", "README.md")));
    return written;
  }

  private static List<String> promises(List<Written> written) {
    List<String> found = new ArrayList<>();
    for (Written each : written) {
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
    List<Written> written = everything();
    assertThat(written.size()).isGreaterThan(1500);
    assertThat(promises(written)).isEmpty();
  }

  @Test
  void aPromiseIsFoundAndAWarningIsNone() {
    assertThat(promises(List.of(new Written("x", "Your probe works. Nothing burns."))))
        .containsExactly("x: works", "x: Nothing burns");
    assertThat(promises(List.of(new Written("x", "Dein Messkasten funktioniert.")))).hasSize(1);
    assertThat(promises(List.of(new Written("x", "One hand, a fuse that works.")))).isEmpty();
  }
}
