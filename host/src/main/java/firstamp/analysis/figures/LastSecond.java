package firstamp.analysis.figures;

import firstamp.analysis.statistics.Moments;
import firstamp.analysis.statistics.Uncertainty;
import firstamp.model.Summary;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * The last second on: the end values of supply and rails.
 *
 * @param readings of it, at least 80
 * @param scaling of the power-up
 */
record LastSecond(List<Reading> readings, Scaling scaling) {
  /** A fifth may be missing. */
  static final int LEAST_READINGS = 80;

  static final long MICROS = 1_000_000;

  Moments moments(ToDoubleFunction<Reading> of) {
    return Moments.of(readings.stream().mapToDouble(of).toArray());
  }

  boolean clipped(Channel channel) {
    return readings.stream().anyMatch(reading -> reading.clipped(channel));
  }

  /** Which channel its supply current comes from. */
  Channel supplyChannel() {
    return scaling.fine(readings.get(readings.size() - 1)) ? Channel.J : Channel.I;
  }

  /** The supply's figures: of the start, and at the end where there is a last second. */
  static Summary.SupplyFigures supply(SupplyStart start, int begun, LastSecond last) {
    if (last == null) {
      return new Summary.SupplyFigures(
          start.peakA(begun), start.i2tA2s(begun), start.chargeC(begun), null, null, null, null);
    }
    Uncertainty uncertainty = new Uncertainty(last.scaling.calibration());
    Moments amps = last.moments(last.scaling::supplyA);
    Moments volts = last.moments(last.scaling::supplyV);
    return new Summary.SupplyFigures(
        start.peakA(begun),
        start.i2tA2s(begun),
        start.chargeC(begun),
        amps.mean(),
        uncertainty.expanded(last.supplyChannel(), amps.mean(), amps.meanUncertainty()),
        volts.mean(),
        uncertainty.expanded(Channel.V, volts.mean(), volts.meanUncertainty()));
  }
}
