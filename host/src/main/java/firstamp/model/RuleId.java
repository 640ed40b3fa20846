package firstamp.model;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The rules of the host, with what they do unless the job sheet states otherwise.
 *
 * <p>On-delays of rules about supply and rails are longer than what a healthy set does in passing,
 * deadbands 2 to 5 % (common practice for supplies and rails, no source). So are all other usual
 * values here: 2.5 ohm for a short, 2 mA for no draw, 10 % for unsteady, 20 % for a fall, a third
 * of the ripple, 0.1 V at a loudspeaker, 0.5 s of silence: common practice, no source. A parameter
 * without a default ({@link Parameter#usual()} null) must be on the sheet, else the rule is not
 * watched.
 */
public enum RuleId {
  /** The probe switched off by current. */
  OVER_CURRENT("over-current", Scope.SUPPLY, Rest.NONE, Priority.HIGH, "alarm", 0, 0, 0),
  /** The set draws as a short does, or the supply is limiting. */
  SHORT(
      "short",
      Scope.SUPPLY,
      Rest.CHARGED,
      Priority.HIGH,
      "off",
      100,
      500,
      5,
      new Parameter("belowOhm", 2.5, 0.01, 1000)),
  /** Nothing flows. */
  NO_DRAW(
      "no-draw",
      Scope.SUPPLY,
      Rest.AFTER,
      Priority.MEDIUM,
      "alarm",
      100,
      500,
      5,
      new Parameter("belowA", 0.002, 0.0002, 10),
      new Parameter("afterMs", 500.0, 0, 600_000)),
  /** The current climbs slowly. */
  CURRENT_CREEP(
      "current-creep",
      Scope.SUPPLY,
      Rest.FROM,
      Priority.MEDIUM,
      "alarm",
      0,
      5000,
      5,
      new Parameter("overAPerMin", null, 0.0001, 10),
      new Parameter("forMs", 10_000.0, 1000, 600_000),
      new Parameter("fromMs", 5000.0, 0, 3_600_000)),
  /** A rail, or the supply, is outside its window. */
  RAIL_WINDOW("rail-window", Scope.RAIL, Rest.SETTLED, Priority.MEDIUM, "alarm", 100, 500, 2),
  /** A rail is not there when it should be. */
  RAIL_LATE("rail-late", Scope.RAIL, Rest.SETTLED, Priority.MEDIUM, "alarm", 0, 200, 0),
  /** A rail does not stand still. */
  RAIL_UNSTEADY(
      "rail-unsteady",
      Scope.RAIL,
      Rest.SETTLED,
      Priority.LOW,
      "alarm",
      200,
      1000,
      5,
      new Parameter("percent", 10.0, 0.5, 100)),
  /** A rail has more ripple than allowed. */
  RIPPLE("ripple", Scope.RAIL, Rest.SETTLED, Priority.LOW, "alarm", 500, 1000, 5),
  /** A rail is high and has hardly any ripple: its load is off. */
  RIPPLE_TOO_LOW(
      "ripple-too-low",
      Scope.RAIL,
      Rest.SETTLED,
      Priority.MEDIUM,
      "alarm",
      500,
      1000,
      5,
      new Parameter("belowShare", 0.3, 0.01, 1)),
  /** A rail, or the supply, is above its maximum voltage. */
  OVER_VOLTAGE("over-voltage", Scope.RAIL, Rest.NONE, Priority.HIGH, "off", 20, 500, 2),
  /** A rail, or the supply, is the wrong way round. */
  WRONG_POLARITY("wrong-polarity", Scope.RAIL, Rest.NONE, Priority.HIGH, "off", 20, 500, 5),
  /** A rail fell and the supply did not. */
  RAIL_NOT_FOLLOWING(
      "rail-not-following",
      Scope.RAIL,
      Rest.SETTLED,
      Priority.MEDIUM,
      "alarm",
      50,
      1000,
      5,
      new Parameter("percent", 20.0, 1, 100)),
  /** A rail climbs although the switch is open. */
  RAIL_CLIMBING(
      "rail-climbing",
      Scope.RAIL,
      Rest.OPENED,
      Priority.HIGH,
      "alarm",
      200,
      500,
      5,
      new Parameter("overV", 1.0, 0.05, 60)),
  /** DC on the loudspeaker output. */
  OUTPUT_OFFSET(
      "output-offset",
      Scope.RAIL,
      Rest.AUDIO,
      Priority.MEDIUM,
      "alarm",
      200,
      500,
      5,
      new Parameter("input", null, 1, 3),
      new Parameter("overV", 0.1, 0.01, 60)),
  /** The level meter shows signal and the head gets less than it should. */
  HEAD_BELOW_METER(
      "head-below-meter", Scope.LEVEL, Rest.AUDIO, Priority.MEDIUM, "alarm", 800, 1000, 2),
  /** Hum at the head. */
  HUM(
      "hum",
      Scope.LEVEL,
      Rest.AUDIO,
      Priority.LOW,
      "alarm",
      1000,
      1000,
      2,
      new Parameter("aboveDbv", null, -140, 20)),
  /** An input of the probe is off scale. */
  INPUT_CLIPPED("input-clipped", Scope.RAIL, Rest.NONE, Priority.LOW, "alarm", 50, 500, 0),
  /** A rail is gone from one reading to the next and the current stays: look at the clip. */
  CLIP_OFF("clip-off", Scope.RAIL, Rest.NONE, Priority.MEDIUM, "alarm", 20, 200, 0),
  /** Nothing comes from the probe. */
  PROBE_SILENT(
      "probe-silent",
      Scope.SESSION,
      Rest.ALWAYS,
      Priority.HIGH,
      "alarm",
      0,
      0,
      0,
      new Parameter("afterMs", 500.0, 50, 60_000)),
  /** The bench log is not being written. */
  NOT_LOGGING("not-logging", Scope.SESSION, Rest.ALWAYS, Priority.MEDIUM, "alarm", 0, 0, 0),
  /** Current flows although the switch is open. */
  SWITCH_FAILED("switch-failed", Scope.SUPPLY, Rest.OPENED, Priority.HIGH, "off", 200, 500, 5);

  /** What a rule is about. */
  public enum Scope {
    /** The supply; rests after the switch opens. */
    SUPPLY,
    /** A rail (0 = the supply); rests after the switch opens. */
    RAIL,
    /** Head and meter; rests after the switch opens. */
    LEVEL,
    /** Cable and log; never rests. */
    SESSION
  }

  /**
   * A number of one rule alone.
   *
   * @param name key in the job sheet
   * @param usual default, null = must be given
   * @param lowest allowed
   * @param highest allowed
   */
  public record Parameter(String name, Double usual, double lowest, double highest) {}

  private static final Map<String, RuleId> BY_ID = byId();

  private final String id;
  private final Scope scope;
  private final Rest rest;
  private final JobSheet.RuleSettings usual;
  private final Map<String, Parameter> parameters = new LinkedHashMap<>();

  RuleId(
      String id,
      Scope scope,
      Rest rest,
      Priority priority,
      String action,
      double onDelayMs,
      double offDelayMs,
      double deadbandPercent,
      Parameter... parameters) {
    this.id = id;
    this.scope = scope;
    this.rest = rest;
    Map<String, Double> numbers = new HashMap<>();
    for (Parameter parameter : parameters) {
      this.parameters.put(parameter.name(), parameter);
      if (parameter.usual() != null) {
        numbers.put(parameter.name(), parameter.usual());
      }
    }
    this.usual =
        new JobSheet.RuleSettings(
            true, onDelayMs, offDelayMs, deadbandPercent, false, priority.id(), action, numbers);
  }

  /** Identifier in the job sheet, in JSON lines and in the log. */
  public String id() {
    return id;
  }

  /** What it is about. */
  public Scope scope() {
    return scope;
  }

  /** What it waits for before it is judged. */
  public Rest rest() {
    return rest;
  }

  /**
   * Microseconds from closing until it is judged.
   *
   * @param effective sheet with its defaults filled in
   * @param rail 1 to 3, 0 = the supply or no rail
   */
  public long restMicros(JobSheet effective, int rail) {
    return Math.round(rest.untilMs(effective, this, rail) * 1000);
  }

  /** Its own parameters by key, in a fixed order. */
  public Map<String, Parameter> parameters() {
    return Map.copyOf(parameters);
  }

  /** The rule with this identifier, null if there is none. */
  public static RuleId of(String id) {
    return BY_ID.get(id);
  }

  /**
   * What the sheet states about this rule, and the default where it states nothing: no null left.
   */
  public JobSheet.RuleSettings settings(JobSheet sheet) {
    JobSheet.RuleSettings said = sheet.rules().get(id);
    if (said == null) {
      return usual;
    }
    Map<String, Double> numbers = new HashMap<>(usual.numbers());
    numbers.putAll(said.numbers());
    return new JobSheet.RuleSettings(
        or(said.enabled(), usual.enabled()),
        or(said.onDelayMs(), usual.onDelayMs()),
        or(said.offDelayMs(), usual.offDelayMs()),
        or(said.deadbandPercent(), usual.deadbandPercent()),
        or(said.latch(), usual.latch()),
        or(said.priority(), usual.priority()),
        or(said.action(), usual.action()),
        numbers);
  }

  private static <T> T or(T said, T usual) {
    return said == null ? usual : said;
  }

  private static Map<String, RuleId> byId() {
    Map<String, RuleId> map = new HashMap<>();
    for (RuleId rule : values()) {
      map.put(rule.id, rule);
    }
    return Map.copyOf(map);
  }
}
