package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * No text is made at the bottom and found again by its pattern at the top: who has the sentences of
 * a bundle compiles no pattern, and none is made out of a sentence. One exception is left: the
 * figures of the verdict.
 */
class PatternTranslationTest {
  private static final Pattern SENTENCES =
      Pattern.compile("ResourceBundle[.]getBundle|new (Phrases|Words|AlarmWords|VerdictWords)\\(");
  private static final Pattern FINDS = Pattern.compile("Pattern[.](compile|quote)\\(");

  /** The verdict's figures still come as text with a decimal point. */
  private static final List<String> STILL = List.of("VerdictWords.java");

  static boolean findsSentencesAgain(String source) {
    return SENTENCES.matcher(source).find() && FINDS.matcher(source).find();
  }

  @Test
  void nobodyFindsASentenceAgainByItsPattern() throws IOException {
    List<String> found = new ArrayList<>();
    int seen = 0;
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      for (Path file : files.filter(each -> each.toString().endsWith(".java")).toList()) {
        String source = Files.readString(file);
        seen += SENTENCES.matcher(source).find() ? 1 : 0;
        if (findsSentencesAgain(source)) {
          found.add(file.getFileName().toString());
        }
      }
    }
    assertThat(seen).as("classes with sentences").isGreaterThan(20);
    assertThat(found).containsExactlyElementsOf(STILL);
  }

  @Test
  void tellsAClassThatWould() {
    assertThat(
            findsSentencesAgain(
                "ResourceBundle.getBundle(name); Pattern.compile(Pattern.quote(english))"))
        .isTrue();
    assertThat(findsSentencesAgain("ResourceBundle.getBundle(name); text.get(key)")).isFalse();
  }
}
