package firstamp.locate.wire;

/**
 * A place a wire may belong to.
 *
 * @param name as the person calls it
 * @param kind what is there
 * @param ifWrong what goes wrong if the wire does not belong there, null = the usual for its kind
 */
public record LandingPlace(String name, PlaceKind kind, String ifWrong) {}
