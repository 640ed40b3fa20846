package firstamp.analysis.spectrum;

import firstamp.model.JobSheet;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.RippleWindow;
import java.util.Objects;
import java.util.function.Consumer;

/**
 * Ripple of the rails on the sheet in windows of 200 ms, aligned to conversions whose index is a
 * multiple of 3200.
 *
 * <p>A rail's conversions are 16 slots apart: 200 of them at 1 kHz, bins of 5 Hz, so multiples of
 * 50 and 60 Hz fall on bins. What lies over 500 Hz folds back: with 50 Hz mains onto the same
 * lines, with 60 Hz beside them; of a full-wave ripple of 30 degrees of conduction that is under
 * 0.2 % of the power. A narrow sawtooth on mains that stands still against the probe's clock reads
 * up to 8 % off in all, 2 % in its tone; mains wanders, which evens that out over windows. Noise is
 * what lies between the lines. A straight slope is taken off first, or a rail that still rises
 * would pass for hum. A window with a gap in it is not emitted. Not thread-safe.
 */
public final class RippleMeter {
  private static final int WINDOW_CONVERSIONS = WindowCutter.CONVERSIONS;
  private static final int SAMPLES = WINDOW_CONVERSIONS / 16;
  private static final double MIDDLE = (SAMPLES - 1) / 2.0;
  private static final double BIN_HZ = 5;
  private static final int HIGHEST_HZ = 485;

  private final Consumer<RippleWindow> sink;
  private final Calibration calibration;
  private final boolean[] wanted = new boolean[4];
  private final int[][] samples = new int[4][SAMPLES];
  private final double[] flatA = new double[SAMPLES];
  private final double[] flatB = new double[SAMPLES];
  private final PairSpectrum spectrum = new PairSpectrum(new Fourier(SAMPLES, 5, 5, 4, 2));
  private final HarmonicComb odd50 = new HarmonicComb(50, 1, 2, HIGHEST_HZ, BIN_HZ, null);
  private final HarmonicComb even50 = new HarmonicComb(50, 2, 2, HIGHEST_HZ, BIN_HZ, null);
  private final HarmonicComb odd60 = new HarmonicComb(60, 1, 2, HIGHEST_HZ, BIN_HZ, null);
  private final HarmonicComb even60 = new HarmonicComb(60, 2, 2, HIGHEST_HZ, BIN_HZ, null);
  private final WindowCutter cutter = new WindowCutter(new Inputs());
  private final Consumer<RailLines> lines;

  /**
   * A meter with nothing collected.
   *
   * @param effective sheet; rails that are not on it are not looked at
   * @param calibration of the probe
   * @param sink called with each complete window of each rail
   */
  public RippleMeter(JobSheet effective, Calibration calibration, Consumer<RippleWindow> sink) {
    this(effective, calibration, sink, null);
  }

  /**
   * A meter that also tells the single lines.
   *
   * @param effective sheet; rails that are not on it are not looked at
   * @param calibration of the probe
   * @param sink called with each complete window of each rail
   * @param lines called just before with the lines of that window; null = not wanted
   */
  public RippleMeter(
      JobSheet effective,
      Calibration calibration,
      Consumer<RippleWindow> sink,
      Consumer<RailLines> lines) {
    this.sink = Objects.requireNonNull(sink, "sink");
    this.lines = lines;
    this.calibration = Objects.requireNonNull(calibration, "calibration");
    for (JobSheet.Rail rail : effective.rails()) {
      wanted[rail.input()] = true;
    }
  }

  /** Takes conversions; anything but the successor of the last one is a gap. */
  public void accept(ConversionBlock block) {
    accept(block.firstIndex(), block.counts(), 0, block.counts().length);
  }

  /**
   * Takes conversions out of a larger array.
   *
   * @param firstIndex index of the first
   * @param counts values 0 to 1023
   * @param offset of the first in {@code counts}
   * @param length how many
   */
  public void accept(long firstIndex, short[] counts, int offset, int length) {
    cutter.accept(firstIndex, counts, offset, length);
  }

  /** Slots 7, 11, 15 of each sixteen are the rails 1, 2, 3. */
  private final class Inputs implements WindowCutter.Windows {
    @Override
    public void collect(int place, short[] counts, int offset, int run) {
      for (int rail = 1; rail <= 3; rail++) {
        if (wanted[rail]) {
          int[] of = samples[rail];
          for (int i = (3 + 4 * rail - place & 15); i < run; i += 16) {
            of[place + i >> 4] = counts[offset + i];
          }
        }
      }
    }

    @Override
    public void complete(long firstIndex) {
      emit(firstIndex);
    }
  }

  private void emit(long begin) {
    int first = 0;
    for (int rail = 1; rail <= 3; rail++) {
      if (!wanted[rail]) {
        continue;
      }
      if (first == 0) {
        first = rail;
      } else {
        emitPair(begin, first, rail);
        first = 0;
      }
    }
    if (first != 0) {
      emitPair(begin, first, 0);
    }
  }

  private void emitPair(long begin, int railA, int railB) {
    double meanA = flatten(samples[railA], flatA);
    double meanB = flatten(samples[railB], flatB);
    spectrum.compute(flatA, flatB);
    lines(begin, railA, false);
    sink.accept(window(begin, railA, meanA, spectrum.powerA()));
    if (railB != 0) {
      lines(begin, railB, true);
      sink.accept(window(begin, railB, meanB, spectrum.powerB()));
    }
  }

  private void lines(long begin, int rail, boolean second) {
    if (lines != null) {
      double perCount = Math.abs(calibration.scale(Channel.ofRail(rail)).perCount());
      lines.accept(
          new RailLines(
              rail,
              begin,
              new MainsLines(spectrum, second, BIN_HZ, perCount),
              clipped(samples[rail])));
    }
  }

  private static boolean clipped(int[] counts) {
    for (int count : counts) {
      if (count <= 0 || count >= 1023) {
        return true;
      }
    }
    return false;
  }

  private RippleWindow window(long begin, int rail, double meanCounts, double[] power) {
    double first50 = odd50.excess(power);
    double second50 = even50.excess(power);
    double first60 = odd60.excess(power);
    double second60 = even60.excess(power);
    double all50 = first50 + second50;
    double all60 = first60 + second60;
    boolean sixty = all60 > all50;
    HarmonicComb odd = sixty ? odd60 : odd50;
    HarmonicComb even = sixty ? even60 : even50;
    // A converter without noise of its own still has the error of its steps.
    double steps = (1.0 / 12) / (SAMPLES / 2.0) * (odd.lineBins() + even.lineBins());
    double noise = Math.max(steps, odd.noisePower(power) + even.noisePower(power));
    Channel channel = Channel.ofRail(rail);
    double perCount = Math.abs(calibration.scale(channel).perCount());
    return new RippleWindow(
        rail,
        begin,
        begin + WINDOW_CONVERSIONS,
        calibration.scale(channel).value(meanCounts),
        sixty ? 60 : 50,
        Math.sqrt(Math.max(0, sixty ? first60 : first50)) * perCount,
        Math.sqrt(Math.max(0, sixty ? second60 : second50)) * perCount,
        Math.sqrt(Math.max(0, sixty ? all60 : all50)) * perCount,
        Math.sqrt(noise) * perCount,
        Math.sqrt(odd.lowestLine(power)) * perCount,
        Math.sqrt(even.lowestLine(power)) * perCount);
  }

  /** Takes the least-squares line off; returns the mean. */
  private static double flatten(int[] samples, double[] flat) {
    // Of integers, so exact in any order; the moment is about the middle and doubled.
    int sum = 0;
    int moment = 0;
    for (int i = 0; i < SAMPLES; i++) {
      sum += samples[i];
      moment += samples[i] * (2 * i - SAMPLES + 1);
    }
    double mean = sum / (double) SAMPLES;
    double slope = moment / 2.0 / (SAMPLES * (SAMPLES * (double) SAMPLES - 1) / 12);
    for (int i = 0; i < SAMPLES; i++) {
      flat[i] = samples[i] - mean - slope * (i - MIDDLE);
    }
    return mean;
  }
}
