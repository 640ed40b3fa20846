package firstamp.session;

import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.log.StreamSink;
import firstamp.model.Channel;
import firstamp.model.ConversionBlock;
import firstamp.model.JobSheet;
import firstamp.model.Numbers;
import firstamp.model.ProbeEvent;
import firstamp.model.Reading;
import firstamp.model.SamplePlan;
import firstamp.model.Scaling;

/**
 * Where the probe itself would have switched off under other limits of the supply current: the
 * first place in the stream with three conversions of I in a row over the limit, as the probe
 * counts them.
 *
 * <p>Readings hold no single conversions: with a reduced stream a reading counts whose mean is
 * over.
 */
final class LimitCrossing {
  private static final int IN_A_ROW = 3;

  private final JobSheet sheet;
  private final Scaling scaling;
  private Double atMs;
  private String words;

  LimitCrossing(JobSheet sheet, Scaling scaling) {
    this.sheet = sheet;
    this.scaling = scaling;
  }

  /** Course time; null = the limits are never crossed. */
  Double atMs() {
    return atMs;
  }

  /** What was seen there against what limit. */
  String words() {
    return words;
  }

  /** Looks through the time the switch was closed. */
  void look(PowerUpReader reader, ReplayTrack track) throws LogException {
    JobSheet.Limits limits = sheet.limits();
    Double closed = track.closedBy(Double.MAX_VALUE);
    if (limits == null || closed == null) {
      return;
    }
    Double opened = track.openedBy(Double.MAX_VALUE);
    long from = index(track.micros(closed));
    long to = opened == null ? Long.MAX_VALUE / 2 : index(track.micros(opened));
    double inrushMs = limits.inrushMs() == null ? 0 : limits.inrushMs();
    long running = from + Math.round(inrushMs * SamplePlan.CONVERSIONS_PER_SECOND / 1000);
    Sink sink = new Sink(limits, from, running, closed);
    try {
      reader.values(from, to, sink);
    } catch (Found found) {
      // The first place is all that is asked for.
      atMs = found.atMs;
      words =
          "supply current " + Numbers.amps(found.value) + ", limit " + Numbers.amps(found.limit);
    }
  }

  private static long index(long micros) {
    return micros * SamplePlan.CONVERSIONS_PER_SECOND / 1_000_000;
  }

  /** Ends the reading from within. */
  private static final class Found extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final double atMs;
    private final double value;
    private final double limit;

    Found(double atMs, double value, double limit) {
      super(null, null, false, false);
      this.atMs = atMs;
      this.value = value;
      this.limit = limit;
    }
  }

  private final class Sink implements StreamSink {
    private final JobSheet.Limits limits;
    private final long from;
    private final long running;
    private final double closedMs;
    private int over;

    Sink(JobSheet.Limits limits, long from, long running, double closedMs) {
      this.limits = limits;
      this.from = from;
      this.running = running;
      this.closedMs = closedMs;
    }

    @Override
    public void conversions(ConversionBlock block) {
      short[] counts = block.counts();
      for (int k = 0; k < counts.length; k++) {
        long index = block.firstIndex() + k;
        if (SamplePlan.channelAt((int) (index & SamplePlan.SLOTS - 1)) == Channel.I) {
          see(index, scaling.value(Channel.I, counts[k]), IN_A_ROW);
        }
      }
    }

    @Override
    public void reading(Reading reading) {
      see(reading.firstIndex(), scaling.supplyA(reading), 1);
    }

    @Override
    public void event(ProbeEvent event) {
      // Values only.
    }

    private void see(long index, double ampere, int needed) {
      Double limit = index < running ? limits.inrushA() : limits.runningA();
      over = limit != null && ampere > limit ? over + 1 : 0;
      if (over >= needed) {
        double ms = closedMs + (index - from) * 1000.0 / SamplePlan.CONVERSIONS_PER_SECOND;
        throw new Found(ms, ampere, limit);
      }
    }
  }
}
