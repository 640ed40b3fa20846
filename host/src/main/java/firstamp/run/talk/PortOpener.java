package firstamp.run.talk;

import firstamp.model.ProbePort;
import java.io.IOException;

/** Opens the line to the probe, the first time and after it was lost. */
@FunctionalInterface
public interface PortOpener {
  /** Opens it, or says why not. */
  ProbePort open() throws IOException;
}
