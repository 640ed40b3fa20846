package firstamp.window.words;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.Locale;

/** Writes measured values with as many places as mean something at the bench. */
public final class Numbers {
  private final DecimalFormatSymbols symbols;

  public Numbers(Locale locale) {
    symbols = DecimalFormatSymbols.getInstance(locale);
    symbols.setMinusSign('\u2212');
  }

  /** A value and its unit. */
  public record Written(String number, String unit) {
    @Override
    public String toString() {
      return unit.isEmpty() ? number : number + " " + unit;
    }
  }

  public Written amps(double amps) {
    double size = Math.abs(amps);
    // Edges lie where rounding would write a further digit.
    if (size < 0.09995) {
      return new Written(fixed(amps * 1000, 1), "mA");
    }
    if (size < 0.9995) {
      return new Written(fixed(amps * 1000, 0), "mA");
    }
    return new Written(fixed(amps, size < 9.995 ? 2 : 1), "A");
  }

  public Written volts(double volts) {
    return new Written(fixed(volts, Math.abs(volts) < 9.995 ? 2 : 1), "V");
  }

  public Written decibels(double decibels, String unit) {
    return new Written(fixed(decibels, 1), unit);
  }

  public Written microamps(double microamps) {
    return new Written(fixed(microamps, Math.abs(microamps) < 9.95 ? 1 : 0), "\u00b5A");
  }

  public Written ohms(double ohms) {
    return Math.abs(ohms) >= 999.5
        ? new Written(short3(ohms / 1000), "k\u03a9")
        : new Written(short3(ohms), "\u03a9");
  }

  public Written microfarads(double microfarads) {
    double size = Math.abs(microfarads);
    double step = size < 999.5 ? 1 : StrictMath.pow(10, Math.floor(StrictMath.log10(size)) - 2);
    return new Written(
        short3(size < 999.5 ? microfarads : Math.rint(microfarads / step) * step), "\u00b5F");
  }

  /** A value in a unit as an alarm or trip names it. */
  public Written inUnit(double value, String unit) {
    return switch (unit == null ? "" : unit) {
      case "A" -> amps(value);
      case "V" -> volts(value);
      case "ohm" -> ohms(value);
      case "dB", "dBV" -> decibels(value, unit);
      case "A2s" -> new Written(short3(value), "A\u00b2s");
      case "" -> new Written(short3(value), "");
      default -> new Written(short3(value), unit);
    };
  }

  /** A time on the axis or of an event: milliseconds under a second, seconds, then minutes. */
  public String moment(double ms) {
    double size = Math.abs(ms);
    if (size < 1000) {
      return fixed(ms, size < 99.5 && size > 0.05 ? 1 : 0) + " ms";
    }
    if (size < 60_000) {
      return fixed(ms / 1000, 2) + " s";
    }
    return (ms < 0 ? "\u2212" : "") + clock(size);
  }

  /** Elapsed time as minutes and seconds, with hours when there are some. */
  public String clock(double ms) {
    long seconds = (long) Math.floor(Math.max(0, ms) / 1000);
    long hours = seconds / 3600;
    return hours == 0
        ? String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60)
        : String.format(Locale.ROOT, "%d:%02d:%02d", hours, seconds / 60 % 60, seconds % 60);
  }

  /** A number with three significant digits and no idle zeros. */
  public String short3(double value) {
    if (value == 0) {
      return "0";
    }
    int places = Math.max(0, 2 - (int) Math.floor(Math.log10(Math.abs(value))));
    return cleanZero(atMost(Math.min(6, places)).format(value));
  }

  /** A number with four significant digits and no idle zeros, as a meter shows it. */
  public String short4(double value) {
    if (value == 0) {
      return "0";
    }
    int places = Math.max(0, 3 - (int) Math.floor(Math.log10(Math.abs(value))));
    return cleanZero(atMost(Math.min(7, places)).format(value));
  }

  /** Without places there is no point either: the pattern "0." would write one. */
  private DecimalFormat atMost(int places) {
    return new DecimalFormat(places == 0 ? "0" : "0." + "#".repeat(places), symbols);
  }

  /** A number with a fixed count of places. */
  public String fixed(double value, int places) {
    DecimalFormat format =
        new DecimalFormat(places == 0 ? "0" : "0." + "0".repeat(places), symbols);
    return cleanZero(format.format(value));
  }

  /** Never writes a minus in front of nothing but zeros. */
  private static String cleanZero(String text) {
    if (text.charAt(0) == '\u2212' && text.chars().noneMatch(c -> c >= '1' && c <= '9')) {
      return text.substring(1);
    }
    return text;
  }
}
