package firstamp.emulate;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** Invented sets, healthy and with one fault each. Data for the demo and for tests alone. */
final class InventedSets {
  private static final String LARCH = "larch-d2.json";
  private static final String LARCH_MAINS = "larch-d2-mains.json";
  private static final String FINCH = "finch-pocket.json";
  private static final double NEVER = Double.POSITIVE_INFINITY;

  private final Map<String, Scenario> all = new LinkedHashMap<>();

  private InventedSets() {}

  static Map<String, Scenario> all() {
    InventedSets sets = new InventedSets();
    sets.dictationUnit();
    sets.dictationUnitOnMains();
    sets.pocketRadio();
    return sets.all;
  }

  private void dictationUnit() {
    larch("healthy", "The dictation unit comes up as it should.", set -> {});
    larch(
        "wire-short",
        "An unidentified screened lead touches the chassis some time after switching on.",
        set -> {},
        (set, sinceS) -> set.shortOhm = sinceS > 1.2 ? 1.2 : NEVER);
    larch("look-short", "The supply is shorted from the start.", set -> set.shortOhm = 1.2);
    larch(
        "lost-head",
        "The meter moves, the head stays silent: the earphone jack's muting contact sticks.",
        set -> set.headOverMeter = 1e-5);
    larch("no-draw", "The set draws nothing: a lead is off.", set -> set.setJoined = false);
    larch(
        "dead-short",
        "The supply is shorted by thick wire some time after switching on.",
        set -> {},
        (set, sinceS) -> set.shortOhm = sinceS > 0.9 ? 0.15 : NEVER);
    larch(
        "leaky",
        "The filter capacitor leaks more and more as it warms.",
        set -> {},
        (set, sinceS) -> set.leakOhm = sinceS < 0 ? NEVER : 400 / (1 + sinceS / 4));
    larch(
        "motor-stall",
        "The motor is stuck: its current does not fall after the start.",
        set -> set.motorFrictionA = 2);
    larch("speech", "A voice instead of the tone.", set -> set.speech = true);
    larch(
        "rail-late",
        "The rail comes up slowly: the dropper resistor has risen.",
        set -> {
          set.dropperOhm = 110;
          set.stagesSiemens = 0.0015;
          set.railLoadOhm = 330;
        });
    larch(
        "rail-low", "The rail stays low: a stage draws too much.", set -> set.stagesSiemens = 0.03);
    larch(
        "over-voltage",
        "The stages on the rail stop drawing and the rail runs up.",
        set -> {},
        (set, sinceS) -> {
          boolean gone = sinceS > 1;
          set.stagesSiemens = gone ? 0 : 0.0104;
          set.railLoadOhm = gone ? 1500 : 220;
        });
    larch(
        "creep",
        "The current climbs slowly and goes on climbing.",
        set -> {},
        (set, sinceS) -> set.idleOhm = 1000 / (1 + Math.max(0, sinceS) * 0.15));
    larch(
        "rail-drops",
        "The rail falls while the supply stays: a joint opens.",
        set -> {},
        (set, sinceS) -> set.dropperOhm = sinceS > 2 ? 150 : 49.5);
    larch(
        "rail-unsteady",
        "The rail jumps about: a contact crackles.",
        set -> {},
        (set, sinceS) ->
            set.railLoadOhm =
                sinceS > 1 && Math.sin(37 * sinceS) * Math.sin(23 * sinceS) > 0.2 ? 60 : 220);
    larch(
        "rail-climbs",
        "After switching off the rail climbs again: something else feeds it.",
        set -> {},
        climbingAfterOff());
    larch(
        "clip-off",
        "The rail's clip springs off.",
        set -> {},
        (set, sinceS) -> set.railClipOn = sinceS < 2);
    larch("reversed", "The supply is the wrong way round.", set -> set.supplyReversed = true);
    larch("wrong-supply", "The supply is set to 24 V.", set -> set.emfV = 24);
    larch("no-supply", "The supply is off.", set -> set.emfV = 0);
    larch(
        "chassis-lost",
        "The chassis clip springs off while the set is on.",
        set -> {},
        (set, sinceS) -> set.chassisClipOn = sinceS < 1.5);
    larch(
        "wrong-polarity",
        "The rail stands on the wrong side of the chassis.",
        set -> set.railSign = -1);
    larch(
        "hum",
        "Hum reaches the head: a screen is open.",
        set -> {
          set.headHumRmsV = 1e-3;
          set.humHz = 50;
        });
  }

  private static Script climbingAfterOff() {
    boolean[] wasOn = {false};
    return (set, sinceS) -> {
      wasOn[0] |= sinceS > 0.5;
      set.railFedA = wasOn[0] && sinceS < 0 ? 0.02 : 0;
    };
  }

  private void dictationUnitOnMains() {
    mains("mains", "The dictation unit on its own mains transformer.", set -> {});
    mains(
        "tired-filter",
        "The reservoir capacitor has lost most of its capacitance: ripple on rail and head.",
        set -> {
          set.supplyFarad = 220e-6;
          set.filterFarad = 150e-6;
          set.railFarad = 30e-6;
          set.headHumRmsV = 0.2e-3;
        });
    mains(
        "ripple-too-low",
        "The reservoir stands high and shows no ripple: an adaptor feeds the set instead.",
        set -> {
          set.rectifierPaths = 0;
          set.emfV = 14.4;
          set.supplyOhm = 0.5;
        });
  }

  /** A positive-chassis pocket radio: 9 V, germanium, a few milliampere. */
  private void pocketRadio() {
    put(
        "radio",
        "A positive-chassis pocket radio that idles at 9 mA.",
        FINCH,
        InventedSets::finch,
        Script.NONE);
    put(
        "radio-short",
        "The pocket radio's output stage runs away.",
        FINCH,
        InventedSets::finch,
        (set, sinceS) -> set.idleOhm = sinceS > 1.5 ? 60 : 3600);
  }

  private static SetValues finch() {
    SetValues set = new SetValues();
    set.emfV = 9.02;
    set.supplyLimitA = 0.15;
    set.supplyFarad = 100e-6;
    set.idleOhm = 3600;
    set.filterOhm = 22;
    set.filterFarad = 100e-6;
    set.dropperOhm = 220;
    set.railFarad = 100e-6;
    set.railLoadOhm = 2200;
    set.stagesFromV = 2;
    set.stagesSiemens = 0.0006;
    set.railSign = -1;
    set.motor = false;
    set.toneFromS = NEVER;
    set.headHumRmsV = 0;
    set.meterHumRmsV = 0;
    set.chainFullV = 7.5;
    return set;
  }

  /** Transformer and bridge rectifier in the set; the probe sits behind the reservoir capacitor. */
  private static SetValues onMains() {
    SetValues set = new SetValues();
    set.emfV = 15;
    set.rectifierPaths = 2;
    set.supplyOhm = 3;
    set.supplyLimitA = NEVER;
    set.supplyFarad = 2200e-6;
    set.filterFarad = 470e-6;
    set.railFarad = 470e-6;
    set.dropperOhm = 60;
    set.reservoirClipOn = true;
    return set;
  }

  private void larch(String name, String description, Consumer<SetValues> fault) {
    larch(name, description, fault, Script.NONE);
  }

  private void larch(String name, String description, Consumer<SetValues> fault, Script script) {
    put(name, description, LARCH, () -> changed(new SetValues(), fault), script);
  }

  private void mains(String name, String description, Consumer<SetValues> fault) {
    put(name, description, LARCH_MAINS, () -> changed(onMains(), fault), Script.NONE);
  }

  private static SetValues changed(SetValues set, Consumer<SetValues> fault) {
    fault.accept(set);
    return set;
  }

  private void put(
      String name, String description, String sheet, Supplier<SetValues> set, Script script) {
    all.put(name, new Scenario(description, sheet, set, script));
  }
}
