package firstamp.emulate;

import java.util.LinkedHashMap;
import java.util.Map;

/** Invented sets, healthy and with one fault each. Data for the demo and for tests alone. */
final class InventedSets {
  private static final String LARCH = "larch-d2.json";

  private InventedSets() {}

  static Map<String, Scenario> all() {
    Map<String, Scenario> all = new LinkedHashMap<>();
    all.put(
        "healthy",
        new Scenario(
            "The dictation unit comes up as it should: one surge, the rail settles, the tone"
                + " reaches the head.",
            LARCH,
            SetValues::new,
            Script.NONE));
    all.put(
        "wire-short",
        new Scenario(
            "An unidentified screened lead touches the chassis a while after switching on and"
                + " shorts the supply.",
            LARCH,
            SetValues::new,
            (set, sinceS) -> set.shortOhm = sinceS > 1.2 ? 1.2 : Double.POSITIVE_INFINITY));
    all.put(
        "look-short",
        new Scenario(
            "The supply is shorted before it is switched on: the first look finds it.",
            LARCH,
            InventedSets::shorted,
            Script.NONE));
    all.put(
        "lost-head",
        new Scenario(
            "The meter moves but the record head stays silent: the muting contact of the earphone"
                + " jack sticks.",
            LARCH,
            InventedSets::silentHead,
            Script.NONE));
    all.put(
        "no-draw",
        new Scenario(
            "The set draws nothing: the lead to its power switch is off.",
            LARCH,
            InventedSets::leadOff,
            Script.NONE));
    return all;
  }

  private static SetValues shorted() {
    SetValues set = new SetValues();
    set.shortOhm = 1.2;
    return set;
  }

  private static SetValues silentHead() {
    SetValues set = new SetValues();
    set.headOverMeter = 1e-5;
    return set;
  }

  private static SetValues leadOff() {
    SetValues set = new SetValues();
    set.setJoined = false;
    return set;
  }
}
