package firstamp.locate;

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

  /** Why a wire of this nature must not be joined to a kind of place, null = it may. */
  String forbids(PlaceKind kind) {
    if (this == CHASSIS && kind == PlaceKind.RAIL) {
      return "the wire is on the chassis: there it would short the rail";
    }
    if (this == SOURCE && (kind == PlaceKind.CHASSIS || kind == PlaceKind.RETURN)) {
      return "the wire holds the volts of a rail: there it would short it";
    }
    if (this == SOURCE
        && (kind == PlaceKind.HEAD || kind == PlaceKind.METER || kind == PlaceKind.BASE)) {
      return "the wire holds the volts of a rail: never straight to a " + kind.words();
    }
    return null;
  }
}
