package firstamp.model;

/** State of a raised alarm (ISA-18.2 / IEC 62682). */
public enum AlarmState {
  /** The condition is active, nobody has seen it. */
  UNACKNOWLEDGED("unacknowledged"),
  /** The condition is active, seen. */
  ACKNOWLEDGED("acknowledged"),
  /** The condition is gone (or latched and gone), nobody has seen it. */
  CLEARED_UNACKNOWLEDGED("cleared-unacknowledged"),
  /** Gone and seen. */
  CLEARED("cleared");

  private final String id;

  AlarmState(String id) {
    this.id = id;
  }

  /** Identifier in JSON lines and in the log. */
  public String id() {
    return id;
  }
}
