package firstamp.cli.output;

import firstamp.model.text.FailureWords;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.util.Locale;

/** Asks on standard error, takes the answer from standard input. */
public final class Prompt {
  private BufferedReader in;

  /** Waits for a line; what it says does not matter. */
  public void enter(String words) throws CliFailure {
    line(words);
  }

  /** Whether the answer is yes; anything else is no. */
  public boolean agrees(String words) throws CliFailure {
    String answer = line(words + " (yes or no)").toLowerCase(Locale.ROOT);
    return answer.equals("yes") || answer.equals("y");
  }

  /**
   * A number; asked again while it is none.
   *
   * @param usual taken for an empty line; null = there is none
   */
  public double number(String words, Double usual) throws CliFailure {
    while (true) {
      String answer = line(usual == null ? words : words + " (empty: " + usual + ")");
      if (answer.isEmpty() && usual != null) {
        return usual;
      }
      try {
        double value = Double.parseDouble(answer);
        if (Double.isFinite(value)) {
          return value;
        }
      } catch (NumberFormatException noNumber) {
        // Asked again below.
      }
      System.err.println("\"" + answer + "\" is no number; expected one like 9.137");
    }
  }

  /** A line as typed, without the blanks around it. */
  public String answer(String words) throws CliFailure {
    return line(words);
  }

  private String line(String words) throws CliFailure {
    System.err.println(words);
    try {
      if (in == null) {
        in = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
      }
      String line = in.readLine();
      if (line != null) {
        return line.trim();
      }
    } catch (IOException failed) {
      throw new CliFailure(
          ExitCode.IO_ERROR, "cannot read standard input: " + FailureWords.of(failed), failed);
    }
    throw new CliFailure(
        ExitCode.NO_INPUT,
        "standard input ended before this was answered: \"" + words + "\". Nothing was written.");
  }
}
