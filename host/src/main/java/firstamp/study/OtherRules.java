package firstamp.study;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.log.PowerUpEntry;
import firstamp.model.RulesVersion;
import firstamp.model.Summary;
import firstamp.pipeline.SummaryJson;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * A replay of a power-up that was judged by other rules than today's. The stored summary stays.
 *
 * @param stored number of the rules it was judged by
 * @param now number of today's
 * @param changed keys of the summary that come out differently; empty also where none was stored
 */
public record OtherRules(int stored, int now, List<String> changed) {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** Copies the list. */
  public OtherRules {
    changed = List.copyOf(changed);
  }

  /**
   * Holds a replay against what was stored.
   *
   * @param replayed on the stored sheet
   * @return null where the rules are the same
   */
  public static OtherRules of(PowerUpEntry entry, Summary replayed) {
    if (entry.rulesVersion() == RulesVersion.NOW) {
      return null;
    }
    return new OtherRules(entry.rulesVersion(), RulesVersion.NOW, changed(entry, replayed));
  }

  private static List<String> changed(PowerUpEntry entry, Summary replayed) {
    if (entry.summaryJson() == null) {
      return List.of();
    }
    JsonNode stored;
    JsonNode now;
    try {
      stored = MAPPER.readTree(entry.summaryJson());
      // Read back, so that a whole number is the same however it is held.
      now = MAPPER.readTree(SummaryJson.text(SummaryJson.of(replayed)));
    } catch (JsonProcessingException damaged) {
      // `log check` finds the damage; there is nothing to hold the replay against.
      return List.of();
    }
    TreeSet<String> keys = new TreeSet<>();
    stored.fieldNames().forEachRemaining(keys::add);
    now.fieldNames().forEachRemaining(keys::add);
    keys.remove("replay");
    List<String> changed = new ArrayList<>(keys);
    changed.removeIf(key -> stored.path(key).equals(now.path(key)));
    return changed;
  }

  /** Puts {@code rules} and {@code changed} into the line of a summary. */
  public void put(ObjectNode summary) {
    summary.putObject("rules").put("stored", stored).put("now", now);
    ArrayNode keys = summary.putArray("changed");
    changed.forEach(keys::add);
  }
}
