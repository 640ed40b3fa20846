package firstamp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every bundle there is has its German one, key by key. */
class BundlesTest {
  private static final Path ROOT = Path.of("src", "main", "resources", "firstamp");
  private static final Pattern HOLE = Pattern.compile("\\{\\d");

  /** Words that an English sentence can hardly do without and that no German one has. */
  private static final Pattern ENGLISH =
      Pattern.compile(
          "\\b(the|is|are|of|with|after|before|not|nothing|and|or|this|that|there|it|its|to|on|only"
              + "|expected|without|from|your?|cannot|been|has|have|by|for|than|then|which|when)\\b",
          Pattern.CASE_INSENSITIVE);

  private static List<Path> english() throws IOException {
    try (Stream<Path> all = Files.walk(ROOT)) {
      return all.filter(each -> each.toString().endsWith(".properties"))
          .filter(each -> !each.toString().endsWith("_de.properties"))
          .sorted()
          .toList();
    }
  }

  private static Path german(Path english) {
    String name = english.getFileName().toString().replace(".properties", "_de.properties");
    return english.resolveSibling(name);
  }

  private static Properties read(Path file) throws IOException {
    Properties bundle = new Properties();
    bundle.load(new StringReader(Files.readString(file)));
    return bundle;
  }

  /** They hold what only the log or the system says, in English; German does without. */
  private static final Set<String> WITHOUT_A_VALUE =
      Set.of(
          "run.started",
          "run.started.number",
          "run.cable.lost",
          "run.cable.restored",
          "run.cable.probe-restarted",
          "log-database.no-room-on-the-disk",
          "log-database.the-file-or-its-folder",
          "log-database.cannot-be-opened-check-that",
          "log-database.another-program-holds-it-close",
          "log-database.damaged-take-the-newest-backup",
          "log-database.the-disk-or-the-database",
          "log-database.the-file-is-gone-put",
          "log-database.is-not-a-bench-log");

  /** They list English words that are typed. */
  private static final List<String> TYPED =
      List.of("firstamp.watch.different.0", "keys", "again.what-is-different-since-number");

  /** Names that are typed, in quotes or behind dashes, and rules' numbers are nobody's language. */
  private static String plain(String text) {
    return text.replaceAll("`[^`]*`|\"[^\"]*\"|\u201e[^\u201c]*\u201c|'[^']*'", "")
        .replaceAll("--[a-z-]+( [A-Z:]+)*|@\\|bold [^|]*\\|@|\\S*/\\S+|[A-Za-z]+(-[a-z0-9]+)+", "");
  }

  @Test
  void everyKeyHasAGermanText() throws IOException {
    List<String> faults = new ArrayList<>();
    int keys = 0;
    for (Path file : english()) {
      assertThat(german(file)).as("German of %s", file).exists();
      Properties one = read(file);
      Properties other = read(german(file));
      assertThat(new TreeSet<>(other.keySet()))
          .as("%s", file)
          .isEqualTo(new TreeSet<>(one.keySet()));
      keys += one.size();
      for (String key : one.stringPropertyNames()) {
        if (other.getProperty(key).isBlank() != one.getProperty(key).isBlank()) {
          faults.add(file + " " + key + " is empty in one language");
        }
      }
    }
    assertThat(keys).isGreaterThan(2000);
    assertThat(faults).isEmpty();
  }

  /** What is put into a sentence is put into both. */
  @Test
  void germanSaysTheSameValues() throws IOException {
    List<String> faults = new ArrayList<>();
    for (Path file : english()) {
      Properties one = read(file);
      Properties other = read(german(file));
      for (String key : one.stringPropertyNames()) {
        TreeSet<String> here = holes(one.getProperty(key));
        TreeSet<String> there = holes(other.getProperty(key));
        if (!here.equals(there) && !WITHOUT_A_VALUE.contains(key)) {
          faults.add(file.getFileName() + " " + key + ": " + here + " " + there);
        }
      }
    }
    assertThat(faults).isEmpty();
  }

  private static TreeSet<String> holes(String text) {
    TreeSet<String> found = new TreeSet<>();
    HOLE.matcher(text).results().forEach(hole -> found.add(hole.group()));
    return found;
  }

  @Test
  void noGermanTextIsEnglish() throws IOException {
    List<String> faults = new ArrayList<>();
    for (WrittenTexts.Written written : WrittenTexts.bundles(true)) {
      boolean typed = TYPED.stream().anyMatch(key -> written.where().endsWith(" " + key));
      if (!typed && ENGLISH.matcher(plain(written.text())).find()) {
        faults.add(written.where() + ": " + written.text());
      }
    }
    assertThat(faults).isEmpty();
    assertThat(ENGLISH.matcher(plain("The switch is open.")).find()).isTrue();
  }

  /** Where values are put in, a single apostrophe would vanish and take braces with it. */
  @Test
  void noApostropheIsEaten() throws IOException {
    List<String> faults = new ArrayList<>();
    for (boolean german : new boolean[] {false, true}) {
      for (WrittenTexts.Written written : WrittenTexts.bundles(german)) {
        boolean filled = HOLE.matcher(written.text()).find();
        String rest = written.text().replace("''", "").replaceAll("'[{][^']*[}]'", "");
        if (filled && rest.contains("'")) {
          faults.add(written.where() + ": " + written.text());
        }
      }
    }
    assertThat(faults).isEmpty();
  }
}
