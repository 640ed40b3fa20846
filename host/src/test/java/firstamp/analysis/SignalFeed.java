package firstamp.analysis;

import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.SamplePlan;
import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** Conversions of given courses (volts and amperes over seconds), as the converter rounds them. */
public final class SignalFeed {
  private final Calibration calibration;
  private final Map<Channel, DoubleUnaryOperator> courses = new EnumMap<>(Channel.class);
  private double noiseCounts;
  private Random random = new Random(1);

  public SignalFeed() {
    this(Calibration.nominal());
  }

  public SignalFeed(Calibration calibration) {
    this.calibration = calibration;
  }

  public SignalFeed with(Channel channel, DoubleUnaryOperator course) {
    courses.put(channel, course);
    return this;
  }

  /** Supply current on both ranges. */
  public SignalFeed amps(DoubleUnaryOperator course) {
    return with(Channel.I, course).with(Channel.J, course);
  }

  public SignalFeed rail(int rail, DoubleUnaryOperator course) {
    return with(Channel.ofRail(rail), course);
  }

  public SignalFeed noise(double counts, long seed) {
    noiseCounts = counts;
    random = new Random(seed);
    return this;
  }

  public Calibration calibration() {
    return calibration;
  }

  /** Conversions from one index on; time 0 is index 0. */
  public ConversionBlock block(long firstIndex, int length) {
    short[] counts = new short[length];
    for (int k = 0; k < length; k++) {
      long index = firstIndex + k;
      Channel channel = SamplePlan.channelAt(index);
      DoubleUnaryOperator course = courses.get(channel);
      double value = course == null ? 0 : course.applyAsDouble(index * 62.5e-6);
      double exact = calibration.scale(channel).counts(value);
      if (noiseCounts > 0) {
        exact += noiseCounts * random.nextGaussian();
      }
      counts[k] = (short) Math.max(0, Math.min(1023, Math.floor(exact + 0.5)));
    }
    return new ConversionBlock(firstIndex, counts);
  }

  public static DoubleUnaryOperator sine(double rms, double hz) {
    return t -> rms * Math.sqrt(2) * Math.sin(2 * Math.PI * hz * t + 0.3);
  }
}
