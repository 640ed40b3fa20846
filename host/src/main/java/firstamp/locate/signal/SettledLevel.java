package firstamp.locate.signal;

import firstamp.model.ClipInput;
import firstamp.model.samples.LevelWindow;
import java.util.ArrayList;
import java.util.List;

/**
 * One level out of the windows during which a clip was held on a point.
 *
 * <p>Windows at both ends that are off the middle by more than 1 dB are left out: there the clip
 * was just going on or coming off. What is left must hold still.
 *
 * @param state outcome @param levelDbv mean power of the settled windows, null unless TAKEN or
 *     AT_MOST
 * @param uncertaintyDb one standard deviation
 * @param windows that settled
 */
public record SettledLevel(State state, Double levelDbv, double uncertaintyDb, int windows) {
  /** Fewer settled windows of 200 ms are no level. */
  public static final int FEWEST = 3;

  private static final double STILL_DB = 1;

  /** A level this much over the converter's own noise is a level. */
  private static final double OVER_FLOOR_DB = 6;

  /**
   * Between two readings at the same point with the clip put on again. Common practice, no source.
   */
  private static final double REPEAT_DB = 0.25;

  /** Outcome. */
  public enum State {
    /** Not long enough yet. */
    TOO_SHORT,
    /** It moved by more than a decibel. */
    NOT_STILL,
    /** The level is over the range of the input. */
    TOO_HIGH,
    /** A level. */
    TAKEN,
    /** The input's own noise: the level is there or below. */
    AT_MOST
  }

  /**
   * Settles it.
   *
   * @param windows that began while the clip was held
   * @param input that looked
   * @param gainDb standard uncertainty of its calibration
   */
  static SettledLevel of(List<LevelWindow> windows, ClipInput input, double gainDb) {
    if (windows.size() < FEWEST) {
      return new SettledLevel(State.TOO_SHORT, null, 0, windows.size());
    }
    List<Double> levels = new ArrayList<>();
    double floorV = 0;
    int clipped = 0;
    for (LevelWindow window : windows) {
      floorV = Math.max(floorV, input.floorV(window));
      clipped += input.clipped(window) ? 1 : 0;
      levels.add(dbv(Math.max(input.volts(window), 1e-9)));
    }
    if (clipped * 2 > windows.size()) {
      return new SettledLevel(State.TOO_HIGH, null, 0, windows.size());
    }
    double leastDbv = dbv(floorV) + OVER_FLOOR_DB;
    double middle = median(levels);
    if (middle < leastDbv) {
      return new SettledLevel(State.AT_MOST, leastDbv, hypot(gainDb, REPEAT_DB), levels.size());
    }
    List<Double> settled = settled(levels, middle);
    if (settled.size() < FEWEST || spread(settled) > 2 * STILL_DB) {
      return new SettledLevel(State.NOT_STILL, null, 0, settled.size());
    }
    double power = 0;
    for (double level : settled) {
      power += StrictMath.pow(10, level / 10) / settled.size();
    }
    double mean = 10 * StrictMath.log10(power);
    double scatter = deviation(settled) / StrictMath.sqrt(settled.size());
    double uncertainty = hypot(hypot(scatter, gainDb), REPEAT_DB);
    return new SettledLevel(State.TAKEN, mean, uncertainty, settled.size());
  }

  private static List<Double> settled(List<Double> levels, double middle) {
    int from = 0;
    int to = levels.size();
    while (from < to && Math.abs(levels.get(from) - middle) > STILL_DB) {
      from++;
    }
    while (to > from && Math.abs(levels.get(to - 1) - middle) > STILL_DB) {
      to--;
    }
    return levels.subList(from, to);
  }

  /** Level of an rms value. */
  static double dbv(double volts) {
    return 20 * StrictMath.log10(volts);
  }

  private static double hypot(double one, double other) {
    return StrictMath.hypot(one, other);
  }

  /** The middle one; of an even number the lower of the two in the middle. */
  static double median(List<Double> levels) {
    List<Double> sorted = levels.stream().sorted().toList();
    return sorted.get((sorted.size() - 1) / 2);
  }

  private static double spread(List<Double> levels) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    for (double level : levels) {
      lowest = Math.min(lowest, level);
      highest = Math.max(highest, level);
    }
    return highest - lowest;
  }

  private static double deviation(List<Double> levels) {
    double mean = levels.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    double squares = 0;
    for (double level : levels) {
      squares += (level - mean) * (level - mean);
    }
    return StrictMath.sqrt(squares / (levels.size() - 1));
  }
}
