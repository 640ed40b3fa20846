package firstamp.cli.command;

import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.JsonLines;
import firstamp.link.SerialPorts;
import java.io.PrintStream;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Lists the serial ports without opening any. */
@Command(
    name = "ports",
    description =
        "Lists the serial ports and whether each can be used. Opens none: opening resets common boards.",
    footerHeading = "%nExamples:%n",
    footer = {"  firstamp ports", "  firstamp ports --json"})
public final class PortsCommand implements Callable<Integer> {
  @Option(names = "--json", description = "one JSON object per line")
  private boolean json;

  @Override
  public Integer call() {
    PrintStream out = System.out;
    List<SerialPorts.Found> found = SerialPorts.list();
    JsonLines lines = new JsonLines(out);
    for (SerialPorts.Found port : found) {
      if (json) {
        ObjectNode node = JsonLines.object("port");
        node.put("path", port.path());
        node.put("description", port.description());
        node.put("usable", port.usable());
        node.put("why", port.why() == null ? null : port.why().english());
        lines.print(node);
      } else {
        out.println(
            port.path()
                + "  "
                + port.description()
                + (port.usable() ? "" : "  not usable: " + port.why().english()));
      }
    }
    if (found.isEmpty() && !json) {
      System.err.println(
          "no serial ports found. Plug the probe box in. A simulated chip's port is not listed: give its path to --port.");
    }
    return ExitCode.NORMAL;
  }
}
