package firstamp;

import firstamp.WrittenTexts.Written;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One part of the list {@code banned-words.txt}.
 *
 * @param banned phrases, each with what to write instead
 */
record BannedWords(List<Phrase> banned) {
  /** A phrase that is not to be written. */
  record Phrase(String words, String instead, Pattern pattern) {}

  /** The part of the list under a heading such as {@code [english]}. */
  static BannedWords under(String heading) throws IOException {
    List<Phrase> phrases = new ArrayList<>();
    String part = "";
    for (String line : list().lines().map(String::strip).toList()) {
      if (line.startsWith("[")) {
        part = line;
      } else if (!line.isEmpty() && !line.startsWith("#") && part.equals(heading)) {
        phrases.add(phrase(line));
      }
    }
    return new BannedWords(List.copyOf(phrases));
  }

  /** Where a phrase of the list was written, with what to write instead. */
  List<String> in(List<Written> written) {
    List<String> found = new ArrayList<>();
    for (Written each : written) {
      for (Phrase phrase : banned) {
        Matcher match = phrase.pattern().matcher(each.text());
        while (match.find()) {
          found.add(each.where() + ": \"" + match.group() + "\", write: " + phrase.instead());
        }
      }
    }
    return found;
  }

  private static Phrase phrase(String line) {
    String[] sides = line.split("\\s*\\|\\s*", -1);
    if (sides.length != 2 || sides[0].isEmpty() || sides[1].isEmpty()) {
      throw new IllegalStateException("banned-words.txt: expected \"banned | instead\": " + line);
    }
    boolean open = sides[0].endsWith("*");
    String words = open ? sides[0].substring(0, sides[0].length() - 1) : sides[0];
    String regex = Pattern.quote(words).replace(" ", "\\E\\s+\\Q");
    return new Phrase(
        words,
        sides[1],
        Pattern.compile(
            "(?<![\\w-])" + regex + (open ? "\\w*" : "(?!\\w)"),
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE | Pattern.UNICODE_CHARACTER_CLASS));
  }

  private static String list() throws IOException {
    try (InputStream in = BannedWords.class.getResourceAsStream("banned-words.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
