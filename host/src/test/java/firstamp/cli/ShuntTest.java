package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A box whose shunt reads half, through the whole program. */
class ShuntTest {
  @TempDir private Path folder;

  private CommandRunner.Result run(String... more) {
    List<String> all =
        new ArrayList<>(
            List.of("demo", "--headless", "--json", "--speed", "max", "--scenario", "shunt-half"));
    all.addAll(List.of("--log", folder.resolve("l.db").toString()));
    all.addAll(List.of(more));
    return CommandRunner.run(all.toArray(String[]::new));
  }

  @Test
  void theBoxOpensItsSwitchAndSaysWhy() {
    CommandRunner.Result result = run();
    JsonNode summary = result.summary();
    assertThat(result.exitCode()).isEqualTo(3);
    assertThat(summary.path("outcome").asText()).isEqualTo("tripped");
    assertThat(summary.path("tripCause").asText()).isEqualTo("self-test");
    assertThat(summary.path("onMs").asDouble()).isLessThan(12);
    assertThat(result.json("trip"))
        .singleElement()
        .satisfies(
            trip -> assertThat(trip.path("faults")).map(JsonNode::asText).containsExactly("shunt"));
    assertThat(shown("en"))
        .contains("found a fault in itself: it reads too little current", "look at R1");
    assertThat(shown("de")).contains("Messwiderstand ist ganz oder halb");
  }

  private String shown(String language) {
    String log = folder.resolve("l.db").toString();
    return String.join(
        " ", CommandRunner.run("show", "last", "--language", language, "--log", log).out());
  }

  /** Before a reservoir the supply comes in pulses: the look's mean is no measure of its peak. */
  @Test
  void aPulsedCurrentIsNoProof() throws IOException {
    Path sheet =
        Files.writeString(
            folder.resolve("s.json"),
            "{\"sheet\":1,\"set\":{\"name\":\"Set on a box\"},\"supply\":{\"nominalV\":12,"
                + "\"fuseA\":1,\"probeSits\":\"before-reservoir\"}}");
    JsonNode summary = run("--sheet", sheet.toString(), "--for", "1s").summary();
    assertThat(summary.path("tripCause").asText()).isNotEqualTo("self-test");
  }
}
