package firstamp.model;

import java.util.List;
import java.util.Map;

/**
 * What the person says about one set: supply, limits, rails, levels, rules.
 *
 * <p>As stated: a null component was not given. Package {@code sheet} reads it from JSON, checks it
 * and fills in defaults; the same type holds the filled sheet.
 *
 * @param sheet version of the format, 1
 * @param set the equipment
 * @param supply what feeds it
 * @param limits of the supply current
 * @param rails in the order of the sheet
 * @param levels of head and meter
 * @param rules what is changed about single rules, by rule identifier
 * @param path the signal path, null = not given
 * @param unknownWires wires whose place is not known
 * @param steps of a staged bring-up, in their order
 */
public record JobSheet(
    int sheet,
    SetInfo set,
    Supply supply,
    Limits limits,
    List<Rail> rails,
    Levels levels,
    Map<String, RuleSettings> rules,
    SignalPath path,
    List<UnknownWire> unknownWires,
    List<Step> steps) {

  /** Copies the collections. */
  public JobSheet {
    steps = steps == null ? List.of() : List.copyOf(steps);
    rails = rails == null ? List.of() : List.copyOf(rails);
    rules = rules == null ? Map.of() : Map.copyOf(rules);
    unknownWires = unknownWires == null ? List.of() : List.copyOf(unknownWires);
  }

  /** A sheet without steps. */
  public JobSheet(
      int sheet,
      SetInfo set,
      Supply supply,
      Limits limits,
      List<Rail> rails,
      Levels levels,
      Map<String, RuleSettings> rules,
      SignalPath path,
      List<UnknownWire> unknownWires) {
    this(sheet, set, supply, limits, rails, levels, rules, path, unknownWires, null);
  }

  /** A sheet without signal path and unknown wires. */
  public JobSheet(
      int sheet,
      SetInfo set,
      Supply supply,
      Limits limits,
      List<Rail> rails,
      Levels levels,
      Map<String, RuleSettings> rules) {
    this(sheet, set, supply, limits, rails, levels, rules, null, null);
  }

  /**
   * One step of a staged bring-up.
   *
   * @param supplyV volts of the supply
   * @param limitA current allowed in this step
   * @param dwellMs least time at these volts
   * @param settledPercentPerMin slope under which the current has settled
   * @param belowA current that must be reached to go on
   * @param timeoutMs longest time for the step, then the switch opens
   * @param forming capacitors are formed: leakage and their heat are watched
   */
  public record Step(
      Double supplyV,
      Double limitA,
      Double dwellMs,
      Double settledPercentPerMin,
      Double belowA,
      Double timeoutMs,
      Boolean forming) {}

  /** The rail on an input, null if the sheet has none there. */
  public Rail rail(int input) {
    for (Rail rail : rails) {
      if (rail.input() == input) {
        return rail;
      }
    }
    return null;
  }

  /**
   * The equipment.
   *
   * @param name as the person calls it
   * @param kind recorder, receiver, amplifier, computer, other
   * @param chassis pole of the supply that is the chassis: negative or positive
   * @param motor whether it has a motor
   * @param valveRectifier whether a valve rectifies its mains
   * @param leakageA leakage of its germanium parts at 20 degrees Celsius
   * @param motorOhm winding of its motor, measured cold
   */
  public record SetInfo(
      String name,
      String kind,
      String chassis,
      Boolean motor,
      Boolean valveRectifier,
      Double leakageA,
      Double motorOhm) {
    /** A set without leakage and winding. */
    public SetInfo(
        String name, String kind, String chassis, Boolean motor, Boolean valveRectifier) {
      this(name, kind, chassis, motor, valveRectifier, null, null);
    }

    /** A set without entries for motor and rectifier. */
    public SetInfo(String name, String kind, String chassis) {
      this(name, kind, chassis, null, null);
    }
  }

  /**
   * What feeds the set.
   *
   * @param kind bench, battery, adaptor, mains-transformer
   * @param probeSits supply-lead, reservoir-fed, before-reservoir, after-reservoir, not-connected
   * @param nominalV volts, magnitude
   * @param minV lowest allowed
   * @param maxV highest allowed
   * @param limitA current limit of the supply
   * @param fuseA fuse
   * @param look whether the first look is made
   * @param through what the supply comes through: direct, lamp, variable-transformer
   * @param labelW power on the set's label
   * @param idleA current of an earlier good power-up
   * @param capacitanceUf all filter capacitors of the set together
   */
  public record Supply(
      String kind,
      String probeSits,
      Double nominalV,
      Double minV,
      Double maxV,
      Double limitA,
      Double fuseA,
      Boolean look,
      String through,
      Double labelW,
      Double idleA,
      Double capacitanceUf) {
    /** A supply with only the first figures. */
    public Supply(
        String kind,
        String probeSits,
        Double nominalV,
        Double minV,
        Double maxV,
        Double limitA,
        Double fuseA,
        Boolean look) {
      this(kind, probeSits, nominalV, minV, maxV, limitA, fuseA, look, null, null, null, null);
    }
  }

  /**
   * Limits of the supply current, decided in the probe.
   *
   * @param inrushA within the inrush time
   * @param inrushMs the inrush time
   * @param runningA after it
   * @param i2tA2s budget of inrush I2t @param peakA single conversions after the inrush time where
   *     the current is pulsed
   * @param startA while a motor starts, once whenever it comes
   * @param startMs how long a start may last
   */
  public record Limits(
      Double inrushA,
      Double inrushMs,
      Double runningA,
      Double i2tA2s,
      Double peakA,
      Double startA,
      Double startMs) {
    /** No limit is given. */
    public static final Limits NONE = new Limits(null, null, null, null, null);

    /** Limits of a set without a motor. */
    public Limits(Double inrushA, Double inrushMs, Double runningA, Double i2tA2s, Double peakA) {
      this(inrushA, inrushMs, runningA, i2tA2s, peakA, null, null);
    }
  }

  /**
   * One rail.
   *
   * @param input clip 1 to 3
   * @param name as the person calls it
   * @param nominalV signed against chassis
   * @param tolerancePercent of nominal
   * @param settleMs from closing
   * @param overV magnitude at which the probe trips, either sign
   * @param rippleMaxVrms highest ripple
   * @param capacitanceUf of its filter
   * @param rectifier none, half, full
   */
  public record Rail(
      int input,
      String name,
      Double nominalV,
      Double tolerancePercent,
      Double settleMs,
      Double overV,
      Double rippleMaxVrms,
      Double capacitanceUf,
      String rectifier) {}

  /**
   * Head and meter.
   *
   * @param toneHz of the test tone
   * @param headOhm resistor in series with the head
   * @param expectedDb head below meter when all is well
   * @param marginDb allowed on top
   * @param meterSignalDbv above this the meter shows signal
   * @param fromMs audio rules start, from closing
   * @param meterFullV dc volts at the meter input for full scale of the needle
   * @param expectedCurve head below meter over frequency when all is well, rising in frequency
   */
  public record Levels(
      Double toneHz,
      Double headOhm,
      Double expectedDb,
      Double marginDb,
      Double meterSignalDbv,
      Double fromMs,
      Double meterFullV,
      List<LevelPoint> expectedCurve) {
    /** Copies the list. */
    public Levels {
      expectedCurve = expectedCurve == null ? List.of() : List.copyOf(expectedCurve);
    }

    /** Levels without a curve. */
    public Levels(
        Double toneHz,
        Double headOhm,
        Double expectedDb,
        Double marginDb,
        Double meterSignalDbv,
        Double fromMs,
        Double meterFullV) {
      this(toneHz, headOhm, expectedDb, marginDb, meterSignalDbv, fromMs, meterFullV, null);
    }

    /** Levels of an audio meter. */
    public Levels(
        Double toneHz,
        Double headOhm,
        Double expectedDb,
        Double marginDb,
        Double meterSignalDbv,
        Double fromMs) {
      this(toneHz, headOhm, expectedDb, marginDb, meterSignalDbv, fromMs, null);
    }
  }

  /**
   * Head below meter at one frequency.
   *
   * @param hz frequency
   * @param db decibel
   */
  public record LevelPoint(double hz, double db) {
    /**
     * Reads a curve: straight lines over the logarithm of the frequency, the end points beyond
     * them.
     *
     * @param curve at least one point, rising in frequency
     */
    public static double between(List<LevelPoint> curve, double hz) {
      LevelPoint below = curve.get(0);
      for (LevelPoint point : curve) {
        if (point.hz >= hz) {
          double span = StrictMath.log(point.hz / below.hz);
          double share = span > 0 ? Math.max(0, StrictMath.log(hz / below.hz) / span) : 0;
          return below.db + share * (point.db - below.db);
        }
        below = point;
      }
      return below.db;
    }
  }

  /**
   * The chain from input to head.
   *
   * @param points test points that can be measured
   * @param joints what joins two of them
   * @param modes positions of the switches; empty = one, driven at the first point
   */
  public record SignalPath(List<TestPoint> points, List<Joint> joints, List<Mode> modes) {
    /** Copies the lists. */
    public SignalPath {
      points = points == null ? List.of() : List.copyOf(points);
      joints = joints == null ? List.of() : List.copyOf(joints);
      modes = modes == null ? List.of() : List.copyOf(modes);
    }
  }

  /**
   * A position of the set's switches.
   *
   * @param name record, play
   * @param source test point that is driven in it
   */
  public record Mode(String name, String source) {}

  /**
   * A point that can be measured.
   *
   * @param name as the person calls it
   * @param expectedDbv level there when all is well, null = not known
   * @param effort 1 = a clip reaches it, more = harder; null = 1
   * @param byMode the level where it differs between modes
   */
  public record TestPoint(String name, Double expectedDbv, Double effort, List<ModeLevel> byMode) {
    /** Copies the list. */
    public TestPoint {
      byMode = byMode == null ? List.of() : List.copyOf(byMode);
    }
  }

  /**
   * A level in one mode.
   *
   * @param mode by name
   * @param expectedDbv level when all is well
   */
  public record ModeLevel(String mode, Double expectedDbv) {}

  /**
   * What joins two test points.
   *
   * @param name as the person calls it
   * @param from test point nearer the input
   * @param to test point nearer the head
   * @param kind wire, switch, capacitor, stage, control, transformer, loop; null = stage
   * @param modes in which it carries the signal, empty = always
   * @param weight how often it is the one at fault, null = as its kind
   */
  public record Joint(
      String name, String from, String to, String kind, List<String> modes, Double weight) {
    /** Copies the list. */
    public Joint {
      modes = modes == null ? List.of() : List.copyOf(modes);
    }
  }

  /**
   * A wire whose place is not known.
   *
   * @param name as the person calls it
   * @param colour to find it again
   * @param build plain, screened, twisted, thick
   * @param reachMm how far its free end reaches
   * @param foundAt where its free end was found
   * @param places where it might belong
   */
  public record UnknownWire(
      String name,
      String colour,
      String build,
      Double reachMm,
      String foundAt,
      List<Landing> places) {
    /** Copies the list. */
    public UnknownWire {
      places = places == null ? List.of() : List.copyOf(places);
    }
  }

  /**
   * A place where an unknown wire might belong.
   *
   * @param name as the person calls it
   * @param kind what is there: signal, spare, chassis, return, switch, rail, motor, head, meter,
   *     base; null = not given
   * @param ifWrong what goes wrong there, null = not given
   */
  public record Landing(String name, String kind, String ifWrong) {}

  /**
   * What is changed about one rule.
   *
   * @param enabled false = off
   * @param onDelayMs before it is raised
   * @param offDelayMs before it clears
   * @param deadbandPercent of the limit
   * @param latch stays after the condition is gone
   * @param priority high, medium, low
   * @param action alarm or off
   * @param numbers its own parameters by name (belowOhm, afterMs, ...)
   */
  public record RuleSettings(
      Boolean enabled,
      Double onDelayMs,
      Double offDelayMs,
      Double deadbandPercent,
      Boolean latch,
      String priority,
      String action,
      Map<String, Double> numbers) {
    /** Copies the map. */
    public RuleSettings {
      numbers = numbers == null ? Map.of() : Map.copyOf(numbers);
    }
  }
}
