package firstamp.analysis.figures;

import firstamp.analysis.spectrum.HumPattern;
import firstamp.analysis.spectrum.LevelDetail;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.model.samples.LevelWindow;

/**
 * Mean powers of head and meter over windows: of those with the tone, of those with any signal, and
 * of the hum in all that hold no other signal. Not thread-safe.
 */
public final class LevelSums {
  private static final double TONE_SHARE = 0.5;

  private final double signalV;
  private final ExpectedDistance expected;
  private final Double toneHz;
  private final double[] tone = new double[2];
  private final double[] signal = new double[2];
  private final double[] floor = new double[2];
  private final double[] hum = new double[2];
  private final double[] humOdd = new double[2];
  private final double[] humEven = new double[2];
  private SpeechSums speech;
  private HumPattern pattern;
  private double splitTone;
  private double splitHarmonics;
  private double splitNoise;
  private int splitCount;
  private double needleHighestV;
  private double dcSum;
  private int detailCount;
  private int toneCount;
  private int signalCount;
  private int humCount;
  private int count;
  private boolean headJoined = true;

  /**
   * Empty sums.
   *
   * @param signalV the meter shows signal above this, volt rms
   * @param expected what the sheet expects of head against meter; null = nothing
   * @param toneHz of the sheet; null = none
   */
  public LevelSums(double signalV, ExpectedDistance expected, Double toneHz) {
    this.signalV = signalV;
    this.toneHz = toneHz;
    this.pattern = new HumPattern(toneHz);
    this.expected = expected;
    this.speech = new SpeechSums(expected);
  }

  LevelSums copy() {
    LevelSums copy = new LevelSums(signalV, expected, toneHz);
    System.arraycopy(tone, 0, copy.tone, 0, 2);
    System.arraycopy(signal, 0, copy.signal, 0, 2);
    System.arraycopy(floor, 0, copy.floor, 0, 2);
    System.arraycopy(hum, 0, copy.hum, 0, 2);
    System.arraycopy(humOdd, 0, copy.humOdd, 0, 2);
    System.arraycopy(humEven, 0, copy.humEven, 0, 2);
    copy.speech = speech.copy();
    copy.pattern = pattern.copy();
    copy.splitTone = splitTone;
    copy.splitHarmonics = splitHarmonics;
    copy.splitNoise = splitNoise;
    copy.splitCount = splitCount;
    copy.needleHighestV = needleHighestV;
    copy.dcSum = dcSum;
    copy.detailCount = detailCount;
    copy.toneCount = toneCount;
    copy.signalCount = signalCount;
    copy.humCount = humCount;
    copy.count = count;
    copy.headJoined = headJoined;
    return copy;
  }

  /** The head's clip is joined to nothing: what its input shows is no figure of the set. */
  void withoutHead() {
    headJoined = false;
  }

  boolean headJoined() {
    return headJoined;
  }

  /** Whether a clipped window: it says nothing about levels. */
  private static boolean clipped(LevelWindow window) {
    return window.headClipped() || window.meterClipped();
  }

  private static boolean tonal(LevelWindow window) {
    return window.headToneV() != null && window.toneShare() >= TONE_SHARE;
  }

  /** Whether the head's hum can be read in a window: no other signal than the tone. */
  boolean humReadable(LevelWindow window) {
    return !clipped(window) && (window.meterRmsV() <= signalV || tonal(window));
  }

  /** Mean square that the converter's noise puts into one bin of the head. */
  static double headNoisePerBin(LevelWindow window) {
    return square(window.headNoiseFloorV()) / (LevelMeter.HIGHEST_BIN - LevelMeter.LOWEST_BIN + 1);
  }

  /**
   * Takes a window.
   *
   * @param detail of the same window; may be null
   */
  public void add(LevelWindow window, LevelDetail detail) {
    if (clipped(window)) {
      return;
    }
    count++;
    floor[0] += square(window.headNoiseFloorV());
    floor[1] += square(window.meterNoiseFloorV());
    boolean shows = window.meterRmsV() > signalV;
    boolean tonal = tonal(window);
    if (shows && tonal) {
      toneCount++;
      tone[0] += square(window.headToneV());
      tone[1] += square(window.meterToneV());
    }
    if (shows) {
      signalCount++;
      signal[0] += square(window.headRmsV());
      signal[1] += square(window.meterRmsV());
    }
    if (shows && !tonal) {
      speech.add(window, detail);
    }
    if (!shows || tonal) {
      humCount++;
      int mains = window.humHz() == 60 ? 1 : 0;
      hum[mains] += square(window.headHumV());
      humOdd[mains] += square(window.headHumOddV());
      humEven[mains] += square(window.headHumEvenV());
    }
    if (detail != null) {
      detail(window, detail, shows && tonal);
    }
  }

  private void detail(LevelWindow window, LevelDetail detail, boolean toneThere) {
    detailCount++;
    dcSum += detail.meterDcV;
    needleHighestV = Math.max(needleHighestV, detail.needleHighestV);
    if (humReadable(window)) {
      pattern.add(detail.headLines, headNoisePerBin(window));
    }
    if (toneThere && detail.split != null) {
      splitCount++;
      splitTone += detail.split.tone();
      splitHarmonics += detail.split.harmonics();
      splitNoise += detail.split.noise();
    }
  }

  /** Head against meter on signal that is no tone. */
  public SpeechSums speech() {
    return speech;
  }

  /** Hum in the head line by line. */
  HumPattern pattern() {
    return pattern;
  }

  /** Highest place a needle of volume units came to, volt rms of a sine; null if nothing came. */
  Double needleHighestV() {
    return detailCount == 0 ? null : (Double) needleHighestV;
  }

  /** Mean of the meter input, volt; null if nothing came. */
  Double meterDcV() {
    return detailCount == 0 ? null : (Double) (dcSum / detailCount);
  }

  /** The head's harmonics against its tone, 0 to 1; null without a tone. */
  Double harmonicsShare() {
    return splitCount == 0 || !(splitTone > 0)
        ? null
        : (Double) Math.sqrt(splitHarmonics / splitTone);
  }

  /** Noise of the head beside a tone, volt rms in 30 to 1600 Hz; null without a tone. */
  Double headNoiseV() {
    return splitCount == 0 ? null : (Double) Math.sqrt(splitNoise / splitCount);
  }

  /** Share of the hum's power at twice the mains and its multiples, 0 to 1; null if none. */
  Double humEvenShare() {
    int mains = hum[1] > hum[0] ? 1 : 0;
    double both = humOdd[mains] + humEven[mains];
    return both > 0 ? (Double) (humEven[mains] / both) : null;
  }

  /** 50 or 60, the stronger hum in the head; null if no window was fit for it. */
  Integer humHz() {
    return humCount == 0 ? null : (Integer) (hum[1] > hum[0] ? 60 : 50);
  }

  /** Whether the tone, not only some signal, was there most of the time the meter showed signal. */
  public boolean tonal() {
    return toneCount > 0 && 2 * toneCount >= signalCount;
  }

  /** Whether the meter showed signal in any window. */
  boolean anySignal() {
    return signalCount > 0;
  }

  /** Head by tone, or by rms while the meter shows signal; null if it never did. */
  Double headV() {
    return levelV(0);
  }

  /** Meter likewise. */
  Double meterV() {
    return levelV(1);
  }

  /** Hum in the head; null if no window was fit for it. */
  Double humV() {
    return humCount == 0 ? null : (Double) Math.sqrt(Math.max(hum[0], hum[1]) / humCount);
  }

  /** Noise of the converter on the head input, 30 to 1600 Hz; null if no window came. */
  Double headFloorV() {
    return count == 0 ? null : (Double) Math.sqrt(floor[0] / count);
  }

  private Double levelV(int input) {
    if (tonal()) {
      return Math.sqrt(tone[input] / toneCount);
    }
    return anySignal() ? (Double) Math.sqrt(signal[input] / signalCount) : null;
  }

  private static double square(double value) {
    return value * value;
  }
}
