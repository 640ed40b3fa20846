package firstamp.cli.run;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.model.JobSheet;
import firstamp.model.text.Explained;
import firstamp.model.text.FailureWords;
import firstamp.model.text.Worded;
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
      throw new CliFailure(ExitCode.BAD_DATA, Explained.of(bad), bad);
    } catch (NoSuchFileException missing) {
      throw new CliFailure(
          ExitCode.NO_INPUT, Said.of("sheets.there-is-no-job-sheet", file), missing);
    } catch (CharacterCodingException notText) {
      throw new CliFailure(
          ExitCode.BAD_DATA, Said.of("sheets.the-job-sheet-is-not", file), notText);
    } catch (IOException unreadable) {
      throw new CliFailure(
          ExitCode.NO_INPUT,
          Said.of("sheets.the-job-sheet-cannot-be", file, FailureWords.worded(unreadable)),
          unreadable);
    }
  }

  private static Ready standardInput() throws CliFailure {
    try {
      return parse("standard input", new String(System.in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException failed) {
      throw new CliFailure(
          ExitCode.NO_INPUT,
          Said.of("prompt.cannot-read-standard-input", FailureWords.worded(failed)),
          failed);
    }
  }

  /** Reads a sheet that comes with the program or is in a log. */
  public static Ready parse(String name, String json) throws CliFailure {
    try {
      return ready(SheetReader.parse(name, json), json);
    } catch (SheetException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, Explained.of(bad), bad);
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
  public static void warn(Ready sheet, Speech speech) {
    for (Worded warning : SheetWarnings.of(sheet.document().sheet())) {
      speech.note(Said.of("main.wrong", warning));
    }
  }
}
