package firstamp.sheet;

import firstamp.model.text.Worded;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;

/**
 * What can be asked for a new job sheet. The {@link #first} ones are asked always, the rest only
 * where the person wants to give more. Texts are in {@code questions.properties}.
 */
public enum SheetQuestion {
  /** Name of the set. */
  WHAT("what", true, ""),
  /** Volts of its supply. */
  VOLTS("volts", true, "V"),
  /** Pole of the supply that is the chassis. */
  CHASSIS("chassis", true, "", "negative", "positive"),
  /** What feeds it. */
  FEED(
      "feed",
      true,
      "",
      "bench",
      "battery",
      "adaptor",
      "mains-transformer",
      "lamp",
      "variable-transformer",
      "mains-direct"),
  /** Fuse: with it there is a limit of current that follows from the set. */
  FUSE("fuse", true, "A"),
  /** Kind of set. */
  KIND("kind", false, "", "recorder", "receiver", "amplifier", "computer", "other"),
  /** Where the probe sits in a set with a mains transformer. */
  PLACE(
      "place",
      false,
      "",
      "reservoir-fed",
      "before-reservoir",
      "after-reservoir",
      "not-connected",
      "supply-lead"),
  /** Current limit of the bench supply. */
  SUPPLY_LIMIT("supply-limit", false, "A"),
  /** Power on the label. */
  LABEL("label", false, "W"),
  /** Current of an earlier good power-up. */
  IDLE("idle", false, "A"),
  /** All filter capacitors together. */
  CAPACITANCE("capacitance", false, "uF"),
  /** Whether it has a motor. */
  MOTOR("motor", false, "", "yes", "no"),
  /** Whether a valve rectifies. */
  VALVE_RECTIFIER("valve-rectifier", false, "", "yes", "no");

  private static final String BUNDLE = "firstamp.sheet.questions";

  private final String id;
  private final boolean first;
  private final String unit;
  private final List<Choice> choices;

  SheetQuestion(String id, boolean first, String unit, String... choices) {
    this.id = id;
    this.first = first;
    this.unit = unit;
    List<Choice> list = new ArrayList<>();
    for (String choice : choices) {
      list.add(new Choice(choice));
    }
    this.choices = List.copyOf(list);
  }

  /**
   * One of the answers to choose from.
   *
   * @param id answer as it is taken and written
   */
  public record Choice(String id) {}

  /** Name of the option on the command line, and of the field in the form. */
  public String id() {
    return id;
  }

  /** Whether it is always asked. */
  public boolean first() {
    return first;
  }

  /** Unit of a number; empty where no number is asked for. */
  public String unit() {
    return unit;
  }

  /** What can be chosen; empty = a text or a number. */
  public List<Choice> choices() {
    return choices;
  }

  /** The question. */
  public String words(Locale locale) {
    return plain(locale, id + ".ask");
  }

  /** Where the answer can be found. */
  public String hint(Locale locale) {
    return plain(locale, id + ".hint");
  }

  /** One choice in words. */
  public String words(Choice choice, Locale locale) {
    return plain(locale, id + "." + choice.id());
  }

  private static String plain(Locale locale, String key) {
    return ResourceBundle.getBundle(
            BUNDLE,
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES))
        .getString(key);
  }

  /** How many are always asked. */
  public static int firstCount() {
    return (int) Arrays.stream(values()).filter(SheetQuestion::first).count();
  }

  /** What will not be watched without an answer. */
  Worded costWords() {
    return word(id + ".cost");
  }

  /** A reason, a cost or a refusal around the questions. */
  static Worded word(String key) {
    return Worded.of(BUNDLE, key);
  }
}
