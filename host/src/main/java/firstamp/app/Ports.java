package firstamp.app;

import firstamp.model.ProbePort;
import firstamp.model.text.Worded;
import java.io.IOException;
import java.util.List;

/**
 * The serial ports of this computer, brought by whoever may see them. Both methods may take long;
 * never on the Swing thread.
 */
public interface Ports {
  /** All of them; opens none, since opening resets common boards. */
  List<Found> list();

  /** Opens the line to the probe box. */
  ProbePort open(String path) throws IOException;

  /**
   * One port.
   *
   * @param path its name
   * @param description of what is plugged in
   * @param usable whether it can be opened as far as one can tell without opening it
   * @param why not, or null
   */
  record Found(String path, String description, boolean usable, Worded why) {}
}
