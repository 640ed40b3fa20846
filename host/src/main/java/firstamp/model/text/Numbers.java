package firstamp.model.text;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as people read them. */
public final class Numbers {
  private static final MathContext THREE_DIGITS = new MathContext(3);

  /** From here on rounding would write 1000 mA. */
  private static final double ONE_AMPERE = 0.9995;

  private Numbers() {}

  /** A current as every sentence and figure writes it: 9.8 mA, 130 mA, 1.02 A. */
  public static String amps(double amps) {
    return inMilliamps(amps) ? text(amps * 1000) + " mA" : text(amps) + " A";
  }

  static boolean inMilliamps(double amps) {
    return Math.abs(amps) < ONE_AMPERE && amps != 0;
  }

  /** A value in its unit; a current as {@link #amps} writes it. */
  public static String inUnit(double value, String unit) {
    return unit.equals("A") ? amps(value) : text(value) + " " + unit;
  }

  /** Three significant digits without an exponent, no zeros behind: 0.0488, 1.2, 1020, 0. */
  public static String text(double value) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    BigDecimal rounded = new BigDecimal(value).round(THREE_DIGITS);
    if (Math.abs(value) >= 1000) {
      rounded = BigDecimal.valueOf(Math.round(value));
    }
    String plain = rounded.signum() == 0 ? "0" : rounded.toPlainString();
    return plain.indexOf('.') < 0 ? plain : plain.replaceFirst("\\.?0+$", "");
  }
}
