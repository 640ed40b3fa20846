package firstamp.supply;

import firstamp.model.ProbePort;
import firstamp.model.text.Worded;
import firstamp.supply.SupplyState.Phase;
import java.io.IOException;
import java.util.Objects;

/**
 * A bench supply behind a port: takes requests at once, carries them out on its own thread, and
 * shows its progress.
 *
 * <p>{@link #off} writes the command itself before anything else; the thread then makes sure that
 * it was obeyed. A supply that fails in any way gets the command to switch off, and {@link
 * SupplyState#phase} says so. All methods may be called from any thread and return at once, but for
 * {@link #close}.
 */
public final class BenchSupply implements AutoCloseable {
  private static final String OFF = "OUTP OFF";
  private static final String ON = "OUTP ON";
  private static final long WATCH_NANOS = 1_000_000_000L;
  private static final long IDLE_MILLIS = 50;
  private static final int OFF_TRIES = 3;
  private static final long JOIN_MILLIS = 15_000;

  private final Object lock = new Object();
  private final ProbePort line;
  private final Dialogue dialogue;
  private final Orders orders;
  private final Thread thread;
  private Wish wish;
  private boolean offWanted;
  private boolean offConfirmed = true;
  private boolean failed;
  private boolean closing;
  private boolean confirming;
  private volatile SupplyState state =
      new SupplyState(Phase.CONNECTING, null, null, null, null, null);

  private record Wish(double volts, double limitA) {}

  /** Over an open line; {@link #start} begins. */
  public BenchSupply(ProbePort line) {
    this.line = Objects.requireNonNull(line, "line");
    this.dialogue = new Dialogue(line, this::overtaken);
    this.orders = new Orders(dialogue);
    this.thread = new Thread(this::work, "supply");
    this.thread.setDaemon(true);
  }

  /** Starts its thread. */
  public void start() {
    thread.start();
  }

  /** Its present state; immutable. */
  public SupplyState state() {
    return state;
  }

  /**
   * Sets volts and limit and has the output on with them. From low to high the limit goes first,
   * the output comes last.
   */
  public void give(double volts, double limitA) {
    synchronized (lock) {
      if (failed || closing) {
        return;
      }
      wish = new Wish(volts, limitA);
      offWanted = false;
      show(Phase.BUSY, null);
      lock.notifyAll();
    }
  }

  /** Switches the output off, before anything else that may be going on. */
  public void off() {
    synchronized (lock) {
      wish = null;
      if (offWanted) {
        return;
      }
      offWanted = true;
      offConfirmed = false;
      if (!failed) {
        show(Phase.SWITCHING_OFF, null);
      }
      write();
      lock.notifyAll();
    }
  }

  /** The one command that is never held back. */
  private void write() {
    try {
      dialogue.send(OFF);
    } catch (IOException gone) {
      fail(SupplyException.lineGone(gone));
    }
  }

  private boolean overtaken() {
    synchronized (lock) {
      return offWanted && !offConfirmed && Thread.currentThread() == thread && !confirming;
    }
  }

  private void work() {
    try {
      String name = orders.begin();
      synchronized (lock) {
        state = new SupplyState(Phase.OFF, name, null, null, null, null);
        if (offWanted) {
          show(Phase.SWITCHING_OFF, null);
        } else if (wish != null) {
          show(Phase.BUSY, null);
        }
      }
    } catch (SupplyException bad) {
      failAndOff(bad.words());
    } catch (IOException gone) {
      failAndOff(SupplyException.lineGone(gone));
    }
    long watched = now();
    while (true) {
      Wish next;
      boolean off;
      synchronized (lock) {
        next = wish;
        wish = null;
        off = offWanted && !offConfirmed;
        if (closing && !off) {
          return;
        }
        if (failed && next == null && !off) {
          pause();
          continue;
        }
      }
      try {
        if (off) {
          confirmOff();
        } else if (next != null) {
          carryOut(next);
          watched = now();
        } else if (state.phase() == Phase.ON && now() - watched >= WATCH_NANOS) {
          watched = now();
          watch();
        } else {
          dialogue.idle();
        }
      } catch (SupplyException bad) {
        if (bad.kind() != SupplyException.Kind.OVERTAKEN) {
          failAndOff(bad.words());
        }
      } catch (IOException gone) {
        failAndOff(SupplyException.lineGone(gone));
      }
    }
  }

  private void pause() {
    try {
      lock.wait(IDLE_MILLIS);
    } catch (InterruptedException stop) {
      closing = true;
    }
  }

  /** Never a step with high volts under an old, higher limit. */
  private void carryOut(Wish next) throws IOException, SupplyException {
    boolean on = orders.outputOn();
    orders.limit(next.limitA());
    orders.volts(next.volts());
    if (!on) {
      synchronized (lock) {
        // Under the lock that off() takes: never an "on" behind an "off".
        if (offWanted) {
          return;
        }
        dialogue.send(ON);
      }
      orders.checkOn();
    }
    synchronized (lock) {
      if (!offWanted && wish == null) {
        state =
            new SupplyState(
                Phase.ON, state.name(), next.volts(), next.limitA(), state.measuredA(), null);
      }
    }
  }

  /** A supply that has gone while it is on is found out within about a second. */
  private void watch() throws IOException, SupplyException {
    if (!orders.outputOn()) {
      throw new SupplyException(SupplyException.Kind.WRONG, "by-itself");
    }
    double ampere = orders.measuredAmpere();
    synchronized (lock) {
      if (state.phase() == Phase.ON) {
        state =
            new SupplyState(Phase.ON, state.name(), state.volts(), state.limitA(), ampere, null);
      }
    }
  }

  private void confirmOff() throws IOException, SupplyException {
    confirming = true;
    try {
      SupplyException last = null;
      for (int k = 0; k < OFF_TRIES; k++) {
        dialogue.send(OFF);
        try {
          if (!orders.outputOn()) {
            synchronized (lock) {
              offConfirmed = true;
              if (!failed) {
                show(Phase.OFF, null);
              }
            }
            return;
          }
        } catch (SupplyException bad) {
          last = bad;
        }
      }
      synchronized (lock) {
        offConfirmed = true;
      }
      Worded why = last == null ? SupplyException.say("still-on") : last.words();
      fail(SupplyException.say("not-confirmed", why));
    } catch (IOException gone) {
      synchronized (lock) {
        offConfirmed = true;
      }
      throw gone;
    } finally {
      confirming = false;
    }
  }

  private void failAndOff(Worded why) {
    // In this order: whoever sees that it failed may rely on it that it was told to switch off.
    off();
    fail(why);
  }

  private void fail(Worded why) {
    synchronized (lock) {
      Worded before = state.problem();
      failed = true;
      boolean first = before == null || before.equals(why);
      show(Phase.FAILED, first ? why : SupplyException.say("then", before, why));
    }
  }

  private void show(Phase phase, Worded problem) {
    state =
        new SupplyState(
            phase,
            state.name(),
            state.volts(),
            state.limitA(),
            state.measuredA(),
            problem == null ? state.problem() : problem);
  }

  private long now() {
    return line.time().monotonicNanos();
  }

  /** Whether it got the command to switch off and confirmed it. */
  public boolean confirmedOff() {
    synchronized (lock) {
      return offWanted && offConfirmed && !failed;
    }
  }

  /** Switches off, waits until that is confirmed or given up, closes the line. */
  @Override
  public void close() {
    off();
    synchronized (lock) {
      closing = true;
      lock.notifyAll();
    }
    try {
      thread.join(JOIN_MILLIS);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
    line.close();
  }
}
