package firstamp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The shape of the papers, and that every path and class that DEVELOPERS.md names exists. */
class PapersTest {
  private static final Path TOP = Path.of("..");
  private static final Path DEVELOPERS = TOP.resolve("DEVELOPERS.md");
  private static final Path JAVA = Path.of("src", "main", "java", "firstamp");
  private static final int COLUMNS = 100;

  /** Written by a program, a line per paragraph. */
  private static final Set<String> GENERATED = Set.of("parts.md", "proof.md");

  /** Places where a path of DEVELOPERS.md may begin, in addition to the top of the tree. */
  private static final List<Path> BEGINNINGS =
      List.of(
          TOP,
          JAVA,
          TOP.resolve(Path.of("firmware-protocol", "src", "main", "java", "firstamp")),
          Path.of("src", "test", "java", "firstamp"),
          TOP.resolve("firmware-protocol"),
          TOP.resolve("firmware-protocol").resolve("firmware"),
          Path.of("src", "main", "resources", "firstamp"),
          Path.of("src", "main", "resources", "firstamp", "window"));

  private static final Pattern CODE = Pattern.compile("`([^`\n]+)`");

  private static List<Path> papers() throws IOException {
    List<Path> papers = new ArrayList<>();
    for (Path root :
        List.of(
            TOP.resolve("README.md"),
            DEVELOPERS,
            TOP.resolve("firmware-protocol"),
            TOP.resolve("schemas"),
            TOP.resolve("sample-logs"),
            TOP.resolve("host"))) {
      try (Stream<Path> all = Files.walk(root)) {
        all.filter(each -> each.toString().endsWith(".md"))
            .filter(each -> !each.toString().contains("target"))
            .filter(each -> !GENERATED.contains(each.getFileName().toString()))
            .forEach(papers::add);
      }
    }
    return papers;
  }

  /** Lines of prose over 100 columns; tables, code, pictures and written figures are none. */
  static List<String> tooLong(String paper) {
    List<String> found = new ArrayList<>();
    boolean code = false;
    for (String line : paper.replaceAll("(?s)<!-- log figures.*?<!-- end", "<!--").split("\n")) {
      code ^= line.startsWith("```");
      boolean prose = !code && !line.startsWith("|") && !line.startsWith("    ");
      boolean breaks = line.strip().replaceAll("`[^`]*`", "").contains(" ");
      if (prose && breaks && line.length() > COLUMNS) {
        found.add(line);
      }
    }
    return found;
  }

  @Test
  void proseIsWrappedAt100Columns() throws IOException {
    List<Path> papers = papers();
    assertThat(papers.size()).isGreaterThan(40);
    for (Path paper : papers) {
      assertThat(tooLong(Files.readString(paper))).as("%s", paper).isEmpty();
    }
  }

  @Test
  void findsALongLineAndPassesOverTablesAndCode() {
    String words = "word ".repeat(21);
    assertThat(tooLong(words)).hasSize(1);
    assertThat(tooLong("| " + words + "|\n```\n" + words + "\n```\n    " + words)).isEmpty();
    assertThat(tooLong("`" + words + "`")).isEmpty();
  }

  @Test
  void theFirstPageForDevelopersIsShort() throws IOException {
    assertThat(Files.readAllLines(DEVELOPERS).size()).isLessThanOrEqualTo(200);
  }

  @Test
  void everyPathOfTheFirstPageExists() throws IOException {
    String page = Files.readString(DEVELOPERS);
    Set<String> missing = new TreeSet<>();
    int seen = 0;
    Matcher code = CODE.matcher(page);
    while (code.find()) {
      String path = code.group(1);
      if (path.matches("[\\w./-]*(/[\\w.-]+)+/?|[\\w-]+\\.(md|txt|properties|json|c|h)")) {
        seen++;
        if (!exists(path)) {
          missing.add(path);
        }
      }
    }
    assertThat(seen).isGreaterThan(60);
    assertThat(missing).isEmpty();
  }

  /** A path from the top, from a source room ("host/.../log", ".../log") or by a file's name. */
  private static boolean exists(String path) throws IOException {
    String inRoom =
        path.replaceFirst("^(host/src/test|firmware-protocol/src|host)?/?\\.\\.\\./", "");
    for (Path beginning : BEGINNINGS) {
      if (Files.exists(beginning.resolve(inRoom))) {
        return true;
      }
    }
    if (path.contains("/")) {
      return false;
    }
    for (Path root : List.of(Path.of("src"), TOP.resolve("firmware-protocol"), Path.of("docs"))) {
      try (Stream<Path> all = Files.walk(root)) {
        if (all.anyMatch(each -> each.getFileName().toString().equals(path))) {
          return true;
        }
      }
    }
    return Files.exists(TOP.resolve("schemas").resolve(path));
  }

  @Test
  void everyClassOfTheFirstPageExists() throws IOException {
    Set<String> classes = new TreeSet<>();
    for (Path root : List.of(Path.of("src"), TOP.resolve("firmware-protocol").resolve("src"))) {
      try (Stream<Path> all = Files.walk(root)) {
        all.map(each -> each.getFileName().toString())
            .filter(each -> each.endsWith(".java"))
            .forEach(each -> classes.add(each.replace(".java", "")));
      }
    }
    Set<String> missing = new TreeSet<>();
    Matcher code = CODE.matcher(Files.readString(DEVELOPERS));
    int seen = 0;
    while (code.find()) {
      String name = code.group(1).replaceFirst("^([a-z]+\\.)+(?=[A-Z])", "").split("[.#]")[0];
      if (name.matches("[A-Z][a-z]+[A-Za-z]*") && !name.matches("Locale")) {
        seen++;
        if (!classes.contains(name)) {
          missing.add(name);
        }
      }
    }
    assertThat(seen).isGreaterThan(30);
    assertThat(missing).isEmpty();
  }
}
