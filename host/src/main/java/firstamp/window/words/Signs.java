package firstamp.window.words;

import java.util.regex.Pattern;

/**
 * Puts the signs of the window into sentences of other packages, which write for a terminal too:
 * \u00b5F for uF, \u03a9 for ohm, and a minus as long as the one of {@link Numbers}.
 */
public final class Signs {
  private static final Pattern MICRO = Pattern.compile("(?<=\\d )u(?=[FAVH]\\b)");
  private static final Pattern OHM = Pattern.compile("(?<=\\d )([kM]?)ohm\\b");

  /** Never the hyphen of a word, a tag such as P-7 or a date. */
  private static final Pattern MINUS = Pattern.compile("(?<![^\\s(:;,\u201c\"])-(?=\\d)");

  private Signs() {}

  public static String in(String text) {
    String micro = MICRO.matcher(text).replaceAll("\u00b5");
    String ohm = OHM.matcher(micro).replaceAll("$1\u03a9");
    return MINUS.matcher(ohm).replaceAll("\u2212");
  }
}
