package firstamp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Words of our own workshop that mean nothing at the bench, in no bundle of any part. */
class ForbiddenWordsTest {
  private static final Path BUNDLES = Path.of("src/main/resources/firstamp");

  /** As they begin, but for those that other words begin with too. */
  private static final Pattern FORBIDDEN =
      Pattern.compile(
          "\\b(conversion|latch|unacknowledg|acknowledg|deadband|on-delay|off-delay|fold-?back"
              + "|i2t|(tau|odds)\\b|entropy)",
          Pattern.CASE_INSENSITIVE);

  private static List<Path> bundles() throws IOException {
    try (Stream<Path> files = Files.walk(BUNDLES)) {
      return files.filter(path -> path.toString().endsWith(".properties")).toList();
    }
  }

  private static List<String> forbiddenIn(Path bundle) throws IOException {
    Properties words = new Properties();
    try (Reader in = Files.newBufferedReader(bundle)) {
      words.load(in);
    }
    List<String> found = new ArrayList<>();
    for (String key : words.stringPropertyNames()) {
      if (FORBIDDEN.matcher(words.getProperty(key)).find()) {
        found.add(bundle.getFileName() + " " + key + ": " + words.getProperty(key));
      }
    }
    return found;
  }

  @Test
  void noBundleSaysWordsThatMeanNothingAtTheBench() throws IOException {
    List<Path> bundles = bundles();
    assertThat(bundles).hasSizeGreaterThanOrEqualTo(6);
    List<String> found = new ArrayList<>();
    for (Path bundle : bundles) {
      found.addAll(forbiddenIn(bundle));
    }
    assertThat(found).isEmpty();
  }

  @Test
  void wouldFindThem() {
    for (String text :
        List.of("The latched trip", "3 conversions", "I2t budget", "odds of 3", "on-delay 5 ms")) {
      assertThat(FORBIDDEN.matcher(text).find()).as(text).isTrue();
    }
    assertThat(FORBIDDEN.matcher("a taut wire, an oddity").find()).isFalse();
  }
}
