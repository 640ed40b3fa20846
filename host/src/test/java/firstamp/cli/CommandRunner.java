package firstamp.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Runs a command in this process and keeps what it printed. One at a time: the standard streams are
 * shared.
 */
public final class CommandRunner {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private CommandRunner() {}

  /**
   * The result.
   *
   * @param exitCode of the command
   * @param out standard output, lines
   * @param err standard error, whole
   */
  public record Result(int exitCode, List<String> out, String err) {
    /** Every line as JSON. */
    public List<JsonNode> json() {
      List<JsonNode> nodes = new ArrayList<>();
      for (String line : out) {
        try {
          nodes.add(MAPPER.readTree(line));
        } catch (IOException bad) {
          throw new UncheckedIOException("not JSON: " + line, bad);
        }
      }
      return nodes;
    }

    /** The lines of a type. */
    public List<JsonNode> json(String type) {
      return json().stream().filter(node -> type.equals(node.path("type").asText())).toList();
    }

    /** The summary, which must be the last line. */
    public JsonNode summary() {
      List<JsonNode> all = json();
      JsonNode last = all.get(all.size() - 1);
      if (!"summary".equals(last.path("type").asText())) {
        throw new AssertionError("last line is no summary: " + last);
      }
      return last;
    }
  }

  public static synchronized Result run(String... arguments) {
    PrintStream outBefore = System.out;
    PrintStream errBefore = System.err;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    try {
      System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
      System.setErr(new PrintStream(err, true, StandardCharsets.UTF_8));
      int exitCode = Main.run(arguments);
      return new Result(
          exitCode,
          out.toString(StandardCharsets.UTF_8).lines().toList(),
          err.toString(StandardCharsets.UTF_8));
    } finally {
      System.setOut(outBefore);
      System.setErr(errBefore);
    }
  }
}
