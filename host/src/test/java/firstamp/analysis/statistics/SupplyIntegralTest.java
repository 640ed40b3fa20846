package firstamp.analysis.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.analysis.KeptCalibration;
import firstamp.emulate.box.BoxInput;
import firstamp.emulate.box.DrawnBox;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ReadingReducer;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Scaling;
import firstamp.model.samples.Zero;
import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Monte Carlo (JCGM 101:2008 in its plainest form): boxes drawn from the parts list measure
 * currents and volts that are known; their charge and energy lie within what is stated, and what is
 * stated is not much more than what they are off.
 */
final class SupplyIntegralTest {
  private static final int WORLDS = 400;
  private static final double CONVERSION_S = 62.5e-6;

  /** One current and the volts it flows at, known exactly. */
  private record World(
      double restA, double surgeA, double tauS, double supplyV, double sagOhm, double riseS) {
    static World drawn(SplittableRandom random, double restA) {
      return new World(
          restA * (0.5 + random.nextDouble()),
          random.nextBoolean() ? 0 : 8 * random.nextDouble(),
          0.005 + 0.08 * random.nextDouble(),
          5 + 35 * random.nextDouble(),
          0.5 * random.nextDouble(),
          random.nextBoolean() ? 0 : 0.05 * random.nextDouble());
    }

    double amps(double t) {
      return restA * (1 + 0.1 * Math.sin(2 * Math.PI * 3 * t)) + surgeA * Math.exp(-t / tauS);
    }

    double volts(double t) {
      double risen = riseS == 0 ? 1 : 1 - Math.exp(-t / riseS);
      return supplyV * risen - sagOhm * amps(t);
    }
  }

  /** What a box makes of a world, against what is true. */
  private static final class Measured {
    private final SplittableRandom random;
    private final DrawnBox box;
    private final Calibration known;
    private final SupplySums sums = new SupplySums();
    private double chargeC;
    private double energyJ;

    Measured(long seed, double restA, double seconds) {
      random = new SplittableRandom(seed * 31 + 7);
      box = DrawnBox.of(seed, 20 * random.nextDouble() - 10, random.nextDouble());
      known = KeptCalibration.of(box.kept());
      run(World.drawn(random, restA), (int) (seconds / CONVERSION_S));
    }

    private void run(World world, int conversions) {
      Scaling scaling = new Scaling(known, zero());
      ReadingReducer reducer = new ReadingReducer(reading -> sums.add(reading, scaling));
      short[] counts = new short[conversions];
      for (int k = 0; k < conversions; k++) {
        double t = (k + 0.5) * CONVERSION_S;
        Channel channel = SamplePlan.channelAt(k);
        double value = channel == Channel.V ? world.volts(t) : world.amps(t);
        counts[k] = (short) counts(channel, value);
        chargeC += world.amps(t) * CONVERSION_S;
        energyJ += world.amps(t) * world.volts(t) * CONVERSION_S;
      }
      reducer.accept(0, counts, 0, conversions);
    }

    private int counts(Channel channel, double value) {
      BoxInput input = box.now().get(channel.ordinal());
      double exact = input.counts(value * Calibration.basePerUnit(channel));
      double noise = 0.7 * (random.nextDouble() + random.nextDouble() + random.nextDouble() - 1.5);
      return (int) Math.max(0, Math.min(1023, Math.floor(exact + 0.5 + 2 * noise)));
    }

    /** Means of 200 ms, with the base of the limiter forced: 0.35 mA flow through the shunt. */
    private Zero zero() {
      return new Zero(
          sixteenths(Channel.I, 0.35e-3, 800),
          sixteenths(Channel.J, 0.35e-3, 100),
          sixteenths(Channel.V, 0, 100));
    }

    private int sixteenths(Channel channel, double value, int conversions) {
      double sum = 0;
      for (int k = 0; k < conversions; k++) {
        sum += counts(channel, value);
      }
      return (int) Math.round(16 * sum / conversions);
    }
  }

  /** Share of the worlds in which the truth lies within, and the middle of stated over true. */
  private static String held(String what, double restA, double[] off, double[] stated) {
    int within = 0;
    double[] times = new double[off.length];
    for (int k = 0; k < off.length; k++) {
      within += Math.abs(off[k]) <= stated[k] ? 1 : 0;
      times[k] = stated[k] / Math.max(1e-12, Math.abs(off[k]));
    }
    Arrays.sort(times);
    double share = within / (double) off.length;
    double middle = times[times.length / 2];
    assertThat(share).as("%s at %s A", what, restA).isGreaterThanOrEqualTo(0.95);
    // A normal error lies within a third of its k = 2 limits every other time.
    assertThat(middle).as("%s at %s A is stated too wide", what, restA).isLessThan(5);
    return String.format(Locale.ROOT, " | %.1f %%, %.1f", 100 * share, middle);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.005, 0.1, 0.3, 1, 3})
  void theTruthLiesWithinWhatIsStated(double restA) {
    double[][] off = new double[2][WORLDS];
    double[][] stated = new double[2][WORLDS];
    for (int k = 0; k < WORLDS; k++) {
      Measured world = new Measured(k + 1, restA, 1);
      SupplyIntegral integral = world.sums.integral();
      off[0][k] = integral.chargeC() - world.chargeC;
      stated[0][k] = integral.chargePlusMinus(world.known);
      off[1][k] = integral.energyJ() - world.energyJ;
      stated[1][k] = integral.energyPlusMinus(world.known);
    }
    System.out.println(
        "| "
            + restA
            + " A"
            + held("charge", restA, off[0], stated[0])
            + held("energy", restA, off[1], stated[1])
            + " |");
  }
}
