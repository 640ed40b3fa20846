package firstamp.protocol.chip;

import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.TripLimits;
import java.util.Locale;
import java.util.Random;

/**
 * A power-up drawn by its seed: surge, idle current and one thing that happens, and limits in their
 * neighbourhood, so that most of them are passed and some are not.
 */
final class DrawnPowerUp {
  /** What happens in addition to the surge. */
  enum Kind {
    STEP,
    RAMP,
    PULSES,
    FINE_STEP,
    WOBBLE,
    RAIL,
    SUPPLY_VOLTS,
    NOTHING
  }

  static final double SECONDS = 0.6;
  private static final double ROW_SECONDS = 0.0005;
  private static final double I_PER_AMPERE = 1024 / 12.5;
  private static final double J_PER_AMPERE = 1024 / 0.4;

  final int seed;
  final Kind kind;
  final TripLimits limits;
  final String waveform;
  private final Random random;
  private final double atS;
  private final double idleA;
  private final double surgeA;
  private final double tauS;
  private final double eventA;
  private final double railV;
  private final double supplyV;

  DrawnPowerUp(int seed) {
    this.seed = seed;
    this.random = new Random(seed);
    this.kind = Kind.values()[seed % Kind.values().length];
    boolean fine = kind == Kind.FINE_STEP;
    // Between two rows of the waveform, whose times must rise.
    atS = ROW_SECONDS * (20 + random.nextInt(880) + between(0.1, 0.9));
    idleA = fine ? between(0.005, 0.05) : between(0.05, 0.8);
    surgeA = fine ? 0 : between(0.5, 6);
    tauS = between(0.002, 0.02);
    eventA = fine ? between(0.06, 0.35) : between(1, 9);
    railV = between(-15, 15);
    supplyV = between(13.5, 18);
    limits = draw();
    waveform = write();
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private int counts(double ampere) {
    return (int) Math.max(4, Math.min(1020, ampere * I_PER_AMPERE));
  }

  private TripLimits draw() {
    TripLimits.Builder builder = TripLimits.builder().silenceMillis(10_000);
    builder.confirmCurrent(1 + random.nextInt(5), 1 + random.nextInt(3));
    builder.confirmVolts(1 + random.nextInt(4), 1 + random.nextInt(4));
    builder.inrush(
        random.nextInt(80), random.nextInt(4) == 0 ? 0 : counts(surgeA * between(0.6, 2)));
    double running = idleA + (eventA - idleA) * between(0.2, 1.05);
    int finer = (int) Math.min(1000, running * J_PER_AMPERE);
    boolean fine = kind == Kind.FINE_STEP;
    boolean current = kind.ordinal() <= Kind.WOBBLE.ordinal();
    int which = current ? random.nextInt(4) : 4;
    switch (which) {
      case 0 -> builder.running(counts(running), fine ? finer : 0);
      case 1 -> builder.peak(counts(running)).running(fine ? 0 : 1000, fine ? finer : 0);
      case 2 ->
          builder.mean(
              fine ? 0 : 16 * counts(idleA + (eventA - idleA) * between(0.05, 0.7)),
              fine ? Math.max(64, 16 * finer / 2) : 0);
      case 3 -> {
        int ran = counts(running * 0.5);
        long square = (long) counts(eventA) * counts(eventA);
        builder.i2t(1 + (long) (square * between(1, 300)), ran);
      }
      default -> builder.running(counts(idleA * 1.5 + 0.1), 0);
    }
    if (kind == Kind.RAIL) {
      double low = railV < 8 ? between(railV - 2, 7.5) : -20;
      double high = railV > 8 ? between(8.5, railV + 2) : 20;
      builder.rail(1, new RailWindow(railCounts(low), railCounts(high)));
    }
    if (kind == Kind.SUPPLY_VOLTS) {
      builder.overV((int) (between(12.5, 18) * 1024 / 60));
    }
    return builder.build();
  }

  private static int railCounts(double volts) {
    return (int) Math.max(0, Math.min(1023, (volts + 20) / 40 * 1024));
  }

  private String write() {
    StringBuilder csv = new StringBuilder("t_s,supply_V,supply_A,rail1_V\n");
    for (int row = 0; row * ROW_SECONDS <= SECONDS; row++) {
      double t = row * ROW_SECONDS;
      // What changes suddenly does so within a microsecond, at an odd place of the plan.
      if (row > 0 && (t - ROW_SECONDS < atS) != (t < atS)) {
        csv.append(line(atS, false)).append(line(atS + 1e-6, true));
      }
      csv.append(line(t, t >= atS));
    }
    return csv.toString();
  }

  private String line(double t, boolean after) {
    return String.format(
        Locale.ROOT,
        "%.7f,%.3f,%.5f,%.3f%n",
        t,
        after && kind == Kind.SUPPLY_VOLTS ? supplyV : 12,
        ampere(t, after),
        after && kind == Kind.RAIL ? railV : 8);
  }

  private double ampere(double t, boolean after) {
    double quiet = Math.max(idleA, surgeA * Math.exp(-t / tauS));
    if (!after) {
      return quiet;
    }
    double since = t - atS;
    return switch (kind) {
      case STEP, FINE_STEP -> eventA;
      case RAMP -> Math.min(9.5, quiet + eventA * since / 0.1);
      case PULSES -> since % 0.010 < 0.0035 ? eventA : quiet;
      case WOBBLE -> Math.max(0, eventA * (1 + 0.3 * Math.sin(since * 900)) * 0.6);
      default -> quiet;
    };
  }
}
