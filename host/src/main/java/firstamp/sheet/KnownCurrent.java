package firstamp.sheet;

import firstamp.model.JobSheet;

/**
 * The first thing known about what a set draws, and the current limits that follow from it. The
 * factors are common practice at repair benches, no single source.
 *
 * @param from what is known
 * @param firstA limit of the supply for the first look at half the volts (with nothing known: at a
 *     quarter)
 * @param nominalA limit of the supply at nominal volts, null = only once more is known
 * @param runningA running limit of the probe before {@link RunningLimit} holds it down, null =
 *     nothing is known
 */
public record KnownCurrent(From from, double firstA, Double nominalA, Double runningA) {
  /** What is known, the best first. */
  public enum From {
    /** The current of an earlier good power-up. */
    IDLE,
    /** The power on the label. */
    LABEL,
    /** The fuse. */
    FUSE,
    /** That it is a battery receiver or recorder. */
    BATTERY_SET,
    /** Nothing. */
    NOTHING
  }

  private static final double POCKET_RECEIVER_A = 0.030;
  private static final double RECORDER_A = 0.150;

  /** For a sheet, filled or not. */
  public static KnownCurrent of(JobSheet sheet) {
    JobSheet.Supply supply = sheet.supply();
    if (supply.idleA() != null) {
      double idle = supply.idleA();
      double factor = Boolean.TRUE.equals(sheet.set().motor()) ? 2 : 1.5;
      return new KnownCurrent(From.IDLE, 0.7 * idle, 1.2 * idle, factor * idle);
    }
    if (supply.labelW() != null) {
      double label = supply.labelW() / supply.nominalV();
      return new KnownCurrent(From.LABEL, 0.25 * label, 0.6 * label, 1.2 * label);
    }
    if (supply.fuseA() != null) {
      double fuse = supply.fuseA();
      return new KnownCurrent(From.FUSE, 0.25 * fuse, 0.5 * fuse, 0.8 * fuse);
    }
    if ("battery".equals(supply.kind()) && "receiver".equals(sheet.set().kind())) {
      return new KnownCurrent(From.BATTERY_SET, 0.010, POCKET_RECEIVER_A, 3 * POCKET_RECEIVER_A);
    }
    if ("battery".equals(supply.kind()) && "recorder".equals(sheet.set().kind())) {
      return new KnownCurrent(From.BATTERY_SET, 0.010, RECORDER_A, 3 * RECORDER_A);
    }
    return new KnownCurrent(From.NOTHING, 0.020, null, null);
  }
}
