package firstamp.analysis;

import firstamp.model.LevelWindow;

/**
 * Mean powers of head and meter over windows: of those with the tone, of those with any signal, and
 * of the hum in all that hold no other signal. Not thread-safe.
 */
final class LevelSums {
  private static final double TONE_SHARE = 0.5;

  private final double signalV;
  private final double[] tone = new double[2];
  private final double[] signal = new double[2];
  private final double[] floor = new double[2];
  private final double[] hum = new double[2];
  private final double[] humOdd = new double[2];
  private final double[] humEven = new double[2];
  private double speechWeight;
  private double speechDb;
  private double speechDbSquares;
  private int speechCount;
  private int toneCount;
  private int signalCount;
  private int humCount;
  private int count;

  /**
   * Empty sums.
   *
   * @param signalV the meter shows signal above this, volt rms
   */
  LevelSums(double signalV) {
    this.signalV = signalV;
  }

  LevelSums copy() {
    LevelSums copy = new LevelSums(signalV);
    System.arraycopy(tone, 0, copy.tone, 0, 2);
    System.arraycopy(signal, 0, copy.signal, 0, 2);
    System.arraycopy(floor, 0, copy.floor, 0, 2);
    System.arraycopy(hum, 0, copy.hum, 0, 2);
    System.arraycopy(humOdd, 0, copy.humOdd, 0, 2);
    System.arraycopy(humEven, 0, copy.humEven, 0, 2);
    copy.speechWeight = speechWeight;
    copy.speechDb = speechDb;
    copy.speechDbSquares = speechDbSquares;
    copy.speechCount = speechCount;
    copy.toneCount = toneCount;
    copy.signalCount = signalCount;
    copy.humCount = humCount;
    copy.count = count;
    return copy;
  }

  /** Takes a window; a clipped one says nothing about levels. */
  void add(LevelWindow window) {
    if (window.headClipped() || window.meterClipped()) {
      return;
    }
    count++;
    floor[0] += square(window.headNoiseFloorV());
    floor[1] += square(window.meterNoiseFloorV());
    boolean shows = window.meterRmsV() > signalV;
    boolean tonal = window.headToneV() != null && window.toneShare() >= TONE_SHARE;
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
      speech(window);
    }
    if (!shows || tonal) {
      humCount++;
      int mains = window.humHz() == 60 ? 1 : 0;
      hum[mains] += square(window.headHumV());
      humOdd[mains] += square(window.headHumOddV());
      humEven[mains] += square(window.headHumEvenV());
    }
  }

  /** Head against meter of one window, weighted by the power the meter shows. */
  private void speech(LevelWindow window) {
    double floorV = window.headNoiseFloorV();
    double headPower = Math.max(floorV * floorV, square(window.headRmsV()) - floorV * floorV);
    double meterPower = square(window.meterRmsV());
    double db = 10 * StrictMath.log10(meterPower / headPower);
    speechCount++;
    speechWeight += meterPower;
    speechDb += meterPower * db;
    speechDbSquares += meterPower * db * db;
  }

  /** Head below meter on signal that is no tone, decibel; null if there was none. */
  Double speechDb() {
    return speechCount == 0 ? null : (Double) (speechDb / speechWeight);
  }

  /** Expanded uncertainty (k = 2) of it from the scatter; null for fewer than three windows. */
  Double speechDbPlusMinus() {
    if (speechCount < 3) {
      return null;
    }
    double mean = speechDb / speechWeight;
    double variance = Math.max(0, speechDbSquares / speechWeight - mean * mean);
    return 2 * Math.sqrt(variance / (speechCount - 1));
  }

  /** How many windows held signal that is no tone. */
  int speechWindows() {
    return speechCount;
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
  boolean tonal() {
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
