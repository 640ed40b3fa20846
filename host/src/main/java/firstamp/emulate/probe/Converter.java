package firstamp.emulate.probe;

import firstamp.emulate.box.BoxInput;
import firstamp.emulate.box.Gaussian;
import firstamp.model.samples.Channel;
import java.util.List;
import java.util.SplittableRandom;

/**
 * The converter's arithmetic: floor(counts of the input + 0.5 + noise), held to 0 to 1023; an open
 * clip stands at the upper end.
 */
public final class Converter {
  static final int HIGHEST_COUNTS = 1023;

  private static final int NOISE_TABLE = 4096;

  private final BoxInput[] inputs;
  private final double[] basePerUnit = new double[Channel.values().length];
  private final float[] noiseCounts = new float[NOISE_TABLE];
  private final SplittableRandom random;
  private final boolean noisy;

  /**
   * @param inputs what they really do
   * @param noise standard deviation, counts; 0 = none
   */
  public Converter(List<BoxInput> inputs, double noise, long seed) {
    this.inputs = inputs.toArray(BoxInput[]::new);
    for (Channel channel : Channel.values()) {
      basePerUnit[channel.ordinal()] = firstamp.model.samples.Calibration.basePerUnit(channel);
    }
    noisy = noise > 0;
    random = new SplittableRandom(seed);
    // A table of quantiles: Gaussian to 1/4096 in probability, and one cheap draw a conversion.
    for (int i = 0; i < NOISE_TABLE; i++) {
      noiseCounts[i] = (float) (noise * Gaussian.quantile((i + 0.5) / NOISE_TABLE));
    }
  }

  /** Converts a value; NaN is an open clip. */
  public int counts(Channel channel, double value) {
    double noise = noisy ? noiseCounts[random.nextInt() >>> 20] : 0;
    if (Double.isNaN(value)) {
      return HIGHEST_COUNTS;
    }
    int at = channel.ordinal();
    double counts = Math.floor(inputs[at].counts(value * basePerUnit[at]) + 0.5 + noise);
    return (int) Math.max(0, Math.min(HIGHEST_COUNTS, counts));
  }
}
