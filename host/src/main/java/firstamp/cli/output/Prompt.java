package firstamp.cli.output;

import firstamp.model.text.FailureWords;
import firstamp.model.text.Worded;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.util.List;
import java.util.Locale;

/** Asks on standard error, takes the answer from standard input. */
public final class Prompt {
  private final Speech speech;
  private BufferedReader in;

  public Prompt(Speech speech) {
    this.speech = speech;
  }

  /** Waits for a line; what it says does not matter. */
  public void enter(Worded words) throws CliFailure {
    line(speech.in(words));
  }

  /** Whether the answer is yes; anything else is no. */
  public boolean agrees(Worded words) throws CliFailure {
    String answer = line(speech.in(Said.of("prompt.yes-or-no", words))).toLowerCase(Locale.ROOT);
    return List.of("yes", "y", "ja", "j").contains(answer);
  }

  /**
   * A number; asked again while it is none.
   *
   * @param usual taken for an empty line; null = there is none
   */
  public double number(Worded words, Double usual) throws CliFailure {
    while (true) {
      String answer =
          line(
              speech.in(
                  usual == null ? words : Said.of("prompt.usual", words, String.valueOf(usual))));
      if (answer.isEmpty() && usual != null) {
        return usual;
      }
      try {
        double value = Double.parseDouble(answer.replace(',', '.'));
        if (Double.isFinite(value)) {
          return value;
        }
      } catch (NumberFormatException noNumber) {
        // Asked again below.
      }
      speech.err(Said.of("prompt.is-no-number-expected-one", answer));
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
          ExitCode.IO_ERROR,
          Said.of("prompt.cannot-read-standard-input", FailureWords.worded(failed)),
          failed);
    }
    throw new CliFailure(
        ExitCode.NO_INPUT, Said.of("prompt.standard-input-ended-before-this", words));
  }
}
