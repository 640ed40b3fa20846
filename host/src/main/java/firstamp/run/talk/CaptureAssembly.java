package firstamp.run.talk;

import firstamp.model.Trip;
import firstamp.model.samples.Capture;
import firstamp.protocol.message.ProbeMessage;

/** Puts the sixteen blocks of a trip's capture together; blocks may come twice or in any order. */
final class CaptureAssembly {
  private static final int BLOCKS = Capture.LENGTH / ProbeMessage.Capture.CONVERSIONS;

  private Trip trip;
  private final short[] counts = new short[Capture.LENGTH];
  private int haveBits;
  private int missing;
  private boolean done = true;

  /** The trip whose capture comes next. */
  void begin(Trip next) {
    trip = next;
    haveBits = 0;
    missing = 0;
    done = false;
  }

  boolean incomplete() {
    return !done;
  }

  /**
   * Takes a block.
   *
   * @return the capture when this block made it whole, else null
   */
  Capture add(ProbeMessage.Capture block) {
    int place = block.first() + Capture.DECIDING;
    if (done || block.number() != trip.number() || place % ProbeMessage.Capture.CONVERSIONS != 0) {
      return null;
    }
    for (int k = 0; k < ProbeMessage.Capture.CONVERSIONS; k++) {
      counts[place + k] = block.counts().get(k).shortValue();
    }
    int bit = 1 << place / ProbeMessage.Capture.CONVERSIONS;
    if ((haveBits & bit) == 0) {
      haveBits |= bit;
      missing += block.missing();
    }
    if (haveBits != (1 << BLOCKS) - 1) {
      return null;
    }
    done = true;
    return new Capture(trip.number(), trip.decidedMicros(), missing, counts);
  }
}
