package firstamp.cli.output;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.pipeline.SummaryJson;
import java.io.PrintStream;

/**
 * One JSON object per line, flushed at once, each with a {@code type}.
 *
 * <p>What could not be measured is left out. May be called from any thread; lines never mix.
 */
public final class JsonLines {
  private final PrintStream out;

  public JsonLines(PrintStream out) {
    this.out = out;
  }

  /** A new object of a type. */
  public static ObjectNode object(String type) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("type", type);
    return node;
  }

  /** Prints an object. */
  public void print(ObjectNode node) {
    SummaryJson.dropNulls(node);
    printText(SummaryJson.text(node));
  }

  /** Prints a line that is JSON already. */
  public synchronized void printText(String json) {
    out.println(json);
    out.flush();
  }
}
