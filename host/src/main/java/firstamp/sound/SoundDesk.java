package firstamp.sound;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Priority;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Set;

/**
 * Decides which tune is played next: the highest priority first, the highest again and again until
 * it is seen, everything else once.
 *
 * <p>Not thread-safe; deadlines get their time as an argument.
 */
final class SoundDesk {
  private static final long REPEAT_NANOS = 2_500_000_000L;

  private final Deque<Tune> waiting = new ArrayDeque<>();
  private final Set<Integer> unseen = new HashSet<>();
  private final boolean plugIn;
  private long repeatAt;
  private boolean muted;

  /** With or without a plug in the wall. */
  SoundDesk(boolean plugIn) {
    this.plugIn = plugIn;
  }

  /**
   * Silent, or not. Active alarms are silenced; an alarm of high priority or a trip that comes
   * later ends the silence by itself: the person asked not to hear what they know of (common
   * practice, no source).
   */
  void mute(boolean silent) {
    muted = silent;
    if (silent) {
      waiting.clear();
    }
  }

  boolean muted() {
    return muted;
  }

  /** A tune once. */
  void play(Tune tune) {
    if (muted) {
      return;
    }
    // What waits is short: a higher one goes first, and of several equal ones one is enough.
    if (waiting.contains(tune)) {
      return;
    }
    if (tune == Tune.HIGH) {
      waiting.remove(Tune.LOW);
      waiting.remove(Tune.MEDIUM);
      waiting.addFirst(tune);
    } else {
      waiting.addLast(tune);
    }
  }

  /** An alarm changed its state. */
  void alarm(Alarm alarm, long nowNanos) {
    boolean stands =
        alarm.state() == AlarmState.UNACKNOWLEDGED
            || alarm.state() == AlarmState.CLEARED_UNACKNOWLEDGED;
    if (!stands) {
      unseen.remove(alarm.number());
      return;
    }
    boolean raised = alarm.state() == AlarmState.UNACKNOWLEDGED;
    if (raised && alarm.priority() == Priority.HIGH) {
      muted = false;
    }
    boolean shownUnderAnother = alarm.foldedUnder() != 0 && alarm.priority() != Priority.HIGH;
    if (raised && !shownUnderAnother) {
      play(Tune.of(alarm.priority()));
    }
    if (alarm.priority() == Priority.HIGH && unseen.add(alarm.number()) && raised) {
      repeatAt = nowNanos + REPEAT_NANOS;
    }
  }

  /** The probe has switched itself off, or a rule did. */
  void switchedOff() {
    muted = false;
    play(Tune.HIGH);
    if (plugIn) {
      play(Tune.PLUG);
    }
  }

  /** Nothing is wrong; but the mains side is live where a plug is in the wall. */
  void offAsWanted() {
    if (plugIn) {
      play(Tune.PLUG);
    }
  }

  /** Everything is seen, or a new power-up begins. */
  void forget() {
    unseen.clear();
  }

  /** Whether something waits to be played once. */
  boolean waiting() {
    return !waiting.isEmpty();
  }

  /** The tune that is due now; null = none. */
  Tune next(long nowNanos) {
    if (muted) {
      return null;
    }
    Tune tune = waiting.poll();
    if (tune == null && !unseen.isEmpty() && nowNanos - repeatAt >= 0) {
      tune = Tune.HIGH;
    }
    if (tune == Tune.HIGH) {
      repeatAt = nowNanos + REPEAT_NANOS;
    }
    return tune;
  }

  /** When to look again at the latest, nanoseconds from now. */
  long pauseNanos(long nowNanos) {
    return unseen.isEmpty() || muted ? Long.MAX_VALUE : Math.max(0, repeatAt - nowNanos);
  }
}
