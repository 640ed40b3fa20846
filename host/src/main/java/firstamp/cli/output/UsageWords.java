package firstamp.cli.output;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.sheet.SpellingSuggestion;
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

  public static Worded of(ParameterException problem) {
    CommandSpec command = problem.getCommandLine().getCommandSpec();
    if (problem instanceof UnmatchedArgumentException unmatched) {
      return unmatched(unmatched.getUnmatched().get(0), command);
    }
    if (problem instanceof MissingParameterException missing) {
      return missing(missing);
    }
    ArgSpec argument = problem.getArgSpec();
    if (problem instanceof OverwrittenOptionException twice) {
      return Said.of("usage.twice", name(twice.getOverwritten()));
    }
    return argument == null ? Explained.of(problem) : unfit(problem, argument);
  }

  /** A command that is not there, and the nearest one. */
  public static Worded noCommand(String word, String parent, Collection<String> known) {
    String whole = parent.isEmpty() ? word : parent + " " + word;
    return Said.of("usage.no-command", whole, meant(word, known), String.join(", ", known));
  }

  /** A word of a list that is not known, and the nearest one. */
  public static Worded noAnswer(String option, String word, Collection<String> known) {
    return Said.of("usage.no-answer", option, word, meant(word, known), String.join(", ", known));
  }

  private static Worded unmatched(String word, CommandSpec command) {
    if (!word.startsWith("-")) {
      return Said.of("usage.no-further-word", command.name(), word);
    }
    String bare = word.contains("=") ? word.substring(0, word.indexOf('=')) : word;
    List<String> options = new ArrayList<>();
    for (OptionSpec option : command.options()) {
      options.addAll(Arrays.asList(option.names()));
    }
    return Said.of("usage.no-option", command.name(), bare, meant(bare, options));
  }

  /** Only where it is likely: at most a third of the letters differ, or it begins so. */
  private static Object meant(String word, Collection<String> known) {
    String begun =
        known.stream()
            .filter(one -> word.length() > 2 && one.startsWith(word))
            .findFirst()
            .orElse("");
    String nearest = begun.isEmpty() ? SpellingSuggestion.to(word, known) : begun;
    boolean likely =
        !begun.isEmpty()
            || SpellingSuggestion.letters(word, nearest) <= Math.max(2, word.length() / 3);
    return likely ? Said.of("usage.meant", nearest) : "";
  }

  private static Worded missing(MissingParameterException problem) {
    Worded all = null;
    boolean whole = problem.getMessage().startsWith("Missing required option");
    for (ArgSpec argument : problem.getMissing()) {
      Worded one = missing(argument, whole);
      all = all == null ? one : Said.of("usage.and", all, one);
    }
    return all;
  }

  private static Worded missing(ArgSpec argument, boolean whole) {
    if (argument.isOption()) {
      return whole
          ? Said.of("usage.missing", name(argument) + " " + argument.paramLabel())
          : Said.of("usage.needs", name(argument), argument.paramLabel());
    }
    int least = argument.arity().min();
    return least > 1
        ? Said.of("usage.at-least", least, argument.paramLabel())
        : Said.of("usage.missing", argument.paramLabel());
  }

  private static Worded unfit(ParameterException problem, ArgSpec argument) {
    if (problem.getCause() instanceof BadValue own) {
      return Said.of("usage.bad-value", name(argument), own.words());
    }
    return Said.of("usage.expected", name(argument), problem.getValue(), expected(argument));
  }

  private static Object expected(ArgSpec argument) {
    Class<?> type = argument.type();
    if (type.isEnum()) {
      List<String> words = new ArrayList<>();
      for (Object one : type.getEnumConstants()) {
        words.add(one.toString());
      }
      return Said.of(
          "usage.or",
          String.join(", ", words.subList(0, words.size() - 1)),
          words.get(words.size() - 1));
    }
    return switch (type.getSimpleName().toLowerCase(Locale.ROOT)) {
      case "long", "int", "integer" -> Said.of("usage.whole-number");
      case "double" -> Said.of("usage.number");
      case "path" -> Said.of("usage.file");
      default -> argument.paramLabel();
    };
  }

  private static String name(ArgSpec argument) {
    return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
  }
}
