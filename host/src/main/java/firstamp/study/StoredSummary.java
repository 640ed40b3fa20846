package firstamp.study;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import firstamp.log.PowerUpEntry;
import firstamp.model.NotWatched;
import firstamp.model.Summary;
import java.util.ArrayList;
import java.util.List;

/** As much of a stored summary as the first picture of a replay needs. */
public final class StoredSummary {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private StoredSummary() {}

  /** Null for a power-up that was cut short. */
  public static Summary of(PowerUpEntry entry) {
    if (entry.summaryJson() == null || entry.outcome() == null) {
      return null;
    }
    JsonNode node;
    try {
      node = MAPPER.readTree(entry.summaryJson());
    } catch (JsonProcessingException damaged) {
      // The replay works its own out; `log check` finds the damage.
      return null;
    }
    List<NotWatched> gaps = new ArrayList<>();
    for (JsonNode gap : node.path("notWatched")) {
      gaps.add(new NotWatched(gap.path("what").asText(), gap.path("why").asText()));
    }
    JsonNode look = node.path("look");
    return new Summary(
        (int) entry.number(),
        entry.uuid(),
        entry.outcome(),
        entry.ended(),
        node.path("tripCause").asText(null),
        number(node, "tripAtMs"),
        number(node, "onMs"),
        look.isMissingNode()
            ? null
            : new Summary.LookFigures(
                look.path("result").asText(null),
                number(look, "ohm"),
                number(look, "uF"),
                number(look, "supplyV"),
                look.path("ohmAtMost").asBoolean(false) ? Boolean.TRUE : null),
        null,
        List.of(),
        null,
        List.of(),
        gaps,
        List.of(),
        null,
        null,
        Boolean.TRUE);
  }

  private static Double number(JsonNode node, String key) {
    return node.path(key).isNumber() ? (Double) node.path(key).doubleValue() : null;
  }
}
