package firstamp.model;

/**
 * The one job of a pedal, chosen before a power-up. Whatever it is, a pedal never switches on,
 * never answers, never acknowledges and never widens a limit.
 */
public enum PedalJob {
  /** Any press is OFF, at once. */
  OFF("off"),
  /** The set stays on only while the foot is down: letting go is OFF. */
  HOLD_TO_RUN("hold-to-run"),
  /** A tap is a mark; held still it is OFF. */
  MARK("mark");

  private final String id;

  PedalJob(String id) {
    this.id = id;
  }

  /** Name in settings and on the command line. */
  public String id() {
    return id;
  }

  /** The job of a name; {@link #OFF} where there is none of it: the safe one. */
  public static PedalJob of(String id) {
    for (PedalJob job : values()) {
      if (job.id.equals(id)) {
        return job;
      }
    }
    return OFF;
  }
}
