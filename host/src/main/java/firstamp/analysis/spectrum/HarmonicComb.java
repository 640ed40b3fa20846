package firstamp.analysis.spectrum;

import java.util.ArrayList;
import java.util.List;

/**
 * Lines at multiples of one frequency in a power spectrum, against what lies between them.
 *
 * <p>A line is three bins wide (a Hann window puts a sine on a bin into just these; half a bin off
 * loses 0.1 dB). The noise is the mean of the bins half-way to the next line. What a comb of the
 * other mains frequency puts there only lowers this one's figure, so the stronger comb is the right
 * one.
 */
final class HarmonicComb {
  private final int baseHz;
  private final int[] lines;
  private final int[] between;

  /**
   * A comb on a spectrum.
   *
   * @param baseHz lowest multiple counted from, 50 or 60
   * @param first first multiple
   * @param step multiples between lines
   * @param highestHz last line at most
   * @param binHz distance of the spectrum's bins
   * @param toneHz lines within 10 Hz of it or of a multiple are left out; null = none
   */
  HarmonicComb(int baseHz, int first, int step, int highestHz, double binHz, Double toneHz) {
    this.baseHz = baseHz;
    List<Integer> lineBins = new ArrayList<>();
    List<Integer> betweenBins = new ArrayList<>();
    for (int multiple = first; multiple * baseHz <= highestHz; multiple += step) {
      double hz = (double) multiple * baseHz;
      if (!nearTone(hz, toneHz, 10)) {
        addThree(lineBins, hz, binHz);
      }
      double middleHz = hz + 0.5 * baseHz;
      if (middleHz <= highestHz && !nearTone(middleHz, toneHz, 20)) {
        addThree(betweenBins, middleHz, binHz);
      }
    }
    this.lines = lineBins.stream().mapToInt(Integer::intValue).toArray();
    this.between = betweenBins.stream().mapToInt(Integer::intValue).toArray();
  }

  /** 50 or 60. */
  int baseHz() {
    return baseHz;
  }

  /** How many bins the lines take. */
  int lineBins() {
    return lines.length;
  }

  /** Mean square of the lines, noise in it. */
  double linePower(double[] power) {
    return sum(power, lines);
  }

  /** Lines less noise; below 0 where the lines happen to hold less than what is between them. */
  double excess(double[] power) {
    return linePower(power) - noisePower(power);
  }

  /** Mean square that noise alone puts into the lines. */
  double noisePower(double[] power) {
    return between.length == 0 ? 0 : sum(power, between) * lines.length / between.length;
  }

  /** Mean square of the lowest line alone, noise taken off; never under 0. */
  double lowestLine(double[] power) {
    double line = power[lines[0]] + power[lines[1]] + power[lines[2]];
    return Math.max(0, line - 3 * noisePower(power) / lines.length);
  }

  private static double sum(double[] power, int[] bins) {
    double sum = 0;
    for (int bin : bins) {
      sum += power[bin];
    }
    return sum;
  }

  private static void addThree(List<Integer> bins, double hz, double binHz) {
    int centre = (int) Math.round(hz / binHz);
    for (int bin = centre - 1; bin <= centre + 1; bin++) {
      bins.add(bin);
    }
  }

  private static boolean nearTone(double hz, Double toneHz, double withinHz) {
    if (toneHz == null || !(toneHz > 0)) {
      return false;
    }
    double multiple = Math.max(1, Math.rint(hz / toneHz));
    return Math.abs(hz - multiple * toneHz) <= withinHz;
  }
}
