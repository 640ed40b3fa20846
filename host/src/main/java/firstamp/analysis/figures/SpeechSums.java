package firstamp.analysis.figures;

import firstamp.analysis.spectrum.LevelDetail;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.analysis.spectrum.ThirdOctaves;
import firstamp.model.samples.LevelWindow;
import java.util.ArrayList;
import java.util.List;

/**
 * Head against meter on signal that is no tone: per window weighted by the power the meter shows,
 * and band by band. Not thread-safe.
 */
public final class SpeechSums {
  private static final double BAND_BINS = LevelMeter.HIGHEST_BIN - LevelMeter.LOWEST_BIN + 1;

  /** A band's figure counts when the meter holds this many times its noise there. */
  private static final double STANDS_OUT = 4;

  /** Per band what of the meter's power is expected at the head; null = nothing is. */
  private final double[] expectedShares;

  private final double[] head = new double[ThirdOctaves.COUNT];
  private final double[] meter = new double[ThirdOctaves.COUNT];
  private final double[] meterNoise = new double[ThirdOctaves.COUNT];
  private final Weighted distance = new Weighted();
  private final Weighted over = new Weighted();

  SpeechSums(ExpectedDistance expected) {
    this(expected == null ? null : shares(expected));
  }

  private SpeechSums(double[] expectedShares) {
    this.expectedShares = expectedShares;
  }

  private static double[] shares(ExpectedDistance expected) {
    double[] shares = new double[ThirdOctaves.COUNT];
    for (int band = 0; band < shares.length; band++) {
      shares[band] = StrictMath.pow(10, -expected.db(ThirdOctaves.hz(band)) / 10);
    }
    return shares;
  }

  SpeechSums copy() {
    SpeechSums copy = new SpeechSums(expectedShares);
    System.arraycopy(head, 0, copy.head, 0, head.length);
    System.arraycopy(meter, 0, copy.meter, 0, meter.length);
    System.arraycopy(meterNoise, 0, copy.meterNoise, 0, meterNoise.length);
    copy.distance.take(distance);
    copy.over.take(over);
    return copy;
  }

  /** Takes a window; the detail may be null. */
  void add(LevelWindow window, LevelDetail detail) {
    double floorPower = window.headNoiseFloorV() * window.headNoiseFloorV();
    double headPower = Math.max(floorPower, window.headRmsV() * window.headRmsV() - floorPower);
    double meterPower = window.meterRmsV() * window.meterRmsV();
    distance.add(meterPower, 10 * StrictMath.log10(meterPower / headPower));
    if (detail == null) {
      return;
    }
    double predicted = 0;
    for (int band = 0; band < ThirdOctaves.COUNT; band++) {
      double share = ThirdOctaves.bins(band) / BAND_BINS;
      double noise = window.meterNoiseFloorV() * window.meterNoiseFloorV() * share;
      double shown = Math.max(0, detail.meterBands[band] - noise);
      head[band] += detail.headBands[band] - floorPower * share;
      meter[band] += shown;
      meterNoise[band] += noise;
      if (expectedShares != null) {
        predicted += shown * expectedShares[band];
      }
    }
    if (expectedShares != null && predicted > 0) {
      over.add(meterPower, 10 * StrictMath.log10(predicted / headPower));
    }
  }

  /** Head below meter. */
  public Weighted distance() {
    return distance;
  }

  /** Head below what the sheet expects of this very signal. */
  public Weighted over() {
    return over;
  }

  /** Head below meter over frequency, where the meter stood out of its noise. */
  public List<Evidence.CurvePoint> curve() {
    double all = 0;
    for (double power : meter) {
      all += power;
    }
    List<Evidence.CurvePoint> curve = new ArrayList<>();
    for (int band = 0; band < ThirdOctaves.COUNT; band++) {
      if (meter[band] > STANDS_OUT * meterNoise[band] && head[band] > 0) {
        double db = 10 * StrictMath.log10(meter[band] / head[band]);
        curve.add(new Evidence.CurvePoint(ThirdOctaves.hz(band), db, meter[band] / all));
      }
    }
    return curve;
  }

  /** A weighted mean with its scatter. */
  public static final class Weighted {
    private double weights;
    private double sum;
    private double squares;
    private int count;

    void take(Weighted other) {
      weights = other.weights;
      sum = other.sum;
      squares = other.squares;
      count = other.count;
    }

    void add(double weight, double value) {
      count++;
      weights += weight;
      sum += weight * value;
      squares += weight * value * value;
    }

    int count() {
      return count;
    }

    /** Null if there was nothing. */
    public Double mean() {
      return count == 0 ? null : (Double) (sum / weights);
    }

    /** Expanded uncertainty (k = 2) from the scatter; null for fewer than three values. */
    public Double plusMinus() {
      if (count < 3) {
        return null;
      }
      double mean = sum / weights;
      double variance = Math.max(0, squares / weights - mean * mean);
      return 2 * Math.sqrt(variance / (count - 1));
    }
  }
}
