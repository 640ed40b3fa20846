package firstamp.emulate.wave;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Fields of one record of RFC 4180 (no line breaks within quotes), and numbers in them. */
public final class CsvLine {
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d+)?");

  private CsvLine() {}

  /** The fields; null when a quote is not closed or not followed by a comma. */
  public static List<String> fields(String line) {
    List<String> fields = new ArrayList<>();
    int at = 0;
    while (true) {
      StringBuilder field = new StringBuilder();
      at =
          at < line.length() && line.charAt(at) == '"'
              ? quoted(line, at, field)
              : plain(line, at, field);
      if (at < 0) {
        return null;
      }
      fields.add(field.toString());
      if (at == line.length()) {
        return fields;
      }
      at++;
    }
  }

  private static int plain(String line, int from, StringBuilder field) {
    int comma = line.indexOf(',', from);
    int end = comma < 0 ? line.length() : comma;
    field.append(line, from, end);
    return end;
  }

  private static int quoted(String line, int from, StringBuilder field) {
    int at = from + 1;
    while (at < line.length()) {
      if (line.charAt(at) != '"') {
        field.append(line.charAt(at++));
      } else if (at + 1 < line.length() && line.charAt(at + 1) == '"') {
        field.append('"');
        at += 2;
      } else {
        at++;
        return at == line.length() || line.charAt(at) == ',' ? at : -1;
      }
    }
    return -1;
  }

  /** A decimal number, NaN if it is none. */
  static double number(String text) {
    return NUMBER.matcher(text).matches() ? Double.parseDouble(text) : Double.NaN;
  }
}
