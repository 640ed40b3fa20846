package firstamp.locate.wire;

/**
 * What is at a landing point, how much harm a wrong wire does there, and through what a wire is
 * joined first. Signal points, then returns, then rails; head, meter, motor and germanium bases
 * last. Common practice, no source.
 */
public enum PlaceKind {
  /** A point of the signal path. */
  SIGNAL("signal", "signal point", 1, 1000),
  /** A tag that seems to hold nothing. */
  SPARE("spare", "spare tag", 1, 1000),
  /** The chassis or a ground tag. */
  CHASSIS("chassis", "chassis", 2, 100),
  /** A return that is not the chassis itself. */
  RETURN("return", "return", 2, 100),
  /** A tag of a switch. */
  SWITCH("switch", "switch tag", 2, 1000),
  /** A rail. */
  RAIL("rail", "rail", 3, null),
  /** A motor. */
  MOTOR("motor", "motor", 4, null),
  /** A tape head. */
  HEAD("head", "head", 4, 10_000),
  /** A level meter. */
  METER("meter", "level meter", 4, 10_000),
  /** A base of a germanium transistor. */
  BASE("base", "base of a germanium transistor", 4, 10_000),
  /** Nobody has said what is there: as careful as with the worst. */
  NOT_SAID("not-said", "place of which nothing is said", 4, 10_000);

  /** From here on a wrong trial is risky. */
  public static final int RISKY = 3;

  private final String id;
  private final String words;
  private final int harm;
  private final Integer throughOhm;

  PlaceKind(String id, String words, int harm, Integer throughOhm) {
    this.id = id;
    this.words = words;
    this.harm = harm;
    this.throughOhm = throughOhm;
  }

  /** Identifier in files. */
  public String id() {
    return id;
  }

  /** For people. */
  public String words() {
    return words;
  }

  /** 1 = little, 4 = much. */
  public int harm() {
    return harm;
  }

  /** Resistor to join through first, null = a lamp or the limit of the supply. */
  public Integer throughOhm() {
    return throughOhm;
  }

  /** The kind of an identifier. */
  public static PlaceKind of(String id) {
    for (PlaceKind kind : values()) {
      if (kind.id.equals(id)) {
        return kind;
      }
    }
    throw WireRefusals.of("place-kind", id);
  }
}
