package firstamp.worlds;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Runs drawn power-ups of every kind through the whole program and prints what came of each. */
public final class WorldsTable {
  private WorldsTable() {}

  /**
   * Arguments: folder, draws of each kind, first seed; then words that a kind must contain, and
   * "all" to print the power-ups that came out right too.
   */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    int draws = Integer.parseInt(arguments[1]);
    long first = Long.parseLong(arguments[2]);
    String only = arguments.length > 3 ? arguments[3] : "";
    boolean all = arguments.length > 4;
    for (Map.Entry<String, Kinds.Kind> kind : Kinds.all().entrySet()) {
      if (!kind.getKey().contains(only)) {
        continue;
      }
      int wrong = 0;
      List<String> lines = new ArrayList<>();
      for (long seed = first; seed < first + draws; seed++) {
        Told told = Told.of(kind.getValue().draw(new Draw(seed), folder), seed, folder);
        wrong += told.wrong() ? 1 : 0;
        if (told.wrong() || all) {
          lines.add(told.lines());
        }
        if (all) {
          told.verdict().forEach(text -> lines.add("      | " + text));
        }
      }
      System.out.printf("%s: %d of %d wrong%n", kind.getKey(), wrong, draws);
      lines.forEach(System.out::println);
    }
  }
}
