package firstamp.model;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as people read them. */
public final class Numbers {
  private static final MathContext THREE_DIGITS = new MathContext(3);

  private Numbers() {}

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
