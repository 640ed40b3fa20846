package firstamp.locate.wire;

import java.util.ArrayList;
import java.util.List;

/**
 * What a power-up with one wire joined showed, compared with the last good one; factors: common
 * practice, no source.
 */
public enum TrialVerdict {
  /** Volts collapsed: short. */
  SHORT("short", 0.005),
  /** More current than the trial allows. */
  OVER_DRAW("over-draw", 0.05),
  /** A figure moved the wrong way. */
  WORSE("worse", 0.1),
  /** Nothing moved beyond its uncertainty. */
  NO_CHANGE("no-change", 0.3),
  /** A figure moved towards what is wanted. */
  BETTER("better", 6);

  /** Current of a trial over that of the last good power-up. Common practice, no source. */
  static final double LIMIT_FACTOR = 1.2;

  private final String id;
  private final double factor;

  TrialVerdict(String id, double factor) {
    this.id = id;
    this.factor = factor;
  }

  /** Identifier in files. */
  public String id() {
    return id;
  }

  /** For people. */
  public String words() {
    return id.replace('-', ' ');
  }

  /** By which the odds of the place change. */
  double factor() {
    return factor;
  }

  /** The verdict of an identifier. */
  public static TrialVerdict of(String id) {
    for (TrialVerdict verdict : values()) {
      if (verdict.id.equals(id)) {
        return verdict;
      }
    }
    throw WireRefusals.of("verdict", id);
  }

  /**
   * One figure in both power-ups.
   *
   * @param name of the figure; figures of one name do not confirm each other
   * @param before in the last good power-up
   * @param after in the trial
   * @param wanted when all is well
   * @param plusMinus expanded uncertainty of the difference
   */
  public record Figure(String name, double before, double after, double wanted, double plusMinus) {
    /** Checks the figures. */
    public Figure {
      for (double value : new double[] {before, after, wanted, plusMinus}) {
        if (!Double.isFinite(value)) {
          throw new IllegalArgumentException("figure " + name + " holds " + value);
        }
      }
    }

    private double nearer() {
      return Math.abs(before - wanted) - Math.abs(after - wanted);
    }
  }

  /**
   * A verdict and the figures that speak for it.
   *
   * @param verdict of the trial
   * @param figures that became better
   */
  public record Judged(TrialVerdict verdict, List<String> figures) {
    /** Copies the list. */
    public Judged {
      figures = List.copyOf(figures);
    }
  }

  /**
   * Compares a trial with the last good power-up.
   *
   * @param shorted whether the look or an alarm said short
   * @param tripped whether the probe switched off
   * @param idleA current of the trial, null = not settled
   * @param goodIdleA current of the last good power-up
   */
  public static Judged judge(
      boolean shorted, boolean tripped, Double idleA, double goodIdleA, List<Figure> figures) {
    if (shorted) {
      return new Judged(SHORT, List.of());
    }
    if (tripped || (idleA != null && idleA > LIMIT_FACTOR * goodIdleA)) {
      return new Judged(OVER_DRAW, List.of());
    }
    List<String> better = new ArrayList<>();
    for (Figure figure : figures) {
      if (figure.nearer() < -figure.plusMinus()) {
        return new Judged(WORSE, List.of());
      }
      if (figure.nearer() > figure.plusMinus()) {
        better.add(figure.name());
      }
    }
    return new Judged(better.isEmpty() ? NO_CHANGE : BETTER, better);
  }
}
