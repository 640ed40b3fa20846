package firstamp.conformance;

import firstamp.model.ProbePort;
import java.io.IOException;
import java.nio.file.Path;

/** A kind of probe that scenarios run on. */
interface Target {
  /**
   * A probe that was just started, with this behind it.
   *
   * @param waveform CSV text
   * @param frontEnd JSON text
   * @param folder for files
   */
  Started start(String waveform, String frontEnd, Path folder) throws IOException;

  /**
   * A started probe.
   *
   * @param port line to it
   * @param end ends what stands behind the line
   */
  record Started(ProbePort port, Runnable end) implements AutoCloseable {
    @Override
    public void close() {
      port.close();
      end.run();
    }
  }
}
