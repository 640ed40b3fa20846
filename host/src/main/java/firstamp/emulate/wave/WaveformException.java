package firstamp.emulate.wave;

import java.io.IOException;

/** A waveform or front-end file that does not say what it must; names file, line and field. */
public final class WaveformException extends IOException {
  private static final long serialVersionUID = 1L;

  WaveformException(String message) {
    super(message);
  }
}
