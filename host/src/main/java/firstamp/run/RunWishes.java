package firstamp.run;

import firstamp.model.OffCause;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * What people, rules and time ask of a live run: to switch off, to end, or something of its own.
 *
 * <p>Asked on any thread, in order; carried out by the session thread at its next turn. The first
 * one that asked for off is the one that is named.
 */
final class RunWishes {
  private final Queue<Runnable> commands = new ConcurrentLinkedQueue<>();
  private OffCause off;
  private boolean end;
  private boolean over;

  /** Something to do on the session thread; any thread. */
  void later(Runnable command) {
    commands.add(command);
  }

  /** Opens the switch; any thread. A signal ends the run as well. */
  void off(OffCause by) {
    later(
        () -> {
          demandOff(by);
          end |= by == OffCause.SIGNAL;
        });
  }

  /** The same for good: after a countdown that this stops nothing is asked again; any thread. */
  void over(OffCause by) {
    later(() -> over = true);
    off(by);
  }

  /** Opens the switch at this turn; session thread only. */
  void demandOff(OffCause by) {
    off = off == null ? by : off;
  }

  /** Does what was asked for; session thread only. */
  void carryOut() {
    for (Runnable command = commands.poll(); command != null; command = commands.poll()) {
      command.run();
    }
  }

  /** Who wants it off, null = nobody. */
  OffCause wantedOff() {
    return off;
  }

  /** The switch was told to open: a wish that could not be sent stays. */
  void offSent() {
    off = null;
  }

  /** Whether a stopped countdown is the end. */
  boolean wantsOver() {
    return over;
  }

  /** Whether the run ends without following the rails down. */
  boolean wantsEnd() {
    return end;
  }
}
