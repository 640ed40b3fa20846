package firstamp.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Options in front of the command: they belong to the command behind them, or to the window where
 * there is none.
 */
final class LeadingOptions {
  private static final Set<String> NAMES = Set.of("--language", "--theme", "--scale", "--log");

  private static final String WINDOW = "bench";

  private LeadingOptions() {}

  /**
   * The same command line with the command in front.
   *
   * @return the arguments themselves where no such option comes first
   */
  static String[] behindTheCommand(String... arguments) {
    int command = 0;
    while (command < arguments.length && NAMES.contains(bare(arguments[command]))) {
      command += arguments[command].contains("=") ? 1 : 2;
    }
    if (command == 0) {
      return arguments;
    }
    List<String> options = List.of(arguments).subList(0, Math.min(command, arguments.length));
    List<String> rest =
        List.of(arguments).subList(Math.min(command, arguments.length), arguments.length);
    List<String> turned = new ArrayList<>();
    int words = 0;
    while (words < rest.size() && !rest.get(words).startsWith("-")) {
      words++;
    }
    turned.addAll(words == 0 ? List.of(WINDOW) : rest.subList(0, words));
    turned.addAll(options);
    turned.addAll(rest.subList(words, rest.size()));
    return turned.toArray(String[]::new);
  }

  private static String bare(String argument) {
    int equals = argument.indexOf('=');
    return equals < 0 ? argument : argument.substring(0, equals);
  }
}
