package firstamp.cli.run;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Speech;
import java.util.Locale;
import picocli.CommandLine.Option;

/** The language in which a command prints what people read. */
public final class LanguageOption {
  @Option(
      names = "--language",
      paramLabel = "LANGUAGE",
      description =
          "of what is printed for people: en or de (default en); JSON, and why a command failed,"
              + " stay in English")
  private String language;

  /** What was asked for, English else. */
  public Speech speech() throws CliFailure {
    return switch (language == null ? "en" : language) {
      case "en" -> Speech.ENGLISH;
      case "de" -> new Speech(Locale.GERMAN);
      default ->
          throw new CliFailure(ExitCode.USAGE, "--language " + language + ", expected en or de");
    };
  }
}
