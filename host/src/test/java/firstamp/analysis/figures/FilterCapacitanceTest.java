package firstamp.analysis.figures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.Sheets;
import firstamp.analysis.SignalFeed;
import firstamp.analysis.spectrum.RippleMeter;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.model.samples.RippleWindow;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Full-wave rectifier with a constant current. Exact columns worked out from the definition (row 1:
 * ngspice 39 gave Vpp 3.490, Vdc 28.353, rms 1.0401); approximate columns Vpp = I / (2 f C), row 1
 * the textbook example (Boylestad and Nashelsky, rectifier chapter, from memory: 1.2 V rms, 27.9
 * V).
 */
class FilterCapacitanceTest {
  /** The exact waveform: follows the half-wave until it falls faster than the load, then a line. */
  private static double exact(double t, double peakV, double amps, double farads, double mainsHz) {
    double omega = 2 * Math.PI * mainsHz;
    double half = Math.PI / omega;
    double sinceTop = t % half;
    double letsGo = Math.asin(amps / (omega * farads * peakV)) / omega;
    if (sinceTop < letsGo) {
      return peakV * Math.cos(omega * sinceTop);
    }
    double line = peakV * Math.cos(omega * letsGo) - amps / farads * (sinceTop - letsGo);
    return Math.max(line, peakV * Math.abs(Math.cos(omega * sinceTop)));
  }

  @ParameterizedTest
  @CsvSource({
    // Vp, I, C, f, exact Vpp, Vdc, rms, tone peak, C from the tone
    "30, 0.05, 100e-6, 60, 3.49112, 28.3555, 1.04016, 1.28506, 103.209e-6",
    "30, 0.05, 100e-6, 50, 4.11439, 28.0736, 1.22926, 1.53214, 103.878e-6",
    "24, 0.1, 470e-6, 50, 1.85041, 23.1173, 0.548024, 0.663838, 479.499e-6",
    "35, 1, 4700e-6, 60, 1.59733, 34.2289, 0.470239, 0.558002, 4753.71e-6"
  })
  void fromTheConversionsOfTheExactWaveform(
      double peakV,
      double amps,
      double farads,
      double mainsHz,
      double vpp,
      double vdc,
      double rms,
      double tonePeak,
      double fromTone) {
    List<RippleWindow> windows = new ArrayList<>();
    SignalFeed feed = new SignalFeed(sixtyVolts()).noise(0.7, 4);
    feed.rail(1, t -> exact(t, peakV, amps, farads, mainsHz));
    RippleMeter meter =
        new RippleMeter(Sheets.sheet(null, Sheets.rail(1, 28)), feed.calibration(), windows::add);
    meter.accept(feed.block(0, 3200 * 20));
    RippleSums sums = new RippleSums();
    windows.forEach(sums::add);
    RippleSums.Ripple ripple = sums.mean();

    assertThat(ripple.mainsHz()).isEqualTo((int) mainsHz);
    assertThat(ripple.strongestHz()).isEqualTo(2 * mainsHz);
    assertThat(windows.get(0).meanV()).isCloseTo(vdc, within(0.001 * vdc));
    assertThat(ripple.rmsV()).isCloseTo(rms, within(0.03 * rms));
    assertThat(ripple.toneVrms() * Math.sqrt(2)).isCloseTo(tonePeak, within(0.02 * tonePeak));
    double c = FilterCapacitance.fromTone(amps, ripple.strongestHz(), ripple.toneVrms());
    assertThat(c).isCloseTo(fromTone, within(0.02 * fromTone));
    assertThat(c).isBetween(farads, 1.06 * farads);
    assertThat(FilterCapacitance.valid(ripple.toneVrms(), vdc)).isTrue();
    assertThat(vpp).isLessThan(amps / (2 * mainsHz * farads));
  }

  @ParameterizedTest
  @CsvSource({"0.05, 120, 100e-6, 1.2028", "0.1, 100, 470e-6, 0.6142", "1, 120, 4700e-6, 0.5118"})
  void approximateRippleOfTheHandbook(double amps, double pulsesHz, double farads, double rms) {
    assertThat(FilterCapacitance.expectedVrms(amps, pulsesHz, farads)).isCloseTo(rms, within(1e-4));
  }

  @Test
  void theFormulasAreOneForTheIdealSawtooth() {
    // Row 1: tone peak 1.3263 V by the approximation gives back 100 uF.
    double tone = 1.32629 / Math.sqrt(2);
    assertThat(FilterCapacitance.fromTone(0.05, 120, tone)).isCloseTo(100e-6, within(1e-9));
    assertThat(FilterCapacitance.valid(tone, 12)).isFalse();
  }

  private static Calibration sixtyVolts() {
    Calibration nominal = Calibration.nominal();
    Map<Channel, ChannelScale> scales = new EnumMap<>(nominal.scales());
    scales.put(Channel.R1, new ChannelScale(-60_000_000, 60_000_000, 1e6));
    return new Calibration(
        nominal.kind(), scales, 0, nominal.gainUncertainty(), nominal.offsetUncertaintyCounts());
  }
}
