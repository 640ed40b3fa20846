package firstamp.pipeline;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.model.Alarm;
import firstamp.model.Summary;

/** The summary line: printed at the end of a run and kept in the log in these very characters. */
public final class SummaryJson {
  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .defaultPropertyInclusion(
              JsonInclude.Value.construct(
                  JsonInclude.Include.NON_NULL, JsonInclude.Include.NON_NULL))
          .build();

  private SummaryJson() {}

  /** A summary as an object of type {@code summary}. */
  public static ObjectNode of(Summary summary) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("type", "summary");
    ObjectNode fields = MAPPER.valueToTree(summary);
    ArrayNode alarms = JsonNodeFactory.instance.arrayNode();
    for (Alarm alarm : summary.alarms()) {
      alarms.add(put(alarm, JsonNodeFactory.instance.objectNode()));
    }
    fields.set("alarms", alarms);
    node.setAll(fields);
    dropNulls(node);
    return node;
  }

  /** Puts the figures of an alarm into an object and returns it. */
  public static ObjectNode put(Alarm alarm, ObjectNode node) {
    node.put("rule", alarm.rule());
    if (alarm.railName() != null || alarm.rail() > 0) {
      node.put("rail", alarm.rail());
      node.put("railName", alarm.railName());
    }
    node.put("atMs", alarm.atMs());
    node.put("sinceMs", alarm.sinceMs());
    node.put("changedMs", alarm.changedMs());
    node.put("priority", alarm.priority().id());
    node.put("state", alarm.state().id());
    node.put("value", alarm.value());
    if (alarm.value() != null && alarm.atMost()) {
      node.put("atMost", true);
    }
    node.put("limit", alarm.limit());
    node.put("unit", alarm.unit());
    node.put("text", alarm.text());
    if (alarm.foldedUnder() != 0) {
      node.put("foldedUnder", alarm.foldedUnder());
    }
    dropNulls(node);
    return node;
  }

  /** A stored summary; one that cannot be read has no fields. */
  public static JsonNode tree(String stored) {
    try {
      return MAPPER.readTree(stored);
    } catch (JsonProcessingException unreadable) {
      return MAPPER.missingNode();
    }
  }

  /** The object as one line of text. */
  public static String text(ObjectNode node) {
    try {
      return MAPPER.writeValueAsString(node);
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("a tree that is no JSON", impossible);
    }
  }

  /** The {@code log} part of a stored summary; null if there is none. */
  public static Summary.LogPlace logPlace(String storedSummary) {
    if (storedSummary == null) {
      return null;
    }
    try {
      JsonNode log = MAPPER.readTree(storedSummary).path("log");
      return log.isMissingNode()
          ? null
          : new Summary.LogPlace(
              log.path("file").isTextual() ? log.path("file").textValue() : null,
              log.path("bytes").isNumber() ? log.path("bytes").longValue() : null);
    } catch (JsonProcessingException damaged) {
      return null;
    }
  }

  /** Removes what could not be measured. */
  public static void dropNulls(ObjectNode node) {
    node.properties().removeIf(entry -> entry.getValue().isNull());
  }
}
