package firstamp.locate.odds;

/** Odds and information. Pure arithmetic; logs throughout. */
public final class Information {
  private static final double LN_2 = StrictMath.log(2);

  private Information() {}

  /** Log of the sum of the exponentials, safe for very small ones. */
  public static double logSum(double[] logs) {
    double highest = Double.NEGATIVE_INFINITY;
    for (double log : logs) {
      highest = Math.max(highest, log);
    }
    if (highest == Double.NEGATIVE_INFINITY) {
      return highest;
    }
    double sum = 0;
    for (double log : logs) {
      sum += StrictMath.exp(log - highest);
    }
    return highest + StrictMath.log(sum);
  }

  /** Shares that add up to 1, from logs of weights. */
  public static double[] shares(double[] logs) {
    double whole = logSum(logs);
    if (whole == Double.NEGATIVE_INFINITY) {
      throw new IllegalStateException("no explanation has any weight left");
    }
    double[] shares = new double[logs.length];
    for (int at = 0; at < logs.length; at++) {
      shares[at] = StrictMath.exp(logs[at] - whole);
    }
    return shares;
  }

  /** Uncertainty of shares in bit. */
  public static double entropyBits(double[] shares) {
    double bits = 0;
    for (double share : shares) {
      if (share > 0) {
        bits -= share * StrictMath.log(share) / LN_2;
      }
    }
    return bits;
  }

  /**
   * What an answer is expected to tell about a question, in bit.
   *
   * @param shares of the explanations
   * @param answers for each explanation, the shares of its possible answers
   */
  public static double gainBits(double[] shares, double[][] answers) {
    double[] known = new double[shares.length];
    for (int one = 0; one < shares.length; one++) {
      known[one] = entropyBits(answers[one]);
    }
    return gainBits(shares, answers, known);
  }

  /**
   * The same where the uncertainty of each explanation's answers is known already: one question is
   * asked at many points.
   */
  public static double gainBits(double[] shares, double[][] answers, double[] answerBits) {
    double[] mixed = new double[answers[0].length];
    double known = 0;
    for (int one = 0; one < shares.length; one++) {
      for (int answer = 0; answer < mixed.length; answer++) {
        mixed[answer] += shares[one] * answers[one][answer];
      }
      known += shares[one] * answerBits[one];
    }
    return Math.max(0, entropyBits(mixed) - known);
  }

  /** Share of a normal distribution below a value (Abramowitz and Stegun 7.1.26, within 1e-7). */
  public static double normalBelow(double deviations) {
    double x = Math.abs(deviations) / StrictMath.sqrt(2);
    double t = 1 / (1 + 0.3275911 * x);
    double poly =
        t
            * (0.254829592
                + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
    double upper = 0.5 * poly * StrictMath.exp(-x * x);
    return deviations < 0 ? upper : 1 - upper;
  }
}
