package firstamp;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;

/** The arrows between packages, as {@code package-arrows.txt} lists them: a line per package. */
final class PackageArrows {
  private static final String FILE = "package-arrows.txt";

  private PackageArrows() {}

  /** What each package may use apart from itself. */
  static Map<String, List<String>> read() {
    Properties lines = new Properties();
    try (InputStream in = PackageArrows.class.getResourceAsStream(FILE)) {
      lines.load(in);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    Map<String, List<String>> arrows = new TreeMap<>();
    for (String part : lines.stringPropertyNames()) {
      List<String> others =
          Arrays.stream(lines.getProperty(part).trim().split("\\s+"))
              .filter(other -> !other.isEmpty())
              .toList();
      arrows.put(part, others);
    }
    for (List<String> others : arrows.values()) {
      if (!arrows.keySet().containsAll(others)) {
        throw new IllegalStateException(FILE + ": " + others + " names a package without a line");
      }
    }
    return arrows;
  }
}
