package firstamp.cli.run;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Said;
import firstamp.link.SerialProbePort;
import firstamp.model.TimeSource;
import firstamp.model.text.Explained;
import firstamp.supply.BenchSupply;
import java.io.IOException;
import java.nio.file.Path;

/** The port of a bench supply. */
public final class SupplyPort {
  private static final int USUAL_BAUD = 9600;

  private SupplyPort() {}

  /** Opens PORT or PORT@BAUD; nothing is sent yet. */
  public static BenchSupply open(String named, Path lockFolder) throws CliFailure {
    int at = named.lastIndexOf('@');
    String port = at < 0 ? named : named.substring(0, at);
    try {
      int baud = at < 0 ? USUAL_BAUD : Integer.parseInt(named.substring(at + 1));
      return new BenchSupply(SerialProbePort.open(port, baud, lockFolder, TimeSource.system()));
    } catch (NumberFormatException noBaud) {
      throw new CliFailure(
          ExitCode.USAGE, Said.of("supply-port.supply-expected-port-or-port", named), noBaud);
    } catch (IOException failed) {
      throw new CliFailure(
          ExitCode.NO_PORT, Said.of("supply-port.bench-supply", Explained.of(failed)), failed);
    }
  }
}
