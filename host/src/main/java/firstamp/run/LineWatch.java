package firstamp.run;

import firstamp.link.Backoff;
import firstamp.model.ProbeEvent;
import firstamp.model.RuleId;
import firstamp.model.TimeSource;
import firstamp.pipeline.RunRefused;
import firstamp.run.talk.PortOpener;
import java.io.IOException;
import java.util.concurrent.locks.LockSupport;

/**
 * Watches over the line: says when it falls silent or is gone, and opens it again.
 *
 * <p>That a line is gone comes from a failing read or from silence, never from the library's own
 * flags. Whatever happens here, the probe opens the switch by itself when it hears nothing.
 */
final class LineWatch {
  /** So much over the rule's limit, or the silence counted from the last reading is still under. */
  private static final long READING_NANOS = 20_000_000L;

  private static final long DEAD_NANOS = 3_000_000_000L;
  private static final long GIVE_UP_NANOS = 10_000_000_000L;

  private final RunStream stream;
  private final RunWishes wishes;
  private final RunSteps steps;
  private final PortOpener opener;
  private final Backoff backoff = new Backoff();

  /** The computer's clock: that of a line that is gone may stand still. */
  private final TimeSource time = TimeSource.system();

  private final long silentNanos;
  private boolean up = true;
  private boolean saidLost;
  private long lostNanos;

  /** Something to do that needs the line. */
  interface LineAction {
    /** Does it. */
    void run() throws IOException, RunRefused;
  }

  LineWatch(RunStream stream, RunWishes wishes, RunSteps steps, PortOpener opener) {
    this.stream = stream;
    this.wishes = wishes;
    this.steps = steps;
    this.opener = opener;
    double afterMs =
        RuleId.PROBE_SILENT.settings(stream.setup().effective()).numbers().get("afterMs");
    this.silentNanos = Math.round(afterMs * 1_000_000) + READING_NANOS;
  }

  /** Whether the line is open. */
  boolean up() {
    return up;
  }

  /** Takes what comes, or tries to open the line again. */
  void poll(int timeoutMillis) {
    if (!up) {
      LockSupport.parkNanos(timeoutMillis * 1_000_000L);
      reopen();
      return;
    }
    try {
      stream.talk().poll(timeoutMillis);
      watchSilence();
    } catch (IOException gone) {
      lost(gone.getMessage());
    }
  }

  /** Does something that needs the line; a line that fails in it is gone. */
  void guard(LineAction action) throws RunRefused {
    try {
      action.run();
    } catch (IOException gone) {
      lost(gone.getMessage());
    }
  }

  private void watchSilence() {
    boolean reconnecting = steps.reconnecting();
    if (!steps.streaming() && !reconnecting) {
      return;
    }
    long silent = stream.talk().silentNanos();
    if (silent >= DEAD_NANOS) {
      lost(
          "nothing has come from the probe box for "
              + silent / 1_000_000
              + " ms. Check the cable.");
    } else if (silent >= silentNanos) {
      sayLost(
          "nothing has come from the probe box for "
              + silent / 1_000_000
              + " ms. Check the cable.");
    } else if (saidLost && !reconnecting) {
      restored();
    }
  }

  private void lost(String why) {
    up = false;
    boolean wasBack = !(saidLost && steps.reconnecting());
    if (wasBack) { // A line that opens and stays silent was not.
      lostNanos = time.monotonicNanos();
    }
    stream.talk().port().close();
    backoff.reset();
    sayLost(why);
  }

  private void sayLost(String why) {
    if (!saidLost) {
      saidLost = true;
      stream.accept(new ProbeEvent.LinkChanged(stream.now(), ProbeEvent.LinkState.LOST, why));
    }
  }

  /** The probe is heard again. */
  void restored() {
    if (saidLost) {
      saidLost = false;
      stream.accept(
          new ProbeEvent.LinkChanged(
              stream.now(), ProbeEvent.LinkState.RESTORED, "the probe box is heard again"));
    }
  }

  private void reopen() {
    long now = time.monotonicNanos();
    if (now - lostNanos >= GIVE_UP_NANOS || stream.chain() == null || wishes.wantsEnd()) {
      steps.linkLost();
      return;
    }
    if (!backoff.due(now)) {
      return;
    }
    try {
      stream.talk().over(opener.open());
      up = true;
      steps.whoIsThere();
    } catch (IOException notYet) {
      if (!stream.setup().live()) {
        // Nobody plugs an emulated probe in again while it runs as fast as it goes.
        steps.linkLost();
        return;
      }
      stream.progress().step(RunStep.CONNECTING);
    }
  }
}
