package firstamp.analysis.spectrum;

import firstamp.model.JobSheet;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.LevelWindow;
import java.util.Objects;
import java.util.function.Consumer;

/**
 * Levels of head and meter in windows of 200 ms, aligned to conversions whose index is a multiple
 * of 3200.
 *
 * <p>800 conversions each at 4 kHz give bins of 5 Hz: 50, 60 and most tones fall on one. The 62.5
 * us between a head and a meter conversion do not matter to powers. A window with a gap in it is
 * not emitted. Not thread-safe.
 */
public final class LevelMeter {
  /** Conversions of all channels in a window. */
  public static final int WINDOW_CONVERSIONS = WindowCutter.CONVERSIONS;

  /**
   * Noise taken for the converter, counts rms: 0.7 of its own and one step's 1/sqrt 12 (JCGM
   * 100:2008 F.2.2.1); the 0.7 is an assumption until a board is measured.
   */
  public static final double CONVERTER_NOISE_COUNTS = StrictMath.sqrt(0.7 * 0.7 + 1.0 / 12);

  static final double BIN_HZ = 5;
  public static final int LOWEST_BIN = 6;
  public static final int HIGHEST_BIN = 320;
  private static final int SAMPLES = WINDOW_CONVERSIONS / 4;
  private static final double SAMPLES_PER_SECOND = 4000;
  private static final double TONE_SHARE = 0.5;
  private static final double FLOOR_COUNTS =
      CONVERTER_NOISE_COUNTS
          * StrictMath.sqrt((HIGHEST_BIN - LOWEST_BIN + 1) / (double) (SAMPLES / 2));

  private final Consumer<LevelWindow> sink;
  private final double headVPerCount;
  private final double meterVPerCount;
  private final ChannelScale meterScale;
  private final Double toneHz;
  private final HarmonicComb odd50;
  private final HarmonicComb even50;
  private final HarmonicComb odd60;
  private final HarmonicComb even60;
  private final PairSpectrum spectrum = new PairSpectrum(new Fourier(SAMPLES, 5, 5, 4, 4, 2));
  private final double[] head = new double[SAMPLES];
  private final double[] meter = new double[SAMPLES];
  private final float[] meterAc = new float[SAMPLES];
  private final WindowCutter cutter = new WindowCutter(new Inputs());
  private final Consumer<LevelDetail> details;
  private final ToneDecomposition split;
  private VuBallistics needle = new VuBallistics(4 * SAMPLES_PER_SECOND);
  private Upsampler4 between = new Upsampler4(SAMPLES);
  private long needleIndex = Long.MIN_VALUE;

  /**
   * A meter with nothing collected.
   *
   * @param effective sheet; its tone decides what counts as tone and what as hum
   * @param calibration of the probe
   * @param sink called with each complete window
   */
  public LevelMeter(JobSheet effective, Calibration calibration, Consumer<LevelWindow> sink) {
    this(effective, calibration, sink, null);
  }

  /**
   * A meter that also tells the details.
   *
   * @param effective sheet; its tone decides what counts as tone and what as hum
   * @param calibration of the probe
   * @param sink called with each complete window
   * @param details called just before with what else that window holds; null = not wanted
   */
  public LevelMeter(
      JobSheet effective,
      Calibration calibration,
      Consumer<LevelWindow> sink,
      Consumer<LevelDetail> details) {
    this.sink = Objects.requireNonNull(sink, "sink");
    this.details = details;
    this.headVPerCount = Math.abs(calibration.scale(Channel.H).perCount());
    this.meterScale = calibration.scale(Channel.M);
    this.meterVPerCount = Math.abs(meterScale.perCount());
    Double wanted = effective.levels() == null ? null : effective.levels().toneHz();
    boolean measurable = wanted != null && wanted >= 40 && wanted <= 1590;
    this.toneHz = measurable ? wanted : null;
    this.split = toneHz == null ? null : new ToneDecomposition(toneHz, SAMPLES);
    this.odd50 = new HarmonicComb(50, 1, 2, 500, BIN_HZ, toneHz);
    this.even50 = new HarmonicComb(50, 2, 2, 500, BIN_HZ, toneHz);
    this.odd60 = new HarmonicComb(60, 1, 2, 500, BIN_HZ, toneHz);
    this.even60 = new HarmonicComb(60, 2, 2, 500, BIN_HZ, toneHz);
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

  /** Slots 1 and 2 of each four are H and M. */
  private final class Inputs implements WindowCutter.Windows {
    @Override
    public void collect(int place, short[] counts, int offset, int run) {
      for (int i = (1 - place & 3); i < run; i += 4) {
        head[place + i >> 2] = counts[offset + i] - 512;
      }
      for (int i = (2 - place & 3); i < run; i += 4) {
        meter[place + i >> 2] = counts[offset + i] - 512;
      }
    }

    @Override
    public void complete(long firstIndex) {
      emit(firstIndex);
    }
  }

  private void emit(long begin) {
    spectrum.compute(head, meter);
    double[] headPower = spectrum.powerA();
    double[] meterPower = spectrum.powerB();
    double meterBand = 0;
    double headBand = 0;
    // Both in one loop: one sum does not wait for the other.
    for (int k = LOWEST_BIN; k <= HIGHEST_BIN; k++) {
      meterBand += meterPower[k];
      headBand += headPower[k];
    }
    Double headTone = null;
    Double meterTone = null;
    double share = 0;
    if (toneHz != null) {
      double meterTonePower = tone(meterPower);
      headTone = Math.sqrt(tone(headPower)) * headVPerCount;
      meterTone = Math.sqrt(meterTonePower) * meterVPerCount;
      share = meterBand > 0 ? Math.min(1, meterTonePower / meterBand) : 0;
    }
    double head50 = hum(odd50, even50, headPower);
    double head60 = hum(odd60, even60, headPower);
    boolean sixty = head60 > head50;
    HarmonicComb odd = sixty ? odd60 : odd50;
    HarmonicComb even = sixty ? even60 : even50;
    double meterHum = hum(odd, even, meterPower);
    double meterMean = mean(meter);
    if (details != null) {
      details.accept(detail(begin, headPower, meterPower, meterMean, share));
    }
    sink.accept(
        new LevelWindow(
            begin,
            begin + WINDOW_CONVERSIONS,
            Math.sqrt(headBand) * headVPerCount,
            Math.sqrt(meterBand) * meterVPerCount,
            headTone,
            meterTone,
            share,
            meterScale.value(512 + meterMean),
            Math.sqrt(sixty ? head60 : head50) * headVPerCount,
            Math.sqrt(meterHum) * meterVPerCount,
            sixty ? 60 : 50,
            FLOOR_COUNTS * headVPerCount,
            FLOOR_COUNTS * meterVPerCount,
            clipped(head),
            clipped(meter),
            Math.sqrt(Math.max(0, odd.excess(headPower))) * headVPerCount,
            Math.sqrt(Math.max(0, even.excess(headPower))) * headVPerCount));
  }

  private LevelDetail detail(
      long begin, double[] headPower, double[] meterPower, double mean, double toneShare) {
    if (begin != needleIndex) {
      needle = new VuBallistics(4 * SAMPLES_PER_SECOND);
      between = new Upsampler4(SAMPLES);
    }
    needleIndex = begin + WINDOW_CONVERSIONS;
    // A needle's rectifier sits behind a capacitor: the mean is no signal.
    for (int i = 0; i < SAMPLES; i++) {
      meterAc[i] = (float) ((meter[i] - mean) * meterVPerCount);
    }
    VuBallistics.Swing swing = needle.put(between.at(meterAc));
    return new LevelDetail(
        begin,
        new MainsLines(spectrum, false, BIN_HZ, headVPerCount),
        ThirdOctaves.powers(headPower, headVPerCount * headVPerCount),
        ThirdOctaves.powers(meterPower, meterVPerCount * meterVPerCount),
        swing.highest(),
        swing.mean(),
        meterScale.value(512 + mean),
        toneShare >= TONE_SHARE ? split.of(head, headPower, headVPerCount) : null);
  }

  /** Five bins hold a sine that is up to half a bin off the middle one. */
  private double tone(double[] power) {
    int centre = (int) Math.round(toneHz / BIN_HZ);
    return PairSpectrum.band(power, centre - 2, centre + 2);
  }

  private static double hum(HarmonicComb odd, HarmonicComb even, double[] power) {
    return Math.max(0, odd.excess(power) + even.excess(power));
  }

  /** Of whole numbers, so the same in any order; four sums do not wait for each other. */
  private static double mean(double[] samples) {
    double a = 0;
    double b = 0;
    double c = 0;
    double d = 0;
    for (int i = 0; i < samples.length; i += 4) {
      a += samples[i];
      b += samples[i + 1];
      c += samples[i + 2];
      d += samples[i + 3];
    }
    return (a + b + c + d) / samples.length;
  }

  private static boolean clipped(double[] samples) {
    for (double sample : samples) {
      if (sample <= -512 || sample >= 511) {
        return true;
      }
    }
    return false;
  }
}
