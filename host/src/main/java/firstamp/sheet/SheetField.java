package firstamp.sheet;

import firstamp.model.RuleId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * One plain entry of the job sheet, for whoever shows the sheet as a form; lists are none.
 *
 * @param key in its part
 * @param kind of value
 * @param choices of a {@link Kind#CHOICE}, else empty
 * @param low lowest number, null = no number
 * @param high highest number, null = no number
 * @param unit of a number, may be empty
 */
public record SheetField(
    String key, Kind kind, List<String> choices, Double low, Double high, String unit) {

  /** Kinds of value. */
  public enum Kind {
    /** A name. */
    TEXT,
    /** true or false. */
    FLAG,
    /** One of some words. */
    CHOICE,
    /** A number in a range. */
    NUMBER
  }

  /** Parts of the sheet that are made of plain entries. */
  public enum Part {
    /** The equipment. */
    SET(Keys.SET),
    /** What feeds it. */
    SUPPLY(Keys.SUPPLY),
    /** Limits of the supply current. */
    LIMITS(Keys.LIMITS),
    /** One rail. */
    RAIL(Keys.RAIL),
    /** Head and meter. */
    LEVELS(Keys.LEVELS);

    private final Map<String, Object> keys;

    Part(Map<String, Object> keys) {
      this.keys = keys;
    }
  }

  /** The entries of a part, in the order of the format. */
  public static List<SheetField> of(Part part) {
    return of(part.keys);
  }

  /** The entries of a rule: what all rules have, then its own numbers. */
  public static List<SheetField> of(RuleId rule) {
    List<SheetField> fields = new ArrayList<>(of(Keys.RULE));
    rule.parameters().values().stream()
        .sorted((one, other) -> one.name().compareTo(other.name()))
        .forEach(
            parameter ->
                fields.add(
                    new SheetField(
                        parameter.name(),
                        Kind.NUMBER,
                        List.of(),
                        parameter.lowest(),
                        parameter.highest(),
                        "")));
    return fields;
  }

  private static List<SheetField> of(Map<String, Object> keys) {
    List<SheetField> fields = new ArrayList<>();
    keys.forEach(
        (key, allowed) -> {
          if (allowed != Keys.Kind.LIST && allowed != Keys.Kind.OBJECT) {
            fields.add(field(key, allowed));
          }
        });
    return fields;
  }

  private static SheetField field(String key, Object allowed) {
    if (allowed instanceof Range range) {
      return new SheetField(key, Kind.NUMBER, List.of(), range.low(), range.high(), range.unit());
    }
    if (allowed instanceof List<?> words) {
      return new SheetField(
          key, Kind.CHOICE, words.stream().map(String::valueOf).toList(), null, null, "");
    }
    return new SheetField(
        key, allowed == Keys.Kind.FLAG ? Kind.FLAG : Kind.TEXT, List.of(), null, null, "");
  }
}
