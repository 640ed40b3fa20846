package firstamp.cli.run;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.model.JobSheet;
import firstamp.model.text.FailureWords;
import firstamp.run.SheetTexts;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetDocument;
import firstamp.sheet.SheetException;
import firstamp.sheet.SheetReader;
import firstamp.sheet.SheetWarnings;
import firstamp.sheet.SheetWriter;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Job sheets for commands. */
public final class Sheets {
  private Sheets() {}

  /**
   * A sheet ready to watch.
   *
   * @param document as read
   * @param effective with defaults filled in
   * @param texts for the log
   */
  public record Ready(SheetDocument document, JobSheet effective, SheetTexts texts) {}

  /** Reads a file, {@code -} = standard input. */
  public static Ready read(Path file) throws CliFailure {
    if (file.toString().equals("-")) {
      return standardInput();
    }
    try {
      return ready(SheetReader.read(file), Files.readString(file));
    } catch (SheetException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, bad.getMessage(), bad);
    } catch (NoSuchFileException missing) {
      throw new CliFailure(
          ExitCode.NO_INPUT,
          "there is no job sheet "
              + file
              + ". Check the path; the README shows a short one to begin with.",
          missing);
    } catch (CharacterCodingException notText) {
      throw new CliFailure(
          ExitCode.BAD_DATA,
          "the job sheet " + file + " is not text in UTF-8; expected JSON",
          notText);
    } catch (IOException unreadable) {
      throw new CliFailure(
          ExitCode.NO_INPUT,
          "the job sheet " + file + " cannot be read: " + FailureWords.of(unreadable),
          unreadable);
    }
  }

  private static Ready standardInput() throws CliFailure {
    try {
      return parse("standard input", new String(System.in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException failed) {
      throw new CliFailure(
          ExitCode.NO_INPUT, "cannot read standard input: " + FailureWords.of(failed), failed);
    }
  }

  /** Reads a sheet that comes with the program or is in a log. */
  public static Ready parse(String name, String json) throws CliFailure {
    try {
      return ready(SheetReader.parse(name, json), json);
    } catch (SheetException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, bad.getMessage(), bad);
    }
  }

  private static Ready ready(SheetDocument document, String text) {
    JobSheet effective = Defaults.fill(document.sheet());
    return new Ready(
        document,
        effective,
        new SheetTexts(effective.set().name(), text, SheetWriter.write(effective)));
  }

  /** The same, watched by another sheet. */
  public static Ready fitted(Ready sheet, JobSheet effective) {
    return new Ready(
        sheet.document(),
        effective,
        new SheetTexts(
            sheet.texts().setName(), sheet.texts().given(), SheetWriter.write(effective)));
  }

  /** Warnings to standard error. */
  public static void warn(Ready sheet) {
    for (String warning : SheetWarnings.of(sheet.document().sheet())) {
      System.err.println("firstamp: " + warning);
    }
  }
}
