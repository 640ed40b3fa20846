package firstamp.model;

/** Priority of an alarm. */
public enum Priority {
  /** Act now. */
  HIGH("high"),
  /** Look soon. */
  MEDIUM("medium"),
  /** Note it. */
  LOW("low");

  private final String id;

  Priority(String id) {
    this.id = id;
  }

  /** Identifier in JSON lines and in the log. */
  public String id() {
    return id;
  }
}
