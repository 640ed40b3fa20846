package firstamp.locate.signal;

/**
 * What joins two points of a signal path.
 *
 * <p>The weights say how often such a joint is the one at fault in a set that was idle for years
 * and then worked on: contacts before soldered wires before parts, windings last. Common practice,
 * no source; a path may give its own.
 */
public enum JointKind {
  /** A soldered wire. */
  WIRE("wire", 3, "wire"),
  /** A contact of a switch or of a jack. */
  SWITCH("switch", 5, "contact"),
  /** A coupling capacitor. */
  CAPACITOR("capacitor", 3, "coupling capacitor"),
  /** A stage with its transistors or valves. */
  STAGE("stage", 2, "stage"),
  /** A volume control or a trimmer. */
  CONTROL("control", 2.5, "control"),
  /** A transformer. */
  TRANSFORMER("transformer", 0.5, "transformer"),
  /** A way back, for example feedback. */
  LOOP("loop", 1, "way back");

  private final String id;
  private final double weight;
  private final String words;

  JointKind(String id, double weight, String words) {
    this.id = id;
    this.weight = weight;
    this.words = words;
  }

  /** Identifier in files. */
  public String id() {
    return id;
  }

  /** Weight among the joints of a path before anything is measured. */
  public double weight() {
    return weight;
  }

  /** For people. */
  public String words() {
    return words;
  }

  /** The kind of an identifier. */
  public static JointKind of(String id) {
    for (JointKind kind : values()) {
      if (kind.id.equals(id)) {
        return kind;
      }
    }
    throw PathWords.refusal("kind", id);
  }
}
