package firstamp.cli.output;

import firstamp.sheet.Nearest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is wrong with a command line, in words that do not come from the parser. */
public final class UsageWords {
  private UsageWords() {}

  public static String of(ParameterException problem) {
    CommandSpec command = problem.getCommandLine().getCommandSpec();
    if (problem instanceof UnmatchedArgumentException unmatched) {
      return unmatched(unmatched.getUnmatched().get(0), command);
    }
    if (problem instanceof MissingParameterException missing) {
      return missing(missing);
    }
    ArgSpec argument = problem.getArgSpec();
    if (problem instanceof OverwrittenOptionException twice) {
      return name(twice.getOverwritten()) + " is given twice, expected once";
    }
    return argument == null ? problem.getMessage() : unfit(problem, argument);
  }

  /** A command that is not there, and the nearest one. */
  public static String noCommand(String word, String parent, Collection<String> known) {
    String of = parent.isEmpty() ? "" : parent + " ";
    return "there is no command `"
        + of
        + word
        + "`."
        + meant(word, known)
        + " There are: "
        + String.join(", ", known);
  }

  /** A word of a list that is not known, and the nearest one. */
  public static String noAnswer(String option, String word, Collection<String> known) {
    return option
        + " '"
        + word
        + "' is not known."
        + meant(word, known)
        + " Known are: "
        + String.join(", ", known);
  }

  private static String unmatched(String word, CommandSpec command) {
    if (!word.startsWith("-")) {
      return command.name() + " takes no further word, but '" + word + "' was given";
    }
    String bare = word.contains("=") ? word.substring(0, word.indexOf('=')) : word;
    List<String> options = new ArrayList<>();
    for (OptionSpec option : command.options()) {
      options.addAll(Arrays.asList(option.names()));
    }
    return command.name() + " has no option " + bare + "." + meant(bare, options);
  }

  /** Said only where it is likely: at most a third of the letters differ, or it begins so. */
  private static String meant(String word, Collection<String> known) {
    String begun =
        known.stream()
            .filter(one -> word.length() > 2 && one.startsWith(word))
            .findFirst()
            .orElse("");
    String nearest = begun.isEmpty() ? Nearest.to(word, known) : begun;
    boolean likely =
        !begun.isEmpty() || Nearest.letters(word, nearest) <= Math.max(2, word.length() / 3);
    return likely ? " Did you mean '" + nearest + "'?" : "";
  }

  private static String missing(MissingParameterException problem) {
    List<String> parts = new ArrayList<>();
    boolean whole = problem.getMessage().startsWith("Missing required option");
    for (ArgSpec argument : problem.getMissing()) {
      if (argument.isOption()) {
        parts.add(
            whole
                ? name(argument) + " " + argument.paramLabel() + " is missing"
                : name(argument) + " needs " + argument.paramLabel());
      } else {
        int least = argument.arity().min();
        parts.add(
            least > 1
                ? "at least " + least + " of " + argument.paramLabel() + " are needed"
                : argument.paramLabel() + " is missing");
      }
    }
    return String.join("; ", parts);
  }

  private static String unfit(ParameterException problem, ArgSpec argument) {
    Class<?> type = argument.type();
    if (argument.converters().length > 0) {
      // Our own converters speak for themselves, behind the parser's "Invalid value for option".
      String said = problem.getMessage();
      int own = said.indexOf("'" + problem.getValue() + "'");
      return name(argument) + " " + (own < 0 ? said : said.substring(own));
    }
    String expected;
    if (type.isEnum()) {
      List<String> words = new ArrayList<>();
      for (Object one : type.getEnumConstants()) {
        words.add(one.toString());
      }
      expected =
          String.join(", ", words.subList(0, words.size() - 1))
              + " or "
              + words.get(words.size() - 1);
    } else {
      expected =
          switch (type.getSimpleName().toLowerCase(Locale.ROOT)) {
            case "long", "int", "integer" -> "a whole number";
            case "double" -> "a number such as 0.7";
            case "path" -> "the name of a file";
            default -> argument.paramLabel();
          };
    }
    return name(argument) + " '" + problem.getValue() + "', expected " + expected;
  }

  private static String name(ArgSpec argument) {
    return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
  }
}
