package firstamp.worlds;

import java.util.SplittableRandom;

/** Draws the parameters of one power-up; the same seed draws the same again. Not thread-safe. */
final class Draw {
  private final SplittableRandom random;
  private final long seed;

  Draw(long seed) {
    this.seed = seed;
    this.random = new SplittableRandom(seed);
  }

  long seed() {
    return seed;
  }

  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  /** Evenly on a logarithmic scale. */
  double decades(double low, double high) {
    return low * Math.pow(high / low, random.nextDouble());
  }

  boolean chance(double share) {
    return random.nextDouble() < share;
  }

  int below(int bound) {
    return random.nextInt(bound);
  }

  @SafeVarargs
  final <T> T oneOf(T... choices) {
    return choices[random.nextInt(choices.length)];
  }

  /** Sum of twelve even draws: close enough to a normal deviate for noise. */
  double normal() {
    double sum = -6;
    for (int k = 0; k < 12; k++) {
      sum += random.nextDouble();
    }
    return sum;
  }
}
