package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A rail that never came to rest, or is dead, has no time at which it settled. */
class SettledFiguresTest {
  private static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Set that settles or not\"},"
          + "\"supply\":{\"nominalV\":12,\"fuseA\":1},"
          + "\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":10}]}";

  @TempDir private Path folder;

  private JsonNode rail(String rows) throws IOException {
    Path wave =
        Files.writeString(folder.resolve("w.csv"), "t_s,supply_V,supply_A,rail1_V\r\n" + rows);
    Path sheet = Files.writeString(folder.resolve("s.json"), SHEET);
    return CommandRunner.run(
            "demo",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--for",
            "3s",
            "--waveform",
            wave.toString(),
            "--sheet",
            sheet.toString(),
            "--log",
            folder.resolve("log.db").toString())
        .summary()
        .path("rails")
        .path(0);
  }

  @Test
  void aRailThatStandsHasItsTime() throws Exception {
    // Up to 10 V in 200 ms: within 2 % at 196 ms.
    JsonNode rail = rail("0,12,0.1,0\r\n0.2,12,0.1,10\r\n5,12,0.1,10\r\n");
    assertThat(rail.path("settledMs").asDouble()).isBetween(190.0, 200.0);
    assertThat(rail.path("settled10Ms").asDouble()).isBetween(170.0, 190.0);
  }

  @Test
  void aRailThatClimbsToTheEndHasNone() throws Exception {
    // 4 V to 10 V in 3 s: 2 V a second, so 2 % of 9 V (0.18 V) are left behind 90 ms before the
    // end.
    JsonNode rail = rail("0,12,0.1,4\r\n3,12,0.1,10\r\n5,12,0.1,14\r\n");
    assertThat(rail.has("finalV")).isTrue();
    assertThat(rail.has("settledMs")).as("%s", rail).isFalse();
    assertThat(rail.has("settled1Ms")).isFalse();
  }

  @Test
  void aDeadRailHasNone() throws Exception {
    JsonNode rail = rail("0,12,0.1,0\r\n5,12,0.1,0\r\n");
    for (String key : new String[] {"settledMs", "settled1Ms", "settled5Ms", "settled10Ms"}) {
      assertThat(rail.has(key)).as("%s %s", key, rail).isFalse();
    }
  }
}
