package firstamp.locate.wire;

/** What the far end of a wire is on, as far as the checks say. */
enum WireNature {
  /** Not known. */
  UNKNOWN,
  /** The chassis. */
  CHASSIS,
  /** A rail, or another source that holds its volts. */
  SOURCE,
  /** A signal point, or leakage. */
  SIGNAL,
  /** A load, or nothing. */
  LOAD;

  /** By which the odds of a kind of place change. */
  double factor(PlaceKind kind) {
    return switch (this) {
      case UNKNOWN -> 1;
      case CHASSIS -> kind == PlaceKind.CHASSIS || kind == PlaceKind.RETURN ? 4 : 0.5;
      case SOURCE -> {
        if (kind == PlaceKind.RAIL) {
          yield 4;
        }
        yield kind == PlaceKind.SWITCH || kind == PlaceKind.MOTOR ? 2 : 0.2;
      }
      case SIGNAL -> kind == PlaceKind.RAIL || kind == PlaceKind.MOTOR ? 0.2 : 2;
      case LOAD -> kind == PlaceKind.RAIL || kind == PlaceKind.SWITCH ? 2 : 1;
    };
  }

  /** Key of the reason why a wire of this nature must not be joined to a kind, null = it may. */
  String forbids(PlaceKind kind) {
    if (this == CHASSIS && kind == PlaceKind.RAIL) {
      return "reason.chassis-rail";
    }
    if (this == SOURCE) {
      return switch (kind) {
        case CHASSIS, RETURN -> "reason.source-chassis";
        case HEAD, METER, BASE -> "reason.source-" + kind.id();
        default -> null;
      };
    }
    return null;
  }
}
