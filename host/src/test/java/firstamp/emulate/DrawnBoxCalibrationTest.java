package firstamp.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.calibrate.CalibrationLine;
import firstamp.analysis.calibrate.MeterAccuracy;
import firstamp.emulate.box.DrawnBox;
import firstamp.emulate.line.Pace;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.protocol.values.CalibrationData;
import firstamp.run.calibration.CalibrationProcedure;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a drawn box keeps is reckoned without a probe; here the same steps are gone through on the
 * emulated probe, frame by frame, and must leave the same in the box: within a fifth of a count at
 * both ends of what was measured, uncertainties within a third.
 */
class DrawnBoxCalibrationTest {
  private static final double[] AMPS = {0.32, 0.905};
  private static final double BATTERY_V = 9.137;

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 5, 11})
  void theStepsLeaveWhatTheDrawingSays(long seed) throws Exception {
    DrawnBox drawn = DrawnBox.of(seed, 0, 0);
    CalibrationDemo demo = new CalibrationDemo(ProbeOptions.of(seed, Pace.MAX), drawn.blank());
    List<CalibrationLine> lines;
    try (CalibrationProcedure course = new CalibrationProcedure()) {
      course.attach(demo.port());
      demo.volts(0);
      course.zero();
      demo.volts(BATTERY_V);
      course.volts(BATTERY_V * (1 + drawn.bench().voltsShare()));
      for (double amps : AMPS) {
        demo.resistor(amps * CalibrationDemo.RESISTOR_OHM);
        course.current("at " + amps, course.current(0), amps * (1 + drawn.bench().ampsShare()));
      }
      lines =
          course.lines(
              new MeterAccuracy(0.8, 0), new MeterAccuracy(1.5, 0), new MeterAccuracy(1, 0));
    }
    CalibrationData kept = drawn.kept();
    assertThat(lines).hasSize(8);
    for (CalibrationLine line : lines) {
      Channel channel = line.channel();
      int at = channel.ordinal();
      double base = Calibration.basePerUnit(channel);
      double step = Math.abs(line.scale().perCount());
      double top =
          channel == Channel.I || channel == Channel.J
              ? 0.32
              : channel == Channel.M ? 0 : BATTERY_V;
      for (double value :
          channel == Channel.H || channel == Channel.M ? new double[] {0} : new double[] {0, top}) {
        double counts = line.scale().counts(value);
        double drawnValue = kept.scales().get(at).valueAt(counts) / base;
        assertThat(drawnValue).as("%s at %s", channel, value).isCloseTo(value, within(0.2 * step));
      }
      assertThat(kept.gainUncertaintyE5().get(at) / 1e5)
          .as("%s gain", channel)
          .isCloseTo(line.budget().gainShare(), within(line.budget().gainShare() / 3));
    }
  }
}
