package firstamp.sheet;

import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A number as people type it: "9", "9 V", "9,5", "12 mA", "4700uF". */
final class Amount {
  private static final Pattern FORM =
      Pattern.compile("([+-]?\\d+(?:[.,]\\d+)?)\\s*([munkp\u00b5\u03bc]?)([a-z]*)");

  private static final Map<String, Double> PREFIXES =
      Map.of("m", 1e-3, "u", 1e-6, "\u00b5", 1e-6, "\u03bc", 1e-6, "n", 1e-9, "k", 1e3, "", 1.0);

  private Amount() {}

  /**
   * The number in the unit that is asked for; null = it is none.
   *
   * @param unit V, A, W or uF; a bare number is taken in it
   */
  static Double of(String typed, String unit) {
    Matcher form = FORM.matcher(typed.trim().toLowerCase(Locale.ROOT));
    if (!form.matches()) {
      return null;
    }
    double number = Double.parseDouble(form.group(1).replace(',', '.'));
    String prefix = form.group(2);
    String named = form.group(3);
    if (prefix.isEmpty() && named.isEmpty()) {
      return number;
    }
    boolean micro = unit.startsWith("u");
    String base = (micro ? unit.substring(1) : unit).toLowerCase(Locale.ROOT);
    boolean spelled = spelled(named).equals(base);
    Double scale = PREFIXES.get(prefix);
    if (!spelled || scale == null) {
      return null;
    }
    double inBase = number * scale;
    // Through decimal text: 12 mA is 0.012 A and not a neighbour of it.
    return Double.parseDouble(String.format(Locale.ROOT, "%.9g", micro ? inBase * 1e6 : inBase));
  }

  private static String spelled(String named) {
    return switch (named) {
      case "volt", "volts" -> "v";
      case "amp", "amps", "ampere" -> "a";
      case "watt", "watts" -> "w";
      case "fd", "farad" -> "f";
      default -> named;
    };
  }
}
