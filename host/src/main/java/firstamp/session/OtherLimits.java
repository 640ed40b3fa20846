package firstamp.session;

import firstamp.emulate.RecordedLimits;
import firstamp.log.LogException;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.log.StreamSink;
import firstamp.model.Channel;
import firstamp.model.ConversionBlock;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.Reading;
import firstamp.model.SamplePlan;
import firstamp.model.SwitchState;
import firstamp.model.TripCause;
import firstamp.model.Zero;
import firstamp.protocol.TripLimits;
import java.util.Set;
import java.util.TreeSet;

/**
 * A logged power-up held against the probe limits of another sheet: would the probe have switched
 * off, when, and why? Needs the raw stream.
 */
final class OtherLimits implements StreamSink {
  private static final int OPEN_CLIP_COUNTS = 1023;

  private final JobSheet effective;
  private final ProbeHello hello;
  private final boolean[] clipped = new boolean[4];
  private Zero zero = Zero.NONE;
  private RecordedLimits watch;
  private long closedMicros;
  private boolean on;
  private RunRefused refused;

  private OtherLimits(JobSheet effective, ProbeHello hello) {
    this.effective = effective;
    this.hello = hello;
  }

  /**
   * A trip that did not happen.
   *
   * @param cause of it
   * @param rail 1 to 3, 0 = the supply or no rail
   * @param atMs from closing
   */
  record Found(TripCause cause, int rail, double atMs) {}

  /**
   * The trip that the sheet's limits would have made.
   *
   * @return null = none, or only readings were logged
   * @throws RunRefused this probe cannot watch the sheet's limits
   */
  static Found trip(PowerUpReader reader, JobSheet effective) throws LogException, RunRefused {
    PowerUpHeader header = reader.header();
    if (header.stream() != PowerUpHeader.Stream.RAW) {
      return null;
    }
    OtherLimits other = new OtherLimits(effective, header.hello());
    reader.replay(other);
    if (other.refused != null) {
      throw other.refused;
    }
    return other.found();
  }

  private Found found() {
    RecordedLimits.Crossing crossing = watch == null ? null : watch.crossing();
    if (crossing == null) {
      return null;
    }
    int rail = crossing.channel() - Channel.R1.ordinal() + 1;
    return new Found(
        TripCause.ofWire(crossing.cause()),
        rail >= 1 && rail <= 3 ? rail : 0,
        (crossing.pinMicros() - closedMicros) / 1000.0);
  }

  @Override
  public void conversions(ConversionBlock block) {
    if (on) {
      watch.accept(block);
      return;
    }
    for (int k = 0; k < block.counts().length; k++) {
      Channel channel = SamplePlan.channelAt(block.firstIndex() + k);
      int rail = channel.ordinal() - Channel.R1.ordinal() + 1;
      if (rail >= 1 && rail <= 3 && block.counts()[k] < OPEN_CLIP_COUNTS) {
        clipped[rail] = true;
      }
    }
  }

  @Override
  public void reading(Reading reading) {
    // Readings alone cannot tell what three conversions in a row would have done.
  }

  @Override
  public void event(ProbeEvent event) {
    if (event instanceof ProbeEvent.Looked looked) {
      zero = looked.look().zero();
    } else if (event instanceof ProbeEvent.SwitchChanged changed) {
      boolean closes = changed.state() == SwitchState.ON;
      if (closes && watch == null) {
        begin(changed.micros());
      }
      on = closes && watch != null;
    }
  }

  private void begin(long micros) {
    closedMicros = micros;
    Set<Integer> open = new TreeSet<>();
    for (int rail = 1; rail <= 3; rail++) {
      if (!clipped[rail]) {
        open.add(rail);
      }
    }
    try {
      TripLimits limits = new ProbeSettings(effective).plan(hello, open).limits();
      watch = new RecordedLimits(limits, zero, closedMicros);
    } catch (RunRefused unfit) {
      refused = unfit;
    }
  }
}
