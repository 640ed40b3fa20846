package firstamp.model.limits;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.protocol.values.TripLimits;
import java.util.List;

/**
 * The limits that the probe watches by itself, made from a filled job sheet by {@link #plan}.
 *
 * @param counts in the probe's own integers, as they go over the wire
 * @param planned every limit that acts: what the sheet states and what is really used
 */
public record ProbeLimits(TripLimits counts, List<Planned> planned) {
  /** Copies the list. */
  public ProbeLimits {
    planned = List.copyOf(planned);
  }

  /**
   * One limit that the probe watches.
   *
   * @param field place in the sheet, for example {@code limits.runningA}
   * @param rule that a trip by it raises
   * @param rail 1 to 3, 0 = supply
   * @param channel it acts on
   * @param sheetValue what the sheet states
   * @param usedValue what is really used, in the same unit
   * @param unit of both
   * @param withinMs from crossing to the switch pin, at most
   */
  public record Planned(
      String field,
      RuleId rule,
      int rail,
      Channel channel,
      double sheetValue,
      double usedValue,
      String unit,
      double withinMs) {}

  /**
   * Integers of the first look (wire-format.md, "Look parameters").
   *
   * @param skip no look
   * @param maxMs longest look
   * @param voltsPerFine V counts across the look resistor per J count, 1/256
   * @param shortVoltsPerFine V counts per J count at 3 ohm, 1/256
   * @param lowVoltsPerFine the same at 30 ohm
   * @param supplyLowest V counts, 0.3 x nominal
   * @param supplyHighest V counts, 1.15 x nominal
   * @param chargeLimit what the surge may hold: J counts x pairs x V counts; 0 = a lamp holds it
   */
  public record LookParameters(
      boolean skip,
      int maxMs,
      int voltsPerFine,
      int shortVoltsPerFine,
      int lowVoltsPerFine,
      int supplyLowest,
      int supplyHighest,
      long chargeLimit) {}

  /**
   * Limits for a filled sheet on a probe with this calibration.
   *
   * @throws LimitException a limit is finer than the probe's steps, or beyond its range
   */
  public static ProbeLimits plan(JobSheet effective, Calibration calibration)
      throws LimitException {
    return new LimitPlanner(effective, calibration).plan();
  }

  /**
   * Parameters of the first look.
   *
   * @param lookOhm look resistor of the probe
   */
  public static LookParameters look(JobSheet effective, Calibration calibration, double lookOhm) {
    double stepV = Math.abs(calibration.scale(Channel.V).perCount());
    double stepJ = Math.abs(calibration.scale(Channel.J).perCount());
    double perOhm = 256 * stepJ / stepV;
    double nominal = effective.supply().nominalV();
    boolean skip = Boolean.FALSE.equals(effective.supply().look());
    Through through = Through.of(effective);
    return new LookParameters(
        skip,
        3000,
        sixteenBits(lookOhm * perOhm),
        sixteenBits(3 * perOhm),
        sixteenBits(30 * perOhm),
        (int) Math.min(1023, Math.round(through.lookFromV(nominal) / stepV)),
        (int) Math.min(1023, Math.round(1.15 * nominal / stepV)),
        through == Through.LAMP ? 0 : Math.round(LARGEST_SURGE_J / (0.5 * stepJ * PAIR_S * stepV)));
  }

  /** The limiter's switch bears a surge of half C times the volts squared up to this, joule. */
  public static final double LARGEST_SURGE_J = 2;

  /** A pair of conversions of V and J comes every 2 ms. */
  private static final double PAIR_S = 0.002;

  /**
   * What the limiter of the probe's circuit holds with nothing across its switch, ampere; the more
   * volts, the less. The emulated circuit limits by it too.
   */
  public static final double LIMITER_A = 13.8;

  /** The coarse current input ends there, ampere; the limiter may hold more. */
  public static final double COARSE_HIGHEST_A = 12;

  /** The same without the limits of one rail: nothing is clipped to that input. */
  public ProbeLimits withoutRail(int rail) {
    List<Planned> left =
        planned.stream().filter(one -> one.channel() != Channel.ofRail(rail)).toList();
    return new ProbeLimits(counts.withoutRail(rail), left);
  }

  private static int sixteenBits(double value) {
    return (int) Math.max(1, Math.min(65_535, Math.round(value)));
  }
}
