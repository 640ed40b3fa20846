package firstamp.run;

import firstamp.pipeline.RunRefused;
import firstamp.protocol.codes.CalibrationState;
import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.CalibrationData;
import firstamp.run.talk.Refusals;
import java.io.IOException;

/**
 * Asks who is there until the probe says so, then what it keeps of its calibration.
 *
 * <p>Not thread-safe: belongs to the session thread.
 */
final class Greeting {
  private static final long ASK_NANOS = 250_000_000L;
  private static final long CONNECT_NANOS = 4_500_000_000L;

  /** A box that has not answered by then may be one of an older version. */
  private static final long OLD_BOX_NANOS = 1_500_000_000L;

  private static final int OLDEST_VERSION = 1;

  /** A probe that does not answer in this time is taken at the usual uncertainties. */
  private static final long CALIBRATION_NANOS = 1_500_000_000L;

  private final RunStream stream;
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

  Greeting(RunStream stream) {
    this.stream = stream;
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
      throw noAnswer();
    }
    LineSpeed speed = stream.setup().raw() ? LineSpeed.FAST : LineSpeed.SLOW;
    if (!ask(new HostMessage.HelloRequest(speed)) || now - connectSince < OLD_BOX_NANOS) {
      return null;
    }
    // A box of the first version hears only its own, and answers in it: then it can be named.
    stream.talk().sendHello(OLDEST_VERSION, speed);
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

  private boolean ask(HostMessage message) throws IOException {
    long now = nanos();
    if (now - askedNanos < ASK_NANOS) {
      return false;
    }
    askedNanos = now;
    stream.talk().send(message);
    return true;
  }

  private RunRefused noAnswer() {
    String where = stream.talk().port().describe();
    var foreign = stream.talk().counts().foreignVersion();
    if (foreign.isPresent()) {
      return new RunRefused(
          RunRefused.Kind.ARMING, Refusals.otherVersion(where, foreign.getAsInt(), Frame.VERSION));
    }
    return new RunRefused(
        RunRefused.Kind.PROBE, Refusals.noAnswer(where, stream.talk().counts().bytes()));
  }

  private long nanos() {
    return stream.talk().port().time().monotonicNanos();
  }
}
