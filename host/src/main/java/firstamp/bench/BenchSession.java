package firstamp.bench;

import firstamp.model.Happening;
import firstamp.model.OffReason;
import firstamp.model.ProbeEvent;
import firstamp.model.text.Worded;
import firstamp.run.BenchMode;
import firstamp.run.LimitMove;
import firstamp.study.SearchState;

/**
 * One power-up as the window sees it and what the person can do to it: watched live, or replayed.
 *
 * <p>Every method may be called from any thread and, but for {@link #close()}, returns at once: it
 * takes note of the wish, and the effect shows in a later {@link #snapshot()}. A method that makes
 * no sense at the moment does nothing.
 */
public interface BenchSession extends AutoCloseable {

  /** What there is to see now; immutable, made for being called 10 to 30 times a second. */
  Snapshot snapshot();

  /** Where the search for a lost signal stands; null where the sheet names no path. */
  default SearchState search() {
    return null;
  }

  /**
   * Opens the switch, or stops what would close it (countdown, check, look). Works in any phase. A
   * countdown that was stopped asks for the go again.
   */
  void off();

  /** The same for good. */
  default void leave() {
    off();
  }

  /**
   * Puts a mark at the present moment.
   *
   * @param text may be empty
   */
  void mark(String text);

  /** Says what was done to the set at the present moment: a clip moved, something changed. */
  default void happened(Happening what) {}

  /**
   * Puts words to a mark of before.
   *
   * @param mark 1 = the first mark of the power-up
   */
  default void note(int mark, String text) {}

  /**
   * Live: asks the probe for another limit; wider only while the switch is open. Replay: works out
   * what this limit would have done. The answer is in {@link Snapshot.Beside}.
   */
  default void limit(LimitMove move) {}

  /**
   * Live: asks for another mode; how it stands shows in {@link #mode()}.
   *
   * @param awakeProblem why the computer may fall asleep, null = it is kept awake
   */
  default void mode(BenchMode mode, Worded awakeProblem) {}

  /** The mode now. */
  default BenchMode.State mode() {
    return BenchMode.State.BEGIN;
  }

  /** Why it was switched off; may be said until long after the end. */
  default void explainOff(OffReason reason) {}

  /** Somebody is there: a key, a pedal, the mouse. */
  default void touched() {}

  /**
   * Switches on again after a trip; what is different goes into the power-up that begins.
   *
   * @param what as answered, its time is not used
   */
  default void restore(ProbeEvent.SwitchedOnAgain what) {
    restore(what.afterTrip());
  }

  /** The person has seen all alarms that stand. */
  void acknowledge();

  /**
   * Closes the switch again after a trip, through check and look.
   *
   * @param tripNumber of the trip that was shown to the person
   */
  void restore(int tripNumber);

  /**
   * Answers a question of {@link Snapshot#questions()}.
   *
   * @param questionId its identifier
   * @param yes true: it is as the question asks for, go on. False: it is not, do not switch on
   */
  void answer(String questionId, boolean yes);

  /**
   * Replay: goes to a moment.
   *
   * @param ms time of the course
   */
  default void seek(double ms) {}

  /**
   * Replay: plays at this speed.
   *
   * @param factor 1 = as it was; {@link Double#POSITIVE_INFINITY} = as fast as it goes
   */
  default void speed(double factor) {}

  /**
   * Replay: holds or continues.
   *
   * @param held true to hold
   */
  default void pause(boolean held) {}

  /** Replay: goes one reading (10 ms) further and holds. */
  default void step() {}

  /**
   * Switches off, lets the log finish, ends all threads. May take seconds, may be called again;
   * never from a thread that paints.
   */
  @Override
  void close();
}
