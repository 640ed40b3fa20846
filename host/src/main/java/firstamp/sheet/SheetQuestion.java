package firstamp.sheet;

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

  private static final ResourceBundle WORDS =
      ResourceBundle.getBundle("firstamp.sheet.questions", Locale.ROOT);

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
  public String words() {
    return WORDS.getString(id + ".ask");
  }

  /** Where the answer can be found. */
  public String hint() {
    return WORDS.getString(id + ".hint");
  }

  /** One choice in words. */
  public String words(Choice choice) {
    return WORDS.getString(id + "." + choice.id());
  }

  /** How many are always asked. */
  public static int firstCount() {
    return (int) Arrays.stream(values()).filter(SheetQuestion::first).count();
  }

  /** What will not be watched without an answer. */
  String costWords() {
    return WORDS.getString(id + ".cost");
  }

  static String word(String key) {
    return WORDS.getString(key);
  }
}
