package firstamp.protocol.chip;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Figures that the simulator wrote with --measure; names are unique within their group. */
final class ChipMeasures {
  private final Path file;
  private final String text;

  ChipMeasures(Path file) throws IOException {
    this.file = file;
    this.text = Files.readString(file);
  }

  /** A number by its name, within the group when one is given. */
  double number(String group, String name) {
    int from = group.isEmpty() ? 0 : text.indexOf("\"" + group + "\"");
    Matcher found = Pattern.compile("\"" + name + "\": (-?[0-9.]+)").matcher(text);
    if (from < 0 || !found.find(from)) {
      throw new AssertionError(file + ": no " + group + " " + name + " in " + text);
    }
    return Double.parseDouble(found.group(1));
  }

  @Override
  public String toString() {
    return text;
  }
}
