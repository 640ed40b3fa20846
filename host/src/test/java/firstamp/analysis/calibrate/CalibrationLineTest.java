package firstamp.analysis.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.model.samples.Reading;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Lines through points, and what is refused. */
final class CalibrationLineTest {
  private static final MeterAccuracy METER = new MeterAccuracy(0.5, 0);
  private static final ChannelScale RAIL = Calibration.nominal().scale(Channel.R1);

  private static CalibrationPoint point(double value, double counts) {
    return new CalibrationPoint(
        value,
        new SettledSecond.Mean(counts, 0.7, 0.02, (int) counts - 2, (int) counts + 3, 0.1, true));
  }

  private static CalibrationLine fit(CalibrationPoint... points) throws CalibrationRefused {
    return CalibrationLine.fit(Channel.R1, RAIL, 0.025, List.of(points), METER);
  }

  /**
   * Thermometer calibration of JCGM 100:2008, example H.3 (table H.6, figures from memory): the
   * correction against the reading less 20 has intercept -0.1712 and slope 0.00218.
   */
  @Test
  void lineOfThePublishedThermometer() throws Exception {
    double[] reading = {
      21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
    };
    double[] correction = {
      -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160
    };
    CalibrationPoint[] points = new CalibrationPoint[reading.length];
    for (int k = 0; k < points.length; k++) {
      // Fed as a scale: counts 10 x (t - 20), value t - 20 + correction; slope (1 + 0.00218) / 10.
      points[k] = point(reading[k] - 20 + correction[k], 10 * (reading[k] - 20));
    }
    CalibrationLine line = fit(points);

    assertEquals(-0.1712, line.scale().zero(), 0.0001);
    assertEquals(0.00218, 10 * line.scale().perCount() - 1, 0.00001);
  }

  @Test
  void meterDominatesALongLine() throws Exception {
    CalibrationLine line = fit(point(0, 512), point(9, 742.4));

    // 0.5 % as limits of error: 0.5 / sqrt 3 = 0.2887 %.
    assertEquals(0.002887, line.budget().gainShare(), 0.0003);
    assertEquals(9 / 230.4, line.scale().perCount(), 1e-6);
    assertEquals(0, line.residuals().get(1), 1e-9);
  }

  @Test
  void oneWrongPointWidensTheUncertainty() throws Exception {
    double straight = fit(point(0, 512), point(4.5, 627.2), point(9, 742.4)).budget().gainShare();
    double bent = fit(point(0, 512), point(4.56, 627.2), point(9, 742.4)).budget().gainShare();

    assertTrue(bent > 2 * straight, straight + " and " + bent);
  }

  @Test
  void onePointMovesTheZeroAndKeepsTheGain() throws Exception {
    CalibrationLine line = fit(point(0, 515));

    assertEquals(RAIL.perCount(), line.scale().perCount(), 1e-9);
    assertEquals(0, line.scale().value(515), 1e-6);
    assertEquals(0.025, line.budget().gainShare(), 1e-12);
  }

  @Test
  void badPointsAreRefused() {
    CalibrationPoint zero = point(0, 512);
    refused("not monotonic", zero, point(5, 500));
    refused("end of its range", zero, point(19.9, 1022));
    refused("known to", zero, point(0.02, 512.5));
    refused("all points", zero, point(0, 512.3));
    refused(
        "hold still",
        zero,
        new CalibrationPoint(5, new SettledSecond.Mean(640, 3, 0.5, 630, 650, 12, false)));
  }

  private static void refused(String words, CalibrationPoint... points) {
    String message = assertThrows(CalibrationRefused.class, () -> fit(points)).getMessage();
    assertTrue(message.contains(words), message);
  }

  /** Mean error of rounding noisy values, counted, over all places between two steps. */
  @Test
  void whatRoundingLeavesIsNoMoreThanStated() {
    SplittableRandom random = new SplittableRandom(7);
    for (double noise : new double[] {0.05, 0.2, 0.3, 0.5}) {
      double squares = 0;
      int places = 50;
      int draws = 20_000;
      for (int p = 0; p < places; p++) {
        double value = 100 + (p + 0.5) / places;
        double sum = 0;
        for (int k = 0; k < draws; k++) {
          sum += Math.floor(value + noise * random.nextGaussian() + 0.5) - value;
        }
        squares += sum / draws * (sum / draws) / places;
      }
      double stated = CalibrationLine.quantisationCounts(Math.sqrt(noise * noise + 1.0 / 12));
      assertTrue(Math.sqrt(squares) <= 1.1 * stated + 0.006, noise + ": " + squares);
      assertTrue(stated <= 1.6 * Math.sqrt(squares) + 0.006, noise + " not too wide: " + stated);
    }
  }

  @Test
  void aCreepingSecondIsNotStill() {
    assertTrue(second(0).of(Channel.R1).still());
    assertEquals(600, second(0).of(Channel.R1).meanCounts(), 0.1);
    assertTrue(!second(3).of(Channel.R1).still());
  }

  private static SettledSecond second(double creepCounts) {
    SplittableRandom random = new SplittableRandom(3);
    SettledSecond second = new SettledSecond();
    for (int r = 0; r < SettledSecond.READINGS; r++) {
      int[] sums = new int[8];
      int[] lowest = new int[8];
      int[] highest = new int[8];
      long[] squares = new long[8];
      for (Channel channel : Channel.values()) {
        int c = channel.ordinal();
        lowest[c] = 1023;
        for (int k = 0; k < channel.conversionsPerReading(); k++) {
          int counts = (int) Math.round(600 + creepCounts * r / 100 + 0.7 * random.nextGaussian());
          sums[c] += counts;
          squares[c] += (long) counts * counts;
          lowest[c] = Math.min(lowest[c], counts);
          highest[c] = Math.max(highest[c], counts);
        }
      }
      second.add(new Reading(r * 160L, sums, lowest, highest, squares));
    }
    return second;
  }
}
