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

  /** Parts of the reader's messages, and the key of ours; the first that fits counts. */
  private static final List<String[]> KNOWN =
      List.of(
          new String[] {"ALLOW_COMMENTS", "json.comment"},
          new String[] {"ALLOW_NON_NUMERIC_NUMBERS", "json.nan"},
          new String[] {"ALLOW_", "json.form"},
          new String[] {"Unexpected end-of-input", "json.ends"},
          new String[] {"Unexpected end-of-String", "json.quote"},
          new String[] {"exceeds the maximum", "json.long"},
          new String[] {"Leading zero", "json.zero"},
          new String[] {"control character", "json.control"},
          new String[] {"No content", "json.nothing"});

  private JsonWords() {}

  /** The reason in English. */
  public static String of(String said) {
    return worded(said).english();
  }

  /** The reason without its place; {@code said} is the message of the JSON reader. */
  public static Worded worded(String said) {
    String text = said == null ? "" : said;
    for (String[] one : KNOWN) {
      if (text.contains(one[0])) {
        return FailureWords.say(one[1]);
      }
    }
    Matcher twice = TWICE.matcher(text);
    if (twice.find()) {
      return FailureWords.say("json.twice", twice.group(1));
    }
    Matcher word = WORD.matcher(text);
    if (word.find()) {
      return FailureWords.say("json.word", word.group(1));
    }
    Matcher character = CHARACTER.matcher(text);
    return character.find()
        ? FailureWords.say("json.character", character.group(1))
        : FailureWords.say("json.none");
  }
}
