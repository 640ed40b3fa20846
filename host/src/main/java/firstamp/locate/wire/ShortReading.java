package firstamp.locate.wire;

import java.util.Map;

/**
 * Ohms at which more than the limit would flow.
 *
 * @param place a rail, null = the free end of the wire itself
 * @param ohm as read to the chassis
 * @param enoughOhm from here on the limit holds
 */
public record ShortReading(String place, double ohm, double enoughOhm) {
  /** The first short that must be found before power, null = none. */
  static ShortReading first(WireFacts wires, WireReadings readings) {
    double enough = wires.set().supplyV() / wires.set().runningA();
    for (Map.Entry<String, WireStep.PlaceOhms> read : readings.placeOhms().entrySet()) {
      boolean rail = wires.place(read.getKey()).kind() == PlaceKind.RAIL;
      if (rail && read.getValue().ohm() < enough) {
        return new ShortReading(read.getKey(), read.getValue().ohm(), enough);
      }
    }
    Double wire = readings.chassisOhm();
    // Under an ohm it is the chassis: no short, as long as it stays off the rails.
    boolean low = wire != null && wire >= WireOdds.JOINED_OHM && wire < enough;
    return low && readings.known() == null ? new ShortReading(null, wire, enough) : null;
  }
}
