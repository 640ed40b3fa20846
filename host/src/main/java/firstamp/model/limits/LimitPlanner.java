package firstamp.model.limits;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.model.samples.Scaling;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;
import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.TripLimits;
import java.util.ArrayList;
import java.util.List;

/**
 * Turns the numbers of one filled sheet into counts.
 *
 * <p>The probe trips when counts are over zero + limit, and the converter rounds to the nearest
 * count, so a limit of n counts acts from n + 1/2 on: rounding down puts it nearest to what the
 * sheet says.
 */
final class LimitPlanner {
  /** A finer limit would trip on the converter's own noise. */
  private static final int FINEST_COUNTS = 4;

  private static final int HIGHEST_I = 1020;
  private static final int HIGHEST_J = 1000;
  private static final int CONFIRM_I = 3;
  private static final int CONFIRM_J = 2;
  private static final int CONFIRM_RAIL = 3;
  private static final int CONFIRM_V = 3;
  private static final int SILENCE_MS = 2000;
  private static final double PULSES_OVER_MEAN = 3;
  private static final long HIGHEST_BUDGET = 2_000_000_000L;
  private static final double I_INTERVAL_S = 250e-6;

  // Crossing to pin at most: the conversions waited for, plus 80 us for the last one and the code.
  private static final double WITHIN_I_MS = 0.83;
  private static final double WITHIN_J_MS = 4.1;
  private static final double WITHIN_RAIL_MS = 3.1;
  private static final double WITHIN_V_MS = 6.1;
  private static final double WITHIN_MEAN_MS = 100.3;

  private final JobSheet sheet;
  private final Calibration calibration;
  private final List<ProbeLimits.Planned> planned = new ArrayList<>();

  LimitPlanner(JobSheet sheet, Calibration calibration) {
    this.sheet = sheet;
    this.calibration = calibration;
  }

  ProbeLimits plan() throws LimitException {
    JobSheet.Limits limits = limits();
    boolean pulsed = "before-reservoir".equals(sheet.supply().probeSits());
    double running = limits.runningA();
    TripLimits.Builder counts =
        TripLimits.builder()
            .confirmCurrent(CONFIRM_I, CONFIRM_J)
            .confirmVolts(CONFIRM_RAIL, CONFIRM_V)
            .silenceMillis(SILENCE_MS)
            .inrush((int) Math.round(limits.inrushMs()), onI("limits.inrushA", limits.inrushA()));
    if (pulsed) {
      counts.peak(onI("limits.peakA", limits.peakA() == null ? limits.inrushA() : limits.peakA()));
      int meanJ = mean(running, Channel.J);
      counts.mean(mean(running, Channel.I), meanJ);
    } else if (running < Scaling.FINE_HIGHEST_A) {
      // J decides; I backs it up three counts wider, clear of its own noise.
      int behind = Math.max(FINEST_COUNTS, (int) Math.ceil(counts(running, Channel.I)) + 2);
      counts.running(behind, onJ(running));
    } else {
      counts.running(onI("limits.runningA", running), 0);
    }
    if (limits.startA() != null && limits.startMs() != null) {
      int start = onI("limits.startA", limits.startA());
      counts.start(start, (int) Math.round(limits.startMs()));
    }
    for (int input = 1; input <= TripLimits.RAILS; input++) {
      counts.rail(input, rail(input));
    }
    counts.i2t(budget(limits.i2tA2s()), i2tRunning(running, pulsed)).overV(overV());
    return new ProbeLimits(counts.build(), planned);
  }

  /**
   * What the budget does not count. Never under the finest limit, else the converter's own steps
   * use the budget up within the hour. A rectifier's pulses have up to 3 times their mean as their
   * effective value (form factor, common practice, no source).
   */
  private int i2tRunning(double running, boolean pulsed) {
    double borne = pulsed ? PULSES_OVER_MEAN * running : running;
    return (int) Math.min(HIGHEST_I, Math.max(FINEST_COUNTS, counts(borne, Channel.I)));
  }

  /** The limits; a set is never powered without the three that always end low. */
  private JobSheet.Limits limits() {
    JobSheet.Limits limits = sheet.limits();
    if (limits == null
        || limits.inrushA() == null
        || limits.inrushMs() == null
        || limits.runningA() == null
        || limits.i2tA2s() == null) {
      throw new IllegalArgumentException(
          "limits " + limits + ", expected inrushA, inrushMs, runningA and i2tA2s filled in");
    }
    return limits;
  }

  private int onI(String field, double ampere) throws LimitException {
    int limit = current(field, ampere, Channel.I, HIGHEST_I, 1);
    add(field, Channel.I, ampere, limit, WITHIN_I_MS);
    return limit;
  }

  private int onJ(double ampere) throws LimitException {
    int limit = current("limits.runningA", ampere, Channel.J, HIGHEST_J, 1);
    add("limits.runningA", Channel.J, ampere, limit, WITHIN_J_MS);
    return limit;
  }

  /** Limit on the mean of 100 ms, 1/16 count; 0 where the channel is the wrong one for it. */
  private int mean(double ampere, Channel channel) throws LimitException {
    if (channel == Channel.J && ampere >= Scaling.FINE_HIGHEST_A) {
      return 0;
    }
    boolean behindJ = channel == Channel.I && ampere < Scaling.FINE_HIGHEST_A;
    if (behindJ) {
      return 16 * Math.max(FINEST_COUNTS, (int) Math.ceil(counts(ampere, Channel.I)) + 2);
    }
    int highest = channel == Channel.I ? HIGHEST_I : HIGHEST_J;
    int limit = current("limits.runningA", ampere, channel, highest, 16);
    double used = limit / 16.0 * step(channel);
    planned.add(
        new ProbeLimits.Planned(
            "limits.runningA", RuleId.OVER_CURRENT, 0, channel, ampere, used, "A", WITHIN_MEAN_MS));
    return limit;
  }

  private int current(String field, double ampere, Channel channel, int highest, int parts)
      throws LimitException {
    double counts = counts(ampere, channel);
    if (counts < FINEST_COUNTS || counts > highest) {
      throw new LimitException(
          field,
          ampere,
          "A",
          new Phrase(
              "to",
              Math.ceil(FINEST_COUNTS * step(channel) * 1e4) / 1e4,
              new Quantity(Math.floor(HIGHEST_I * step(Channel.I) * 10) / 10, "A")),
          counts < FINEST_COUNTS ? "larger" : "smaller");
    }
    return (int) (counts * parts);
  }

  private void add(String field, Channel channel, double ampere, int limit, double withinMs) {
    planned.add(
        new ProbeLimits.Planned(
            field, RuleId.OVER_CURRENT, 0, channel, ampere, limit * step(channel), "A", withinMs));
  }

  private long budget(double squares) throws LimitException {
    double one = step(Channel.I) * step(Channel.I) * I_INTERVAL_S;
    double budget = squares / one;
    if (budget < 1 || budget > HIGHEST_BUDGET) {
      throw new LimitException(
          "limits.i2tA2s",
          squares,
          "A2s",
          new Phrase("to", one, new Quantity(HIGHEST_BUDGET * one, "A2s")),
          "in-range");
    }
    long used = (long) budget;
    planned.add(
        new ProbeLimits.Planned(
            "limits.i2tA2s", RuleId.OVER_CURRENT, 0, Channel.I, squares, used * one, "A2s", 0.33));
    return used;
  }

  private int overV() {
    Double highest = sheet.supply().maxV();
    if (highest == null) {
      return 0;
    }
    // Beyond the range the end of the range is the limit: narrower than stated, never none.
    int limit = (int) Math.min(FULL_SCALE_LIMIT, counts(highest, Channel.V));
    planned.add(
        new ProbeLimits.Planned(
            "supply.maxV",
            RuleId.OVER_VOLTAGE,
            0,
            Channel.V,
            highest,
            limit * step(Channel.V),
            "V",
            WITHIN_V_MS));
    return limit;
  }

  /** Leaves room for the zero that the probe adds. */
  private static final int FULL_SCALE_LIMIT = 1015;

  private RailWindow rail(int input) throws LimitException {
    JobSheet.Rail rail = sheet.rail(input);
    ChannelScale scale = calibration.scale(Channel.ofRail(input));
    if (rail != null && rail.nominalV() != null) {
      inRange(rail, scale);
    }
    if (rail == null || rail.overV() == null) {
      return RailWindow.NONE;
    }
    double one = scale.counts(-rail.overV());
    double other = scale.counts(rail.overV());
    int below = (int) Math.ceil(Math.max(1, Math.min(one, other)));
    int above = (int) Math.floor(Math.min(1022, Math.max(one, other)));
    planned.add(
        new ProbeLimits.Planned(
            "rails[" + sheet.rails().indexOf(rail) + "].overV",
            RuleId.OVER_VOLTAGE,
            input,
            Channel.ofRail(input),
            rail.overV(),
            Math.abs(scale.value(above)),
            "V",
            WITHIN_RAIL_MS));
    return new RailWindow(below, above);
  }

  private void inRange(JobSheet.Rail rail, ChannelScale scale) throws LimitException {
    double lowest = Math.min(scale.zero(), scale.full());
    double highest = Math.max(scale.zero(), scale.full());
    if (rail.nominalV() <= lowest || rail.nominalV() >= highest) {
      throw new LimitException(
          "rails[" + sheet.rails().indexOf(rail) + "].nominalV",
          rail.nominalV(),
          "V",
          new Phrase("between", lowest, new Quantity(highest, "V")),
          "other-clip");
    }
  }

  private double counts(double value, Channel channel) {
    return value / step(channel);
  }

  private double step(Channel channel) {
    return Math.abs(calibration.scale(channel).perCount());
  }
}
