package firstamp.sheet;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;

/** The job sheet cannot be used as it is: names place, value, what is allowed and what to do. */
public final class SheetException extends Exception implements Explained {
  private static final long serialVersionUID = 1L;
  private static final String BUNDLE = "firstamp.sheet.problems";

  private final String file;
  private final int line;
  private final int column;
  private final String field;
  private final transient Worded words;
  private final transient Worded value;
  private final transient Worded remedy;

  /**
   * One problem. Value, allowed and remedy are a phrase, something worded, or text as it is.
   *
   * @param file name of the sheet
   * @param line from 1, 0 = not known
   * @param column from 1
   * @param field place, for example {@code limits.runningA}, empty for the whole sheet
   * @param value what was found
   * @param allowed what is allowed there
   * @param remedy what to do
   */
  SheetException(
      String file,
      int line,
      int column,
      String field,
      Object value,
      Object allowed,
      Object remedy) {
    this(
        file,
        line,
        column,
        field,
        said(file, line, column, field, value, allowed, remedy),
        words("part", value),
        words("parts", allowed, remedy));
  }

  private SheetException(
      String file, int line, int column, String field, Worded words, Worded value, Worded remedy) {
    super(words.english());
    this.file = file;
    this.line = line;
    this.column = column;
    this.field = field;
    this.words = words;
    this.value = value;
    this.remedy = remedy;
  }

  private static Worded said(
      String file,
      int line,
      int column,
      String field,
      Object value,
      Object allowed,
      Object remedy) {
    Phrase what =
        field.isEmpty()
            ? new Phrase("whole", value, allowed, remedy)
            : new Phrase("field", field, value, allowed, remedy);
    return line > 0 ? words("place", file, line, column, what) : words("file", file, what);
  }

  /** A sentence about a job sheet. */
  static Worded words(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }

  @Override
  public Worded words() {
    return words;
  }

  /** Name of the sheet. */
  public String file() {
    return file;
  }

  /** Line from 1, 0 = not known. */
  public int line() {
    return line;
  }

  /** Column from 1. */
  public int column() {
    return column;
  }

  /** Place in the sheet. */
  public String field() {
    return field;
  }

  /** What was found there. */
  public Worded value() {
    return value;
  }

  /** What is allowed there, and what to do. */
  public Worded remedy() {
    return remedy;
  }
}
