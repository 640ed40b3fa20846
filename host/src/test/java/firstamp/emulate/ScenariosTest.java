package firstamp.emulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The list of scenarios: each is described and has a job sheet with the keys of its schema. */
final class ScenariosTest {
  private static final Set<String> TOP =
      Set.of(
          "sheet",
          "set",
          "supply",
          "limits",
          "rails",
          "levels",
          "rules",
          "path",
          "unknownWires",
          "steps");

  @Test
  void everyScenarioIsDescribedAndHasASheet() throws Exception {
    for (String name : Scenarios.names()) {
      assertTrue(Scenarios.describe(name).endsWith("."), name);
      JsonNode sheet = new ObjectMapper().readTree(Scenarios.sheetJson(name));
      assertTrue(sheet.at("/set/name").asText().contains("(invented)"), name);
      assertTrue(sheet.at("/supply/nominalV").asDouble() > 0, name);
      Set<String> keys = new TreeSet<>();
      sheet.fieldNames().forEachRemaining(keys::add);
      assertTrue(TOP.containsAll(keys), name + " " + keys);
    }
  }

  @Test
  void theContractsNamesAreThere() {
    assertTrue(
        Scenarios.names()
            .containsAll(
                Set.of(
                    "healthy",
                    "wire-short",
                    "look-short",
                    "lost-head",
                    "no-draw",
                    "tired-filter",
                    "leaky",
                    "hum")));
  }

  @Test
  void anUnknownNameIsAnsweredWithTheKnownOnes() {
    IllegalArgumentException thrown =
        assertThrows(IllegalArgumentException.class, () -> Scenarios.describe("helthy"));
    assertTrue(thrown.getMessage().startsWith("no scenario \"helthy\"; there are healthy,"));
    assertEquals("healthy", Scenarios.names().get(0));
  }
}
