package firstamp.window.watch;

import firstamp.model.PedalJob;

/**
 * A pedal that sends a key, with the one job that was chosen for it. Whatever the job, it never
 * switches on and never answers.
 *
 * <p>Systems repeat a key that is held, some as releases and presses: a release counts only when no
 * press follows it at once. Times are handed in; one thread.
 */
public final class Pedal {
  /** With {@link PedalJob#MARK}, held this long it is an off. */
  static final long HELD_MILLIS = 600;

  /** A repeated key comes back within this time. */
  static final long REPEAT_MILLIS = 40;

  private final Foot foot;
  private PedalJob job = PedalJob.OFF;
  private boolean down;
  private boolean offGiven;
  private long downMillis;
  private long upMillis = -1;

  /** What a foot can do. */
  public interface Foot {
    /** Opens the switch. */
    void off();

    /** Puts a mark. */
    void mark();

    /** Whether the switch is about to close by itself. */
    boolean counting();

    /** Whether the set gets current, through the switch or through the look resistor. */
    boolean fed();
  }

  public Pedal(Foot foot) {
    this.foot = foot;
  }

  public void job(PedalJob next) {
    job = next;
  }

  public PedalJob job() {
    return job;
  }

  public boolean isDown() {
    return down;
  }

  public void pressed(long millis) {
    upMillis = -1;
    if (!down) {
      down = true;
      offGiven = false;
      downMillis = millis;
      if (job == PedalJob.OFF || job == PedalJob.MARK && foot.counting()) {
        off();
      }
    }
    tick(millis);
  }

  public void released(long millis) {
    if (down) {
      upMillis = millis;
    }
  }

  /** The keyboard belongs to another window now: whether the foot is down is not known. */
  public void lost() {
    boolean held = down;
    down = false;
    if (held && job == PedalJob.HOLD_TO_RUN) {
      foot.off();
    }
  }

  /** Called often: finds out that it is held, or that it was let go for good. */
  public void tick(long millis) {
    if (down && upMillis >= 0 && millis - upMillis > REPEAT_MILLIS) {
      down = false;
      let();
    } else if (down && job == PedalJob.MARK && upMillis < 0 && millis - downMillis >= HELD_MILLIS) {
      off();
    }
    if (!down && job == PedalJob.HOLD_TO_RUN && foot.fed()) {
      foot.off();
    }
  }

  private void let() {
    switch (job) {
      case OFF -> {}
      case HOLD_TO_RUN -> foot.off();
      case MARK -> {
        if (!offGiven) {
          foot.mark();
        }
      }
    }
  }

  private void off() {
    if (!offGiven) {
      offGiven = true;
      foot.off();
    }
  }
}
