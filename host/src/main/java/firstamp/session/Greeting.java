package firstamp.session;

import firstamp.protocol.CalibrationData;
import firstamp.protocol.CalibrationState;
import firstamp.protocol.HostMessage;
import firstamp.protocol.LineSpeed;
import firstamp.protocol.ProbeMessage;
import java.io.IOException;

/**
 * Asks who is there until the probe says so, then what it keeps of its calibration.
 *
 * <p>Not thread-safe: belongs to the session thread.
 */
final class Greeting {
  private static final long ASK_NANOS = 250_000_000L;
  private static final long CONNECT_NANOS = 4_500_000_000L;

  /** A probe that does not answer in this time is taken at the usual uncertainties. */
  private static final long CALIBRATION_NANOS = 1_500_000_000L;

  private final WatchRun run;
  private ProbeMessage.Hello newHello;
  private ProbeMessage.Hello known;
  private CalibrationData kept;
  private long connectSince;
  private long knownSince;
  private long askedNanos;

  /**
   * Who is there.
   *
   * @param hello of the probe
   * @param calibration that it keeps, null = it was not asked, or did not say
   */
  record Found(ProbeMessage.Hello hello, CalibrationData calibration) {}

  Greeting(WatchRun run) {
    this.run = run;
    again();
  }

  /** From the beginning: the line is new. */
  void again() {
    newHello = null;
    known = null;
    kept = null;
    connectSince = nanos();
    askedNanos = connectSince - ASK_NANOS;
  }

  void hello(ProbeMessage.Hello message) {
    newHello = message;
  }

  void calibration(ProbeMessage.Calibration message) {
    kept = message.data();
  }

  /**
   * Does what is due.
   *
   * @param sameProbe it is known from before: its calibration is not read again, and it may take
   *     any time
   * @return null = not yet
   * @throws RunRefused nobody answers
   */
  Found poll(boolean sameProbe) throws IOException, RunRefused {
    if (newHello != null) {
      known = newHello;
      newHello = null;
      knownSince = nanos();
      askedNanos = knownSince - ASK_NANOS;
    }
    if (known != null) {
      return sameProbe ? found() : readCalibration();
    }
    long now = nanos();
    if (!sameProbe && now - connectSince >= CONNECT_NANOS) {
      throw new RunRefused(RunRefused.Kind.PROBE, noAnswer());
    }
    ask(new HostMessage.HelloRequest(run.setup().raw() ? LineSpeed.FAST : LineSpeed.SLOW));
    return null;
  }

  /** Only a calibrated probe has uncertainties of its own. */
  private Found readCalibration() throws IOException {
    boolean nothingToRead = known.calibration() != CalibrationState.VALID;
    if (nothingToRead || kept != null || nanos() - knownSince >= CALIBRATION_NANOS) {
      return found();
    }
    ask(new HostMessage.CalibrationRead());
    return null;
  }

  private Found found() {
    Found found = new Found(known, kept);
    known = null;
    return found;
  }

  private void ask(HostMessage message) throws IOException {
    long now = nanos();
    if (now - askedNanos >= ASK_NANOS) {
      askedNanos = now;
      run.talk().send(message);
    }
  }

  private String noAnswer() {
    String where = run.talk().port().describe();
    var foreign = run.talk().counts().foreignVersion();
    if (foreign.isPresent()) {
      return "the probe box on "
          + where
          + " speaks version "
          + foreign.getAsInt()
          + " of the wire format, this program version 1. Flash the firmware that came with this program.";
    }
    return Refusals.noAnswer(where, run.talk().counts().bytes());
  }

  private long nanos() {
    return run.talk().port().time().monotonicNanos();
  }
}
