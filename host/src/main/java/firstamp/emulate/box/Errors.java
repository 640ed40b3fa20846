package firstamp.emulate.box;

import firstamp.model.samples.Channel;
import firstamp.protocol.values.ChannelScale;
import java.util.ArrayList;
import java.util.List;

/** Errors of all parts of one box put together, input by input. */
final class Errors {
  private static final int CHANNELS = Channel.values().length;
  private static final double FULL_COUNTS = 1024;

  /** What 1024 counts are of in the drawn circuit, base units; its errors count from these. */
  private static final double[] DRAWN_SPAN = {12.5e6, 0.4e6, 61.594e6, 40e6, 40e6, 40e6, 20e6, 5e6};

  final double[] gain = new double[CHANNELS];
  final double[] zeroCounts = new double[CHANNELS];
  final double[] bowCounts = new double[CHANNELS];
  final double[] lowestCounts = new double[CHANNELS];
  double clockShare;

  /** Adds what an error of a part does. */
  void add(Tolerance part, double error) {
    for (Tolerance.Effect effect : part.effects()) {
      double change = effect.factor() * error;
      switch (effect.kind()) {
        case GAIN -> gain[effect.channel().ordinal()] += change;
        case ZERO -> zeroCounts[effect.channel().ordinal()] += change;
        case BOW -> bowCounts[effect.channel().ordinal()] += change;
        case FLOOR -> lowestCounts[effect.channel().ordinal()] += change;
        case CLOCK -> clockShare += change;
      }
    }
  }

  List<BoxInput> inputs() {
    List<BoxInput> inputs = new ArrayList<>();
    for (int k = 0; k < CHANNELS; k++) {
      double step = DRAWN_SPAN[k] / FULL_COUNTS / (1 + gain[k]);
      double zero = -zeroCounts[k] * step;
      ChannelScale scale =
          new ChannelScale((int) Math.round(zero), (int) Math.round(zero + FULL_COUNTS * step));
      inputs.add(new BoxInput(scale, bowCounts[k], lowestCounts[k]));
    }
    return inputs;
  }
}
