package firstamp.link;

import com.fazecast.jSerialComm.SerialPort;
import firstamp.model.text.Worded;
import java.util.ArrayList;
import java.util.List;

/** The serial ports of this computer. */
public final class SerialPorts {
  private SerialPorts() {}

  /**
   * One port.
   *
   * @param path to give to {@code --port}
   * @param description of the adapter
   * @param usable whether it can be opened as far as one can tell without opening it
   * @param why not, or null
   */
  public record Found(String path, String description, boolean usable, Worded why) {}

  /**
   * Refuses a port that is absent or not permitted, without opening it.
   *
   * @throws PortException with the remedy
   */
  public static void check(String port) throws PortException {
    PortAccess.check(port);
  }

  /** All ports, sorted by path. Opens none: opening resets common boards. */
  public static List<Found> list() {
    List<Found> found = new ArrayList<>();
    for (SerialPort port : SerialPort.getCommPorts()) {
      String path = port.getSystemPortPath();
      Worded why = null;
      try {
        PortAccess.check(path);
      } catch (PortException against) {
        why = against.words();
      }
      found.add(new Found(path, port.getDescriptivePortName(), why == null, why));
    }
    found.sort((a, b) -> a.path().compareTo(b.path()));
    return found;
  }
}
