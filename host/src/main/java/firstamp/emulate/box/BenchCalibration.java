package firstamp.emulate.box;

import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.ChannelScale;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * What the three steps of a calibration leave in a box: clips together, a battery on volts and
 * rails, two currents through a resistor; head and meter keep their nominal gain. Points, least
 * squares and stated uncertainties follow the host's calibration; DrawnBoxCalibrationTest holds the
 * two together.
 */
final class BenchCalibration {
  /** Volts of the battery, ampere of the two currents (as in the practice calibration). */
  private static final double BATTERY_V = 9.137;

  private static final double[] AMPS = {0.32, 0.905};
  private static final double FULL_COUNTS = 1024;
  private static final double NOISE_COUNTS = 0.7;
  private static final double SECONDS = 1;

  /** Highest mean of J that the fine range takes as a point. */
  private static final double FINE_HIGHEST_COUNTS = 1000;

  /** 2026-01-01. */
  private static final long MADE_EPOCH_S = 1_767_225_600;

  /** Standard uncertainties that such a calibration states: 1e-5 of the gain, 1/100 count. */
  private static final int VOLTS_GAIN_E5 = 470;

  private static final int AMPS_GAIN_E5 = 870;
  private static final int NOMINAL_GAIN_E5 = 2500;
  private static final int ZERO_HUNDREDTHS = 6;

  private final List<BoxInput> inputs;
  private final BenchMeter meter;
  private final SplittableRandom random;

  BenchCalibration(List<BoxInput> inputs, BenchMeter meter) {
    this.inputs = inputs;
    this.meter = meter;
    this.random = new SplittableRandom(meter.noiseSeed());
  }

  CalibrationData kept() {
    List<ChannelScale> scales = new ArrayList<>();
    List<Integer> gain = new ArrayList<>();
    List<Integer> zero = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      double[] truths = points(channel);
      double share =
          channel.ordinal() <= Channel.J.ordinal() ? meter.ampsShare() : meter.voltsShare();
      scales.add(line(channel, truths, share));
      gain.add(
          truths.length == 1
              ? NOMINAL_GAIN_E5
              : channel.ordinal() <= Channel.J.ordinal() ? AMPS_GAIN_E5 : VOLTS_GAIN_E5);
      zero.add(ZERO_HUNDREDTHS);
    }
    return new CalibrationData(MADE_EPOCH_S, scales, gain, zero);
  }

  private double[] points(Channel channel) {
    return switch (channel) {
      case I -> new double[] {0, AMPS[0], AMPS[1]};
      case J ->
          mean(channel, AMPS[0]) < FINE_HIGHEST_COUNTS
              ? new double[] {0, AMPS[0]}
              : new double[] {0};
      case V, R1, R2, R3 -> new double[] {0, BATTERY_V};
      case H, M -> new double[] {0};
    };
  }

  private double mean(Channel channel, double value) {
    return inputs.get(channel.ordinal()).counts(value * Calibration.basePerUnit(channel));
  }

  /** Least squares through what was typed and what was read. */
  private ChannelScale line(Channel channel, double[] truths, double meterShare) {
    double noise =
        NOISE_COUNTS / Math.sqrt(SECONDS * 100 * channel.conversionsPerReading()) * Math.sqrt(3);
    double base = Calibration.basePerUnit(channel);
    int n = truths.length;
    double[] counts = new double[n];
    double[] typed = new double[n];
    double meanCounts = 0;
    double meanTyped = 0;
    for (int k = 0; k < n; k++) {
      counts[k] = mean(channel, truths[k]) + noise * random.nextDouble(-1, 1);
      typed[k] = truths[k] * (1 + meterShare) * base;
      meanCounts += counts[k] / n;
      meanTyped += typed[k] / n;
    }
    double spread = 0;
    double joint = 0;
    for (int k = 0; k < n; k++) {
      spread += (counts[k] - meanCounts) * (counts[k] - meanCounts);
      joint += (counts[k] - meanCounts) * (typed[k] - meanTyped);
    }
    double nominal = ChannelScale.nominal().get(channel.ordinal()).valuePerCount();
    double step = n == 1 ? nominal : joint / spread;
    double zero = meanTyped - step * meanCounts;
    return new ChannelScale((int) Math.round(zero), (int) Math.round(zero + FULL_COUNTS * step));
  }
}
