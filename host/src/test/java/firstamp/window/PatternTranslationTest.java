package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Which texts still come as English sentences and are found again by their pattern: those of these
 * bundles. The list only gets shorter; alarms, verdict and figures come as keys with their values.
 */
class PatternTranslationTest {
  private static final List<String> STILL =
      List.of(
          "firstamp.link.ports",
          "firstamp.log.trouble",
          "firstamp.run.modes",
          "firstamp.run.refusals",
          "firstamp.sheet.problems",
          "firstamp.sheet.questions");

  private static final Pattern PAIRS = Pattern.compile("pairs\\(\"([a-z.]+)\"\\)");

  @Test
  void onlyTheseBundlesAreTranslatedByPattern() throws IOException {
    TreeSet<String> found = new TreeSet<>();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      for (Path file : files.filter(each -> each.toString().endsWith(".java")).toList()) {
        PAIRS.matcher(Files.readString(file)).results().forEach(one -> found.add(one.group(1)));
      }
    }
    assertThat(found).containsExactlyElementsOf(STILL);
  }
}
