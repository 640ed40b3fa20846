package firstamp.analysis.figures;

import firstamp.model.text.Numbers;
import java.util.List;
import java.util.Locale;

/** Figures with their units, three digits, as written in sentences: 118 mA, 2200 uF, 0.5 s. */
public final class FigureText {
  private static final String[] PREFIXES = {"u", "m", "", "k"};
  private static final double[] FACTORS = {1e-6, 1e-3, 1, 1e3};

  /** Units that carry a prefix. */
  private static final List<String> PREFIXED = List.of("A", "V", "C", "J", "ohm");

  private FigureText() {}

  /** A value in the unit, with the prefix that leaves one to three digits before the point. */
  public static String of(double value, String unit) {
    int prefix = prefix(value);
    return digits(value / FACTORS[prefix]) + " " + PREFIXES[prefix] + unit;
  }

  private static int prefix(double value) {
    if (value == 0) {
      return 2;
    }
    int prefix = 0;
    while (prefix < FACTORS.length - 1 && Math.abs(value) >= FACTORS[prefix + 1] * 0.99995) {
      prefix++;
    }
    return prefix;
  }

  /**
   * A value and its plus-minus in the same unit: two digits of the plus-minus, and the value to the
   * same place (JCGM 100:2008, 7.2.6).
   *
   * @param value with its unit
   * @param plusMinus with its unit
   */
  public record Sure(String value, String plusMinus) {
    /** Written in the unit, with the prefix that suits the value. */
    public static Sure of(double value, double plusMinus, String unit) {
      boolean prefixed = PREFIXED.contains(unit);
      int prefix = prefixed ? prefix(value) : 2;
      double factor = prefixed ? FACTORS[prefix] : 1;
      String shown = prefixed ? PREFIXES[prefix] + unit : unit;
      double magnitude = Math.floor(Math.log10(plusMinus / factor));
      int decimals = (int) Math.max(0, Math.min(6, 1 - magnitude));
      return new Sure(
          fixed(value / factor, decimals) + " " + shown,
          fixed(plusMinus / factor, decimals) + " " + shown);
    }

    private static String fixed(double value, int decimals) {
      return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
  }

  /** Ampere. */
  public static String amps(double value) {
    return Numbers.amps(value);
  }

  /** Volt. */
  public static String volts(double value) {
    return of(value, "V");
  }

  /** Milliseconds; seconds from one on. */
  public static String millis(double ms) {
    return ms < 1000 ? digits(ms) + " ms" : digits(ms / 1000) + " s";
  }

  /** Ohm, without milliohms: those read like a typing error beside ohms. */
  public static String ohms(double value) {
    return value < 1 ? Numbers.text(value) + " ohm" : of(value, "ohm");
  }

  /** How long it was on: "26 ms", then minutes and seconds, "0:12", "1:02:07". */
  public static String clock(double ms) {
    if (ms < 1000) {
      return millis(ms);
    }
    long seconds = (long) (ms / 1000);
    String ofHour = String.format(Locale.ROOT, "%02d:%02d", seconds / 60 % 60, seconds % 60);
    return seconds < 3600 ? ofHour.replaceFirst("^0", "") : seconds / 3600 + ":" + ofHour;
  }

  /** Microfarad, never with a prefix. */
  public static String microfarads(double uF) {
    return digits(uF) + " uF";
  }

  /** Decibel with one decimal and the unit given. */
  public static String decibels(double db, String unit) {
    return String.format(Locale.ROOT, "%.1f %s", db, unit);
  }

  /** Three significant digits without an exponent. */
  public static String digits(double value) {
    double magnitude = Math.abs(value);
    int decimals = magnitude >= 99.95 ? 0 : magnitude >= 9.995 ? 1 : 2;
    if (magnitude >= 999.5) {
      double step = StrictMath.pow(10, Math.floor(StrictMath.log10(magnitude)) - 2);
      return String.format(Locale.ROOT, "%.0f", Math.rint(value / step) * step);
    }
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("[.]$", "") : text;
  }
}
