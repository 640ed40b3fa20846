package firstamp;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.WrittenTexts.Written;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * Words of the list {@code banned-words.txt}, which has for each what to write instead: in no
 * bundle, JSON resource, help text, paper or comment.
 */
class ForbiddenWordsTest {
  private static final Path TOP = Path.of("..");
  private static final Path PROTOCOL = TOP.resolve("firmware-protocol");

  private static final Path[] PAPERS = {
    TOP.resolve("README.md"),
    TOP.resolve("DEVELOPERS.md"),
    Path.of("guide.md"),
    Path.of("docs"),
    TOP.resolve("schemas"),
    TOP.resolve("sample-logs").resolve("README.md"),
    PROTOCOL.resolve("README.md"),
    PROTOCOL.resolve("wire-format.md"),
    PROTOCOL.resolve("trip-rules.md"),
    PROTOCOL.resolve("firmware")
  };

  /** Places not rewritten yet, and how many such words each may hold at most. */
  private static final Map<String, Integer> STILL_TO_DO =
      Map.ofEntries(
          Map.entry("java/firstamp/bench/", 6),
          Map.entry("java/firstamp/study/", 7),
          Map.entry("java/firstamp/window/", 53));

  private static List<Written> english() throws IOException {
    List<Written> written = new ArrayList<>(WrittenTexts.bundles(false));
    written.addAll(WrittenTexts.jsonResources());
    written.addAll(WrittenTexts.helpTexts());
    written.addAll(WrittenTexts.papers(PAPERS));
    written.addAll(WrittenTexts.comments(Path.of("src")));
    written.addAll(WrittenTexts.comments(Path.of("benchmarks", "src")));
    written.addAll(WrittenTexts.comments(PROTOCOL.resolve("src")));
    return written;
  }

  @Test
  void noEnglishTextHoldsABannedWord() throws IOException {
    List<Written> written = english();
    assertThat(written.size()).isGreaterThan(7500);
    List<String> found = BannedWords.under("[english]").in(written);
    assertThat(found)
        .filteredOn(each -> STILL_TO_DO.keySet().stream().noneMatch(each::contains))
        .isEmpty();
    Map<String, Integer> left = new TreeMap<>();
    for (String place : STILL_TO_DO.keySet()) {
      left.put(place, (int) found.stream().filter(each -> each.contains(place)).count());
    }
    assertThat(left)
        .as("no place may gain such words, and one that has none left is taken out")
        .allSatisfy(
            (place, count) ->
                assertThat(count).isPositive().isLessThanOrEqualTo(STILL_TO_DO.get(place)));
  }

  @Test
  void noGermanBundleHoldsABannedWord() throws IOException {
    List<Written> written = WrittenTexts.bundles(true);
    assertThat(written.size()).isGreaterThan(1200);
    assertThat(BannedWords.under("[german]").in(written)).isEmpty();
  }

  @Test
  void noBundleHoldsAWordThatMeansNothingAtTheBench() throws IOException {
    List<Written> written = new ArrayList<>(WrittenTexts.bundles(false));
    written.addAll(WrittenTexts.bundles(true));
    assertThat(BannedWords.under("[screen]").in(written)).isEmpty();
  }

  @Test
  void findsWholeWordsAcrossLinesInCommentsAndNoneInStrings() throws IOException {
    List<Written> comments = new ArrayList<>();
    String source =
        "/**\n * One that goes\n * on.\n */ String x = \"/* anew */\"; char c = '\"';\n"
            + "  // What stands\n  // in a list\n  f(); // At hand\n";
    for (String comment : JavaComments.of(source)) {
      comments.add(new Written("X.java", comment));
    }
    assertThat(BannedWords.under("[english]").in(comments))
        .containsExactly(
            "X.java: \"goes on\", write: continues",
            "X.java: \"stands in\", write: is in",
            "X.java: \"At hand\", write: ready; available");
  }

  @Test
  void findsBeginningsOnTheScreenAndNoPartsOfOtherWords() throws IOException {
    BannedWords screen = BannedWords.under("[screen]");
    for (String text :
        List.of("The latched trip", "3 conversions", "I2t budget", "odds of 3", "on-delay 5 ms")) {
      assertThat(screen.in(List.of(new Written("x", text)))).as(text).hasSize(1);
    }
    assertThat(screen.in(List.of(new Written("x", "a taut wire, an oddity, slatch")))).isEmpty();
    assertThat(BannedWords.under("[german]").in(List.of(new Written("x", "Dein Ger\u00e4t, Sieb"))))
        .containsExactly("x: \"Dein\", write: Ihr; Ihre");
  }
}
