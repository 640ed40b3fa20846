package firstamp;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The comments of a Java source as plain sentences. */
final class JavaComments {
  /** Text blocks, strings and characters come first: a slash in them begins no comment. */
  private static final Pattern PART =
      Pattern.compile(
          "\"\"\"[\\s\\S]*?\"\"\"|\"(?:\\\\.|[^\"\\\\\\n])*+\"|'(?:\\\\.|[^'\\\\\\n])*+'"
              + "|(?<block>/\\*[\\s\\S]*?\\*/)|(?<lines>//[^\\n]*(?:\\n[ \\t]*//[^\\n]*)*)");

  private static final Pattern LEADER = Pattern.compile("(?m)^[ \\t]*(?:/\\*+|\\*+/?|//)|\\*/$");

  private JavaComments() {}

  static List<String> of(String source) {
    List<String> comments = new ArrayList<>();
    Matcher part = PART.matcher(source);
    while (part.find()) {
      String comment = part.group("block") != null ? part.group("block") : part.group("lines");
      if (comment != null) {
        comments.add(LEADER.matcher(comment).replaceAll(" ").replaceAll("\\s+", " ").strip());
      }
    }
    return comments;
  }
}
