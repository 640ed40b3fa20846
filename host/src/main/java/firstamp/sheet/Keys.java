package firstamp.sheet;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Every key of the job sheet with its allowed values. The schema in {@code
 * schemas/job-sheet.schema.json} has the same; a test compares them.
 */
final class Keys {
  static final Map<String, Object> TOP = keys();
  static final Map<String, Object> SET = keys();
  static final Map<String, Object> SUPPLY = keys();
  static final Map<String, Object> LIMITS = keys();
  static final Map<String, Object> RAIL = keys();
  static final Map<String, Object> LEVELS = keys();
  static final Map<String, Object> CURVE_POINT = keys();
  static final Map<String, Object> RULE = keys();
  static final Map<String, Object> STEP = keys();
  static final Map<String, Object> PATH = keys();
  static final Map<String, Object> POINT = keys();
  static final Map<String, Object> JOINT = keys();
  static final Map<String, Object> MODE = keys();
  static final Map<String, Object> MODE_LEVEL = keys();
  static final Map<String, Object> WIRE = keys();
  static final Map<String, Object> LANDING = keys();

  /** Longest name. */
  static final int LONGEST_TEXT = 200;

  /** Kind of a value that is not a number. */
  enum Kind {
    /** A name. */
    TEXT,
    /** true or false. */
    FLAG,
    /** An object with keys of its own. */
    OBJECT,
    /** A list. */
    LIST
  }

  static {
    TOP.put("sheet", new Range(1, 1, ""));
    TOP.put("set", Kind.OBJECT);
    TOP.put("supply", Kind.OBJECT);
    TOP.put("limits", Kind.OBJECT);
    TOP.put("rails", Kind.LIST);
    TOP.put("levels", Kind.OBJECT);
    TOP.put("rules", Kind.OBJECT);
    TOP.put("path", Kind.OBJECT);
    TOP.put("unknownWires", Kind.LIST);
    TOP.put("steps", Kind.LIST);

    SET.put("name", Kind.TEXT);
    SET.put("kind", List.of("recorder", "receiver", "amplifier", "computer", "other"));
    SET.put("chassis", List.of("negative", "positive"));
    SET.put("motor", Kind.FLAG);
    SET.put("motorOhm", new Range(0.1, 10_000, "ohm"));
    SET.put("valveRectifier", Kind.FLAG);
    SET.put("leakageA", new Range(0.000001, 1, "A"));

    SUPPLY.put("kind", List.of("bench", "battery", "adaptor", "mains-transformer"));
    SUPPLY.put(
        "probeSits",
        List.of(
            "supply-lead",
            "reservoir-fed",
            "before-reservoir",
            "after-reservoir",
            "not-connected"));
    SUPPLY.put("nominalV", new Range(0.5, 60, "V"));
    SUPPLY.put("minV", new Range(0.1, 60, "V"));
    SUPPLY.put("maxV", new Range(0.1, 69, "V"));
    SUPPLY.put("limitA", new Range(0.001, 100, "A"));
    SUPPLY.put("fuseA", new Range(0.01, 63, "A"));
    SUPPLY.put("look", Kind.FLAG);
    SUPPLY.put("through", List.of("direct", "lamp", "variable-transformer"));
    SUPPLY.put("labelW", new Range(0.01, 2000, "W"));
    SUPPLY.put("idleA", new Range(0.0005, 12, "A"));
    SUPPLY.put("capacitanceUf", new Range(0.01, 1_000_000, "uF"));

    LIMITS.put("inrushA", new Range(0.001, 100, "A"));
    LIMITS.put("inrushMs", new Range(1, 10_000, "ms"));
    LIMITS.put("runningA", new Range(0.001, 100, "A"));
    LIMITS.put("i2tA2s", new Range(0.00001, 1000, "A2s"));
    LIMITS.put("peakA", new Range(0.001, 100, "A"));
    LIMITS.put("startA", new Range(0.05, 12, "A"));
    LIMITS.put("startMs", new Range(1, 1000, "ms"));

    RAIL.put("input", new Range(1, 3, ""));
    RAIL.put("name", Kind.TEXT);
    RAIL.put("nominalV", new Range(-60, 60, "V"));
    RAIL.put("tolerancePercent", new Range(0.1, 100, "percent"));
    RAIL.put("settleMs", new Range(1, 600_000, "ms"));
    RAIL.put("overV", new Range(0.1, 60, "V"));
    RAIL.put("rippleMaxVrms", new Range(0.0001, 60, "V"));
    RAIL.put("capacitanceUf", new Range(0.01, 1_000_000, "uF"));
    RAIL.put("rectifier", List.of("none", "half", "full"));

    LEVELS.put("toneHz", new Range(30, 1600, "Hz"));
    LEVELS.put("headOhm", new Range(0.01, 100_000, "ohm"));
    LEVELS.put("expectedDb", new Range(-60, 120, "dB"));
    LEVELS.put("marginDb", new Range(0.1, 60, "dB"));
    LEVELS.put("meterSignalDbv", new Range(-100, 20, "dBV"));
    LEVELS.put("fromMs", new Range(0, 3_600_000, "ms"));
    LEVELS.put("meterFullV", new Range(-60, 60, "V"));
    LEVELS.put("expectedCurve", Kind.LIST);
    CURVE_POINT.put("hz", new Range(30, 1600, "Hz"));
    CURVE_POINT.put("db", new Range(-60, 120, "dB"));

    STEP.put("supplyV", new Range(0.1, 60, "V"));
    STEP.put("limitA", new Range(0.0001, 12, "A"));
    STEP.put("dwellMs", new Range(0, 86_400_000, "ms"));
    STEP.put("settledPercentPerMin", new Range(0.01, 100, "percent"));
    STEP.put("belowA", new Range(0.00001, 12, "A"));
    STEP.put("timeoutMs", new Range(1000, 86_400_000, "ms"));
    STEP.put("forming", Kind.FLAG);

    RULE.put("enabled", Kind.FLAG);
    RULE.put("onDelayMs", new Range(0, 600_000, "ms"));
    RULE.put("offDelayMs", new Range(0, 600_000, "ms"));
    RULE.put("deadbandPercent", new Range(0, 50, "percent"));
    RULE.put("latch", Kind.FLAG);
    RULE.put("priority", List.of("high", "medium", "low"));
    RULE.put("action", List.of("alarm", "off"));

    PATH.put("points", Kind.LIST);
    PATH.put("joints", Kind.LIST);
    PATH.put("modes", Kind.LIST);
    POINT.put("name", Kind.TEXT);
    POINT.put("expectedDbv", new Range(-140, 40, "dBV"));
    POINT.put("effort", new Range(1, 100, ""));
    POINT.put("byMode", Kind.LIST);
    MODE_LEVEL.put("mode", Kind.TEXT);
    MODE_LEVEL.put("expectedDbv", new Range(-140, 40, "dBV"));
    MODE.put("name", Kind.TEXT);
    MODE.put("source", Kind.TEXT);
    JOINT.put("name", Kind.TEXT);
    JOINT.put("from", Kind.TEXT);
    JOINT.put("to", Kind.TEXT);
    JOINT.put(
        "kind", List.of("wire", "switch", "capacitor", "stage", "control", "transformer", "loop"));
    JOINT.put("modes", Kind.LIST);
    JOINT.put("weight", new Range(0.001, 1000, ""));
    WIRE.put("name", Kind.TEXT);
    WIRE.put("colour", Kind.TEXT);
    WIRE.put("build", Kind.TEXT);
    WIRE.put("reachMm", new Range(0, 10_000, "mm"));
    WIRE.put("foundAt", Kind.TEXT);
    WIRE.put("places", Kind.LIST);
    LANDING.put("name", Kind.TEXT);
    LANDING.put(
        "kind",
        List.of(
            "signal", "spare", "chassis", "return", "switch", "rail", "motor", "head", "meter",
            "base"));
    LANDING.put("ifWrong", Kind.TEXT);
  }

  private Keys() {}

  private static Map<String, Object> keys() {
    return new LinkedHashMap<>();
  }
}
