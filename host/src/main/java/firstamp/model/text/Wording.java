package firstamp.model.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * What is to be said, before any language: phrases of one bundle, a space between them. {@link
 * Phrases} makes the text. Immutable.
 *
 * @param phrases in their order, never empty
 */
public record Wording(List<Phrase> phrases) {
  /** Copies the list. */
  public Wording {
    phrases = List.copyOf(phrases);
  }

  /** A single phrase. */
  public static Wording of(String key, Object... values) {
    return new Wording(List.of(new Phrase(key, values)));
  }

  /** The same with another phrase behind it. */
  public Wording and(String key, Object... values) {
    List<Phrase> more = new ArrayList<>(phrases);
    more.add(new Phrase(key, values));
    return new Wording(more);
  }

  /**
   * A sentence, or a part of one.
   *
   * @param key in the bundle
   * @param values what goes into it: a number (written with three digits), a {@link Quantity}, a
   *     {@link Written} one, a further phrase, something {@link Worded}, or text as it is
   */
  public record Phrase(String key, List<Object> values) {
    /** Copies the values. */
    public Phrase {
      values = List.copyOf(values);
    }

    /** With these values. */
    public Phrase(String key, Object... values) {
      this(key, Arrays.stream(values).map(each -> each == null ? "" : each).toList());
    }
  }

  /**
   * A number with its unit.
   *
   * @param value in the unit
   * @param unit as it is written behind it
   */
  public record Quantity(double value, String unit) {
    /** A value; a current and volts under one in thousandths. */
    public static Quantity of(double value, String unit) {
      return switch (unit) {
        case "A" -> amps(value);
        case "V" ->
            Math.abs(value) < 1 ? new Quantity(value * 1000, "mV") : new Quantity(value, unit);
        default -> new Quantity(value, unit);
      };
    }

    /** A current as {@link #amps(double)} writes it, anything else in its unit. */
    public static Quantity amps(double value, String unit) {
      return unit.equals("A") ? amps(value) : new Quantity(value, unit);
    }

    /** Whether both are written alike. */
    public boolean looksLike(Quantity other) {
      return unit.equals(other.unit) && Numbers.text(value).equals(Numbers.text(other.value));
    }

    /** A current, in mA or A as {@link Numbers#amps} writes it. */
    public static Quantity amps(double amps) {
      return Numbers.inMilliamps(amps) ? new Quantity(amps * 1000, "mA") : new Quantity(amps, "A");
    }
  }

  /**
   * A number with digits of its own, written with a decimal point.
   *
   * @param digits as English writes it
   */
  public record Written(String digits) {
    /** Written by a format of {@link String#format}. */
    public static Written of(String format, double value) {
      return new Written(String.format(Locale.ROOT, format, value));
    }
  }
}
