package firstamp.conformance;

import firstamp.protocol.message.Message;
import firstamp.protocol.message.ProbeMessage;

/**
 * The time that has passed for the probe, so that a simulated chip on a busy computer is given what
 * it needs. It continues with the ticks of what the probe sends; where that has stopped for longer
 * than a status may be late, and before the first, with the computer's time.
 */
final class ProbeClock {
  private static final long STOPPED_NANOS = 3_000_000_000L;

  private long nanos;
  private long lastTick = -1;
  private long computerNanos = -1;
  private long tickedNanos;
  private boolean ticked;

  /** Of the others the tick may be that of an event long ago. */
  static boolean tells(Message message) {
    return message instanceof ProbeMessage.Status || message instanceof ProbeMessage.Reading;
  }

  /** 32 bits of microseconds; after a reset of the probe they begin again. */
  void tick(long tickMicros) {
    long passed = lastTick < 0 ? 0 : (int) (tickMicros - lastTick);
    if (passed < -1_000_000L) {
      passed = 0;
    } else if (passed < 0) {
      return;
    }
    nanos += passed * 1000;
    lastTick = tickMicros;
    ticked = true;
  }

  void computer(long now) {
    if (ticked) {
      tickedNanos = now;
      ticked = false;
    }
    boolean stopped = lastTick < 0 || now - tickedNanos > STOPPED_NANOS;
    if (stopped && computerNanos >= 0) {
      nanos += now - computerNanos;
    }
    computerNanos = now;
  }

  long nanos() {
    return nanos;
  }
}
