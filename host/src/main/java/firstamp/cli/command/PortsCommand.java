package firstamp.cli.command;

import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.JsonLines;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
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
  private final Speech speech;

  PortsCommand(Speech speech) {
    this.speech = speech;
  }

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
        speech.out(
            port.usable()
                ? Said.of("ports.line", port.path(), port.description())
                : Said.of("ports.unusable", port.path(), port.description(), port.why()));
      }
    }
    if (found.isEmpty() && !json) {
      speech.err(Said.of("ports.no-serial-ports-found-plug"));
    }
    return ExitCode.NORMAL;
  }
}
