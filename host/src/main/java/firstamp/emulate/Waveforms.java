package firstamp.emulate;

import firstamp.emulate.bench.FrontEnd;
import firstamp.emulate.box.Box;
import firstamp.emulate.wave.FrontEndFile;
import firstamp.emulate.wave.WaveformBench;
import firstamp.emulate.wave.WaveformException;
import firstamp.emulate.wave.WaveformFile;
import java.io.IOException;
import java.nio.file.Path;

/** Opens an emulated probe with a waveform file behind it. */
public final class Waveforms {
  private Waveforms() {}

  /**
   * Opens it.
   *
   * @param csv waveform file
   * @param frontEnd front-end file, null = the box that the options ask for
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
    Box box = front.box() == null ? Box.of(options.box(), options.seed()) : front.box();
    return new EmulatedProbe(new WaveformBench(file, front), description, options, box);
  }
}
