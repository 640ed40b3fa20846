package firstamp.sheet;

/** The job sheet cannot be used as it is: names place, value, what is allowed and what to do. */
public final class SheetException extends Exception {
  private static final long serialVersionUID = 1L;

  private final String file;
  private final int line;
  private final int column;
  private final String field;
  private final String value;
  private final String allowed;
  private final String remedy;

  /**
   * One problem.
   *
   * @param file name of the sheet
   * @param line from 1, 0 = not known
   * @param column from 1
   * @param field place, for example {@code limits.runningA}, empty for the whole sheet
   * @param value what was found @param allowed what is allowed there @param remedy what to do
   */
  public SheetException(
      String file,
      int line,
      int column,
      String field,
      String value,
      String allowed,
      String remedy) {
    super(text(file, line, column, field, value, allowed, remedy));
    this.file = file;
    this.line = line;
    this.column = column;
    this.field = field;
    this.value = value;
    this.allowed = allowed;
    this.remedy = remedy;
  }

  private static String text(
      String file,
      int line,
      int column,
      String field,
      String value,
      String allowed,
      String remedy) {
    StringBuilder text = new StringBuilder(file);
    if (line > 0) {
      text.append(", line ").append(line).append(", column ").append(column);
    }
    text.append(": ");
    if (!field.isEmpty()) {
      text.append(field).append(' ');
    }
    text.append("is ").append(value).append(", expected ").append(allowed).append(". ");
    return text.append(remedy).toString();
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
  public String value() {
    return value;
  }

  /** What is allowed there. */
  public String allowed() {
    return allowed;
  }

  /** What to do. */
  public String remedy() {
    return remedy;
  }
}
