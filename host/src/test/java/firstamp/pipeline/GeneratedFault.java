package firstamp.pipeline;

import firstamp.model.RuleId;
import firstamp.model.samples.Channel;

/**
 * One generated fault: what it does to a power-up, and from when on.
 *
 * @param fromS seconds from closing
 * @param untilS the alarm must have come by then
 * @param opensAtS the switch opens here, infinity = never
 * @param silentS nothing comes for so long from {@code fromS} on, 0 = it does
 * @param shows what stands at the clips
 */
record GeneratedFault(
    double fromS, double untilS, double opensAtS, double silentS, GeneratedSet.Fault shows) {
  private static final double NEVER = Double.POSITIVE_INFINITY;

  /** A fault drawn for a rule; over its limit 1.2 to 20 times, as far as the inputs reach. */
  static GeneratedFault of(RuleId rule, GeneratedSet set) {
    double x = set.factor();
    double t0 = 2 + Math.round(set.between(0, 25)) * 0.02;
    return switch (rule) {
      case SHORT -> {
        double ohm = 2.5 / x;
        yield at(t0, t0 + 1, both(Channel.V, 1.5 * ohm, 1.5, t0));
      }
      case NO_DRAW -> at(0, 1.5, (c, t, ok) -> c == Channel.I || c == Channel.J ? 0.002 / x : ok);
      case CURRENT_CREEP ->
          at(4, 25, (c, t, ok) -> ampere(c) && t > 4 ? ok + creep(x) * (t - 4) : ok);
      case RAIL_WINDOW -> {
        double away = Math.min(7.9, 0.41 * x) * (x < 3 && set.coin() ? 1 : -1);
        yield at(t0, t0 + 1, rail(Channel.R1, 8.2 + away, t0));
      }
      case RAIL_LATE ->
          at(
              0.3,
              1.3,
              (c, t, ok) -> c == Channel.R1 ? 8.2 * (1 - Math.exp(-3 * t / (0.3 * x))) : ok);
      case RAIL_UNSTEADY -> {
        double half = Math.min(8, 0.82 * x / 2);
        double hertz = set.between(2, 9);
        yield at(
            t0,
            t0 + 2,
            (c, t, ok) ->
                c == Channel.R1 && t > t0
                    ? 8.2 + half * Math.signum(Math.sin(2 * Math.PI * hertz * (t - t0)))
                    : ok);
      }
      case RIPPLE -> {
        double peak = Math.sqrt(2) * QualitySheet.RIPPLE1_V * x;
        double hertz = set.coin() ? 100 : 120;
        yield at(
            t0,
            t0 + 2,
            (c, t, ok) ->
                c == Channel.R1 && t > t0 ? 8.2 + peak * Math.sin(2 * Math.PI * hertz * t) : ok);
      }
      case RIPPLE_TOO_LOW -> {
        // Due is I / (pi 100 C sqrt 2); the limit 0.3 of it, x times less is left.
        double ampere = set.between(0.15, 0.8);
        double left = 0.3 * ampere / (Math.PI * 100 * 2200e-6 * Math.sqrt(2)) / x;
        double volts = 12 * (1.1 + set.between(0.02, 0.15));
        yield at(
            t0,
            t0 + 2,
            (c, t, ok) ->
                t <= t0
                    ? ok
                    : ampere(c)
                        ? ampere
                        : c == Channel.R2
                            ? volts + Math.sqrt(2) * left * Math.sin(2 * Math.PI * 100 * t)
                            : ok);
      }
      case OVER_VOLTAGE -> at(t0, t0 + 1, rail(Channel.R1, Math.min(19.5, 9.8 * x), t0));
      case WRONG_POLARITY -> at(t0, t0 + 1, rail(Channel.R1, -0.5 * x, t0));
      case RAIL_NOT_FOLLOWING -> {
        double fall = Math.min(8, 1.64 * x);
        // A rail that is gone within a reading while the current stays is a clip that came off.
        double takes = set.between(0.05, 0.6);
        yield at(
            t0,
            t0 + takes + 1,
            (c, t, ok) ->
                c == Channel.R1 && t > t0 ? 8.2 - fall * Math.min(1, (t - t0) / takes) : ok);
      }
      case RAIL_CLIMBING -> {
        double climb = Math.min(15, x);
        double takes = set.between(0.05, 1);
        yield new GeneratedFault(
            t0 + 1,
            t0 + 4,
            t0,
            0,
            (c, t, ok) ->
                c == Channel.R1 && t > t0 + 1
                    ? ok + climb * Math.min(1, (t - t0 - 1) / takes)
                    : ok);
      }
      case OUTPUT_OFFSET -> {
        double volts = QualitySheet.OFFSET_V * x * (set.coin() ? 1 : -1);
        yield at(t0, t0 + 1, rail(Channel.R3, volts, t0));
      }
      case HEAD_BELOW_METER -> {
        double share = Math.pow(10, -44.0 / 20) / x;
        yield at(
            t0,
            t0 + 5,
            (c, t, ok) ->
                c == Channel.H && t > t0
                    ? share * set.meterPeak() * Math.sin(2 * Math.PI * 400 * t)
                    : c == Channel.M && t > t0
                        ? set.meterPeak() * Math.sin(2 * Math.PI * 400 * t)
                        : ok);
      }
      case HUM -> {
        double peak = Math.sqrt(2) * QualitySheet.HUM_V * x;
        double hertz = set.coin() ? 50 : 120;
        yield at(
            t0,
            t0 + 3,
            (c, t, ok) ->
                t <= t0
                    ? ok
                    : c == Channel.H
                        ? peak * Math.sin(2 * Math.PI * hertz * t)
                        : c == Channel.M ? 0 : ok);
      }
      case INPUT_CLIPPED ->
          at(
              t0,
              t0 + 1,
              (c, t, ok) ->
                  c == Channel.H && t > t0 ? 0.01 * x * Math.sin(2 * Math.PI * 400 * t) : ok);
      case CLIP_OFF -> at(t0, t0 + 1, rail(Channel.R1, Double.NaN, t0));
      case PROBE_SILENT ->
          new GeneratedFault(t0, t0 + 0.5 * x + 1, NEVER, 0.5 * x, (c, t, ok) -> ok);
      case SWITCH_FAILED ->
          new GeneratedFault(t0, t0 + 1, t0, 0, (c, t, ok) -> ampere(c) && t > t0 ? 0.005 * x : ok);
      default -> throw new IllegalArgumentException(rule.id() + " is not generated here");
    };
  }

  private static double creep(double x) {
    // The healthy set may drift the other way by 0.85 of the limit.
    return (x + 0.85) * QualitySheet.CREEP_A_PER_MIN / 60;
  }

  private static boolean ampere(Channel channel) {
    return channel == Channel.I || channel == Channel.J;
  }

  private static GeneratedFault at(double fromS, double untilS, GeneratedSet.Fault shows) {
    return new GeneratedFault(fromS, untilS, NEVER, 0, shows);
  }

  private static GeneratedSet.Fault rail(Channel rail, double volts, double t0) {
    return (c, t, ok) -> c == rail && t > t0 ? volts : ok;
  }

  private static GeneratedSet.Fault both(Channel one, double value, double ampere, double t0) {
    return (c, t, ok) -> t <= t0 ? ok : c == one ? value : ampere(c) ? ampere : ok;
  }
}
