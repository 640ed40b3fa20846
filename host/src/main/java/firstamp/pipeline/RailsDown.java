package firstamp.pipeline;

import firstamp.model.JobSheet;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;

/**
 * After the switch has opened: until when the rails are followed.
 *
 * <p>A rail is down when it is under the smaller of 10 V and a tenth of nominal. Never called safe.
 * The volts and times are common practice, no source.
 */
public final class RailsDown {
  private static final long SHORTEST_MICROS = 300_000;
  private static final long LONGEST_MICROS = 30_000_000;
  private static final long CAPTURE_MICROS = 2_000_000;
  private static final long HELD_MICROS = 150_000;
  private static final double HIGHEST_V = 10;

  private final JobSheet sheet;
  private final long sinceMicros;
  private long downSinceMicros;

  public RailsDown(JobSheet sheet, long sinceMicros) {
    this.sheet = sheet;
    this.sinceMicros = sinceMicros;
    this.downSinceMicros = sinceMicros;
  }

  public long sinceMicros() {
    return sinceMicros;
  }

  /** Whether there is nothing left to follow. */
  public boolean over(Chain chain, long nowMicros, boolean captureMissing) {
    long elapsed = nowMicros - sinceMicros;
    if (elapsed < SHORTEST_MICROS) {
      downSinceMicros = nowMicros;
      return false;
    }
    if (captureMissing && elapsed < CAPTURE_MICROS) {
      return false;
    }
    if (!allDown(chain)) {
      downSinceMicros = nowMicros;
    }
    // Down for as long as the figures on the screen are averaged over, so that they say so too.
    return elapsed >= LONGEST_MICROS || nowMicros - downSinceMicros >= HELD_MICROS;
  }

  private boolean allDown(Chain chain) {
    Reading reading = chain.latest();
    if (reading == null || chain.closedMicros() == null) {
      return true;
    }
    for (JobSheet.Rail rail : sheet.rails()) {
      Channel channel = Channel.ofRail(rail.input());
      boolean connected = reading.lowest(channel) < 1023;
      if (connected
          && rail.nominalV() != null
          && Math.abs(chain.scaling().railV(reading, rail.input())) >= downV(rail.nominalV())) {
        return false;
      }
    }
    return Math.abs(chain.scaling().supplyV(reading)) < downV(sheet.supply().nominalV());
  }

  /** Under this a rail counts as down. */
  static double downV(double nominalV) {
    return Math.min(HIGHEST_V, Math.abs(nominalV) / 10);
  }
}
