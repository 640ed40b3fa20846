package firstamp.locate.wire;

/**
 * A wire at a place, as the label of a trial names them: {@code W3 at preamp input}.
 *
 * @param wire by name
 * @param place by name
 */
public record TriedWire(String wire, String place) {
  /** The label of the trial. */
  public String label() {
    return wire + " at " + place;
  }
}
