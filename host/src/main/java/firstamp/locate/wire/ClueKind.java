package firstamp.locate.wire;

/**
 * Why a wire may belong to a place, and how much that says. Colour says little: habits differ
 * between makers and between a negative and a positive chassis. The factors are common practice, no
 * source.
 */
public enum ClueKind {
  /** Colour by some chart. */
  COLOUR("colour", 1.3),
  /** The same colour and gauge elsewhere in this set. */
  SAME_ELSEWHERE("same-elsewhere", 3),
  /** Length, set of the bend, where it leaves the loom. */
  REACH("reach", 8),
  /** Old solder, a flux ring, broken strands of the same gauge. */
  OLD_SOLDER("old-solder", 8),
  /** How the end looks and how the wire is made. */
  BUILD("build", 3),
  /** Continuity of the free end. */
  CONTINUITY("continuity", 8),
  /** The other channel, a sister set or a photograph. */
  PICTURE("picture", 8);

  private final String id;
  private final double factor;

  ClueKind(String id, double factor) {
    this.id = id;
    this.factor = factor;
  }

  /** Identifier in files. */
  public String id() {
    return id;
  }

  /** By which the odds rise when it fits, and fall when it contradicts. */
  double factor() {
    return factor;
  }

  /** The kind of an identifier. */
  public static ClueKind of(String id) {
    for (ClueKind kind : values()) {
      if (kind.id.equals(id)) {
        return kind;
      }
    }
    throw WireRefusals.of("clue", id);
  }
}
