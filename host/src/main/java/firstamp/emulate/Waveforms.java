package firstamp.emulate;

import firstamp.protocol.CalibrationData;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Collections;

/** Opens an emulated probe with a waveform file behind it. */
public final class Waveforms {
  /** Standard uncertainty of the gain that a front-end file's scales carry, 1e-5 of the value. */
  private static final int GAIN_UNCERTAINTY_E5 = 100;

  /** Standard uncertainty of the zero, 1/100 count. */
  private static final int ZERO_UNCERTAINTY_HUNDREDTHS = 50;

  private Waveforms() {}

  /**
   * Opens it.
   *
   * @param csv waveform file
   * @param frontEnd front-end file, null = defaults
   * @param nominalV supply in the look where the front-end file does not say it: the sheet's
   * @throws WaveformException a file does not say what it must
   * @throws IOException a file cannot be read
   */
  public static EmulatedProbe open(Path csv, Path frontEnd, double nominalV, ProbeOptions options)
      throws IOException {
    FrontEnd front =
        frontEnd == null ? FrontEnd.defaults(nominalV) : FrontEndFile.read(frontEnd, nominalV);
    return open(WaveformFile.read(csv), front, "emulated probe, waveform " + csv, options);
  }

  static EmulatedProbe open(
      WaveformFile file, FrontEnd front, String description, ProbeOptions options) {
    CalibrationData calibration =
        front.scalesGiven()
            ? new CalibrationData(
                0,
                front.scales(),
                Collections.nCopies(8, GAIN_UNCERTAINTY_E5),
                Collections.nCopies(8, ZERO_UNCERTAINTY_HUNDREDTHS))
            : null;
    return new EmulatedProbe(
        new WaveformBench(file, front), description, options, front.scales(), calibration);
  }
}
