package firstamp.locate.signal;

import firstamp.locate.odds.Information;

/**
 * How much a fault takes away: 6 to 60 dB, each ratio alike, on a grid.
 *
 * <p>The same fault takes the same everywhere behind it, so that all levels of one hypothesis are
 * judged with one loss and the grid is summed over afterwards.
 */
final class LossGrid {
  /** Points of the grid. */
  static final int SIZE = 32;

  /** Ranges an answer can fall into: 2 dB each, from -5 to 75 dB below expected. */
  static final int ANSWERS = 40;

  /** Losses that a fault causes, dB. Common practice, no source. */
  private static final double LOWEST_DB = 6;

  private static final double HIGHEST_DB = 60;
  private static final double FIRST_ANSWER_DB = -5;
  private static final double ANSWER_DB = 2;
  private static final double SQRT_2PI = StrictMath.sqrt(2 * StrictMath.PI);

  /** A slipped clip can read anything over this range, dB. Common practice, no source. */
  private static final double SLIP_SPAN_DB = 100;

  /** A fault heard as "there", or a good signal heard as "gone". Common practice, no source. */
  private static final double MISHEARD = 0.03;

  private final double[] lossDb = new double[SIZE];
  private final double[] widthDb = new double[SIZE];

  LossGrid() {
    double step = StrictMath.log(HIGHEST_DB / LOWEST_DB) / (SIZE - 1);
    for (int at = 0; at < SIZE; at++) {
      lossDb[at] = LOWEST_DB * StrictMath.exp(step * at);
      // One step of the grid counts as uncertainty, as a resolution does: q / sqrt 12.
      widthDb[at] = lossDb[at] * step / StrictMath.sqrt(12);
    }
  }

  double lossDb(int at) {
    return lossDb[at];
  }

  /** Log likelihood of a level so far below expected when nothing is lost. */
  static double unlost(double belowDb, double sigmaDb, double slipShare) {
    return likely(belowDb, 0, sigmaDb, slipShare);
  }

  /** The same for the loss at a place of the grid. */
  double lost(double belowDb, int at, double sigmaDb, double slipShare) {
    return likely(belowDb, lossDb[at], StrictMath.hypot(sigmaDb, widthDb[at]), slipShare);
  }

  /** The same for two losses behind each other. */
  double lost(double belowDb, int one, int other, double sigmaDb, double slipShare) {
    double width = StrictMath.hypot(widthDb[one], widthDb[other]);
    return likely(
        belowDb, lossDb[one] + lossDb[other], StrictMath.hypot(sigmaDb, width), slipShare);
  }

  /** Log likelihood of a level of which only the highest possible value is known. */
  static double unlostAtMost(double belowDb, double sigmaDb, double slipShare) {
    return atMost(belowDb, 0, sigmaDb, slipShare);
  }

  /** The same for a loss of the grid, and another one behind it; -1 = none. */
  double lostAtMost(double belowDb, int one, int other, double sigmaDb, double slipShare) {
    double loss = lossDb[one] + (other < 0 ? 0 : lossDb[other]);
    double width = other < 0 ? widthDb[one] : StrictMath.hypot(widthDb[one], widthDb[other]);
    return atMost(belowDb, loss, StrictMath.hypot(sigmaDb, width), slipShare);
  }

  private static double atMost(double belowDb, double lossDb, double sigmaDb, double slipShare) {
    double under = Information.normalBelow((lossDb - belowDb) / sigmaDb);
    return StrictMath.log((1 - slipShare) * under + slipShare / 2 + 1e-300);
  }

  /** Log likelihood of "there" or "gone". */
  static double heard(boolean there, boolean lost) {
    return StrictMath.log(there == lost ? MISHEARD : 1 - MISHEARD);
  }

  private static double likely(double belowDb, double lossDb, double sigmaDb, double slipShare) {
    double off = (belowDb - lossDb) / sigmaDb;
    double density = StrictMath.exp(-0.5 * off * off) / (sigmaDb * SQRT_2PI);
    return StrictMath.log((1 - slipShare) * density + slipShare / SLIP_SPAN_DB + 1e-300);
  }

  /** Shares of the answers when nothing is lost. */
  static double[] unlostAnswers(double sigmaDb) {
    return spread(0, sigmaDb);
  }

  /** Shares of the answers for each place of the grid. */
  double[][] lostAnswers(double sigmaDb) {
    double[][] answers = new double[SIZE][];
    for (int at = 0; at < SIZE; at++) {
      answers[at] = spread(lossDb[at], StrictMath.hypot(sigmaDb, widthDb[at]));
    }
    return answers;
  }

  private static double[] spread(double lossDb, double sigmaDb) {
    double[] shares = new double[ANSWERS];
    double below = 0;
    for (int answer = 0; answer < ANSWERS; answer++) {
      double edge = FIRST_ANSWER_DB + ANSWER_DB * (answer + 1);
      double upTo = answer == ANSWERS - 1 ? 1 : Information.normalBelow((edge - lossDb) / sigmaDb);
      shares[answer] = upTo - below;
      below = upTo;
    }
    return shares;
  }
}
