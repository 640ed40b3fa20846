package firstamp;

import firstamp.cli.HelpTexts;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.stream.Stream;

/** Every text of the project that people read, with the place it comes from. */
final class WrittenTexts {
  private static final Path BUNDLES = Path.of("src", "main", "resources", "firstamp");

  /** Where a text comes from, and the text. */
  record Written(String where, String text) {}

  private WrittenTexts() {}

  /** Values of all bundles in English, or of all in German. */
  static List<Written> bundles(boolean german) throws IOException {
    List<Written> written = new ArrayList<>();
    for (Path file : files(BUNDLES, ".properties")) {
      if (file.toString().endsWith("_de.properties") == german) {
        Properties lines = new Properties();
        lines.load(new StringReader(Files.readString(file)));
        lines.forEach((key, value) -> written.add(new Written(file + " " + key, value.toString())));
      }
    }
    return written;
  }

  static List<Written> jsonResources() throws IOException {
    List<Written> written = new ArrayList<>();
    for (Path file : files(BUNDLES, ".json")) {
      Files.readString(file).lines().forEach(line -> written.add(new Written("" + file, line)));
    }
    return written;
  }

  static List<Written> helpTexts() {
    List<Written> written = new ArrayList<>();
    HelpTexts.all().forEach((name, text) -> written.add(new Written("help of " + name, text)));
    return written;
  }

  /** Papers of a folder or one paper, a paragraph, list entry or row of a table at a time. */
  static List<Written> papers(Path... places) throws IOException {
    List<Written> written = new ArrayList<>();
    for (Path place : places) {
      for (Path paper : files(place, ".md")) {
        String whole = Files.readString(paper).replaceAll("\\s*\\n(?![\\n|#-])", " ");
        whole.lines().forEach(line -> written.add(new Written(paper.toString(), line)));
      }
    }
    return written;
  }

  /** Comments of Java sources; line comments that follow each other are one. */
  static List<Written> comments(Path sources) throws IOException {
    List<Written> written = new ArrayList<>();
    for (Path file : files(sources, ".java")) {
      for (String comment : JavaComments.of(Files.readString(file))) {
        written.add(new Written(file.toString(), comment));
      }
    }
    return written;
  }

  private static List<Path> files(Path root, String ending) throws IOException {
    try (Stream<Path> all = Files.walk(root)) {
      return all.filter(each -> each.toString().endsWith(ending)).sorted().toList();
    }
  }
}
