package firstamp.locate.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Readings about one wire that cannot all be true: Ohm's law, and two points that are joined are
 * one point. One of them was read at the wrong place or with a bad contact.
 *
 * <p>The margins are common practice, no source.
 */
final class Contradictions {
  /** From here on two points are surely not joined, ohm. */
  private static final double APART_OHM = 10;

  /** Volts of joined points agree within the larger of these. */
  private static final double AGREE_V = 0.5;

  private static final double AGREE_SHARE = 0.1;

  /** Reading error of a meter, V. */
  private static final double METER_V = 0.1;

  private static final double METER_SHARE = 0.05;

  private final WireFacts wires;
  private final WireReadings read;
  private final List<Contradiction> found = new ArrayList<>();

  /**
   * Steps that cannot all be true.
   *
   * @param key of the reason
   * @param figures of the reason: volts, ohms, amperes
   */
  record Contradiction(List<WireStep> steps, String key, List<Double> figures) {}

  private Contradictions(WireFacts wires, String wire) {
    this.wires = wires;
    this.read = new WireReadings(wires, wire);
  }

  /** All of one wire, in a fixed order. */
  static List<Contradiction> of(WireFacts wires, String wire) {
    Contradictions all = new Contradictions(wires, wire);
    all.sourceTest();
    all.chassis();
    all.joined();
    all.places();
    return all.found;
  }

  private void sourceTest() {
    WireStep.SourceTest test = read.sourceTest();
    if (test == null) {
      return;
    }
    double alone = Math.abs(test.aloneV());
    double loaded = Math.abs(test.loadedV());
    if (loaded > alone + Math.max(METER_V, METER_SHARE * alone)) {
      add("load-raises", List.of(test));
    }
    boolean both = alone > METER_V && loaded > METER_V;
    if (both && test.aloneV() * test.loadedV() < 0) {
      add("load-turns", List.of(test));
    }
    overSupply(test, alone);
    WireStep.WireOhms chassis = read.chassis();
    if (chassis != null && flowsTooMuch(alone, chassis.lowerOhm())) {
      add("chassis-volts", List.of(chassis, test), alone, chassis.lowerOhm());
    }
  }

  private void overSupply(WireStep step, double volts) {
    double most = wires.set().supplyV();
    if (volts > most + Math.max(AGREE_V, AGREE_SHARE * most)) {
      add("over-supply", List.of(step), volts, most);
    }
  }

  /** These volts across these ohms would draw more than the limit allows. */
  private boolean flowsTooMuch(double volts, double ohm) {
    boolean joined = ohm < WireOdds.JOINED_OHM && volts > METER_V;
    return joined || volts > METER_V && volts > ohm * wires.set().runningA();
  }

  private void chassis() {
    WireStep.WireOhms chassis = read.chassis();
    for (WireStep.WireOhms ohms : read.wireOhms().values()) {
      if (ohms.otherWayOhm() != null
          && ohms.lowerOhm() < WireOdds.JOINED_OHM
          && Math.max(ohms.ohm(), ohms.otherWayOhm()) >= APART_OHM) {
        add("one-way", List.of(ohms));
      }
    }
    if (chassis == null || chassis.lowerOhm() >= WireOdds.JOINED_OHM) {
      return;
    }
    if (read.swing() != null) {
      add("joined-swing", List.of(chassis, read.swing()));
    }
    if (read.diode() != null) {
      add("joined-diode", List.of(chassis, read.diode()));
    }
  }

  /** Wire, place and chassis: where two of the three are joined, all three are. */
  private void joined() {
    for (Map.Entry<String, WireStep.WireOhms> entry : read.wireOhms().entrySet()) {
      String place = entry.getKey();
      if (wires.place(place).kind() == PlaceKind.CHASSIS) {
        continue;
      }
      WireStep.WireOhms toPlace = entry.getValue();
      WireStep.PlaceOhms placeOhms = read.placeOhms().get(place);
      if (read.chassis() != null && placeOhms != null) {
        double[] ohms = {toPlace.lowerOhm(), placeOhms.ohm(), read.chassis().lowerOhm()};
        int near = 0;
        int far = 0;
        for (double ohm : ohms) {
          near += ohm < WireOdds.JOINED_OHM ? 1 : 0;
          far += ohm >= APART_OHM ? 1 : 0;
        }
        if (near == 2 && far == 1) {
          add("triangle", List.of(toPlace, placeOhms, read.chassis()));
        }
      }
      sameVolts(toPlace, read.placeVolts().get(place));
    }
  }

  private void sameVolts(WireStep.WireOhms toPlace, WireStep.PlaceVolts volts) {
    WireStep.SourceTest test = read.sourceTest();
    if (test == null || volts == null || toPlace.lowerOhm() >= WireOdds.JOINED_OHM) {
      return;
    }
    double larger = Math.max(Math.abs(test.aloneV()), Math.abs(volts.volts()));
    double apart = Math.abs(test.aloneV() - volts.volts());
    if (apart > Math.max(AGREE_V, AGREE_SHARE * larger)) {
      add("joined-volts", List.of(toPlace, test, volts));
    }
  }

  private void places() {
    for (WireStep.PlaceVolts volts : read.placeVolts().values()) {
      overSupply(volts, Math.abs(volts.volts()));
      WireStep.PlaceOhms ohms = read.placeOhms().get(volts.place());
      if (ohms != null && flowsTooMuch(Math.abs(volts.volts()), ohms.ohm())) {
        add("place-volts", List.of(ohms, volts), Math.abs(volts.volts()), ohms.ohm());
      }
    }
  }

  private void add(String key, List<WireStep> steps, Double... figures) {
    found.add(new Contradiction(steps, key, List.of(figures)));
  }
}
