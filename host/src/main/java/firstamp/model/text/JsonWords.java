package firstamp.model.text;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What is wrong with JSON text, in words for people: the reader's own name its settings, its
 * classes and where it looked.
 */
public final class JsonWords {
  private static final Pattern CHARACTER =
      Pattern.compile("Unexpected character \\('(.+?)' \\(code [0-9]+");
  private static final Pattern WORD = Pattern.compile("Unrecognized token '(.+?)'");
  private static final Pattern TWICE =
      Pattern.compile("Duplicate (?:field|Object property) [\"'](.+?)[\"']");

  /** Parts of the reader's messages, and ours; the first that fits counts. */
  private static final List<String[]> KNOWN =
      List.of(
          new String[] {"ALLOW_COMMENTS", "a comment, and JSON has none"},
          new String[] {"ALLOW_NON_NUMERIC_NUMBERS", "a value that is no number (NaN or infinity)"},
          new String[] {"ALLOW_", "a form that JSON does not have"},
          new String[] {"Unexpected end-of-input", "it ends in the middle"},
          new String[] {"Unexpected end-of-String", "a text without its closing quote"},
          new String[] {"exceeds the maximum", "longer or deeper than allowed"},
          new String[] {"Leading zero", "a number with a zero in front"},
          new String[] {"control character", "a line break or control character inside a text"},
          new String[] {"No content", "nothing in it"});

  private JsonWords() {}

  /** The reason without its place; {@code said} is the message of the JSON reader. */
  public static String of(String said) {
    String text = said == null ? "" : said;
    for (String[] one : KNOWN) {
      if (text.contains(one[0])) {
        return one[1];
      }
    }
    Matcher twice = TWICE.matcher(text);
    if (twice.find()) {
      return "the key \"" + twice.group(1) + "\" twice";
    }
    Matcher word = WORD.matcher(text);
    if (word.find()) {
      return "the word " + word.group(1) + ", which is no JSON";
    }
    Matcher character = CHARACTER.matcher(text);
    return character.find() ? "a " + character.group(1) + " where none may be" : "no JSON";
  }
}
