package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.model.TimeSource;

/**
 * What is being fed or may be: followed by the frame whatever page is in front. Swing thread only.
 */
public final class LiveSet {
  /** So long after an off a key may be meant for what was there before. */
  static final long DEAD_NANOS = 1_000_000_000L;

  private final TimeSource time;
  private Feeding feeding;
  private boolean closable;
  private boolean counting;
  private Long offNanos;

  /** Something that closes a switch: a power-up, or a trial of the probe box. */
  public interface Feeding {
    /** Where it stands. */
    Stand stand();

    /** What the frame shows of it. */
    BenchView view();

    /** Opens the switch, or stops what would close it. */
    void off();

    /** Somebody is there: a key, the mouse. */
    public default void touched() {}
  }

  /**
   * Where it stands.
   *
   * @param there whether it is under way at all
   * @param closable whether the switch is closed or may close
   * @param asked whether something has to be answered before it may close
   * @param counting whether it closes by itself in a moment
   * @param fed whether current can flow into the set
   */
  public record Stand(
      boolean there, boolean closable, boolean asked, boolean counting, boolean fed) {
    public static final Stand NOTHING = new Stand(false, false, false, false, false);

    /** Nothing is known of it: to be switched off as if it were on. */
    static final Stand UNKNOWN = new Stand(true, true, false, false, true);

    public static Stand of(Snapshot now) {
      boolean live = now.kind() != Snapshot.Kind.REPLAY;
      boolean there = live && now.phase() != Snapshot.Phase.ENDED;
      boolean fed = now.phase() == Snapshot.Phase.LOOK || now.phase() == Snapshot.Phase.ON;
      return new Stand(
          there,
          live && closable(now.phase()),
          live && !now.questions().isEmpty(),
          now.countdownS() != null,
          fed);
    }

    /** Until it has opened for good every phase leads to closing without anybody's doing. */
    public static boolean closable(Snapshot.Phase phase) {
      return switch (phase) {
        case CONNECTING, OPEN, CHECK, LOOK, ON -> true;
        case RAILS_FALLING, TRIPPED, ENDED -> false;
      };
    }

    /** Nothing but a closed switch, or one that may close, can be switched off. */
    public boolean armed() {
      return closable;
    }
  }

  public LiveSet(TimeSource time) {
    this.time = time;
  }

  /** Takes the next one; null = none. */
  public void take(Feeding next) {
    feeding = next;
    closable = false;
    counting = false;
    offNanos = null;
  }

  public Feeding feeding() {
    return feeding;
  }

  public Stand stand() {
    if (feeding == null) {
      return Stand.NOTHING;
    }
    try {
      return feeding.stand();
    } catch (RuntimeException defect) {
      // The window says it at its next picture; until then keys switch off.
      return Stand.UNKNOWN;
    }
  }

  /** Looks at it; true = it has gone off, or its countdown was stopped, since the last time. */
  public boolean follow() {
    Stand now = stand();
    boolean stopped = counting && !now.counting() && now.asked();
    boolean gone = closable && !now.closable() || stopped;
    closable = now.closable();
    counting = now.counting();
    if (gone && offNanos == null) {
      offNanos = time.monotonicNanos();
    }
    if (closable) {
      offNanos = dead() ? offNanos : null;
    }
    return gone;
  }

  public boolean there() {
    return stand().there();
  }

  public boolean armed() {
    return stand().armed();
  }

  /** Somebody is there. */
  public void touched() {
    if (feeding != null) {
      feeding.touched();
    }
  }

  /** Opens the switch. */
  public void off() {
    if (feeding != null) {
      boolean opens = stand().armed();
      feeding.off();
      if (opens) {
        offNanos = time.monotonicNanos();
      }
    }
  }

  /** Whether it was switched off within the last second. */
  public boolean dead() {
    return offNanos != null && time.monotonicNanos() - offNanos < DEAD_NANOS;
  }
}
