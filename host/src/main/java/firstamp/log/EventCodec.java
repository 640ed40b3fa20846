package firstamp.log;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.model.ClipMove;
import firstamp.model.Happening;
import firstamp.model.ProbeEvent;
import firstamp.model.samples.Capture;
import java.util.LinkedHashMap;
import java.util.Map;

/** Events and values to JSON and back, as the columns {@code kind} and {@code fields} hold them. */
final class EventCodec {
  private static final Map<String, Class<? extends ProbeEvent>> KINDS = kinds();
  private static final Map<String, Class<? extends Happening>> HAPPENINGS = happenings();

  // Only components are kept: a method of a record that begins with "is" is none.
  private final ObjectMapper mapper =
      JsonMapper.builder().disable(MapperFeature.AUTO_DETECT_IS_GETTERS).build();

  /** Name of an event's kind in the log. */
  static String kind(ProbeEvent event) {
    if (event instanceof ProbeEvent.Happened happened) {
      return happened.what().kind();
    }
    for (Map.Entry<String, Class<? extends ProbeEvent>> entry : KINDS.entrySet()) {
      if (entry.getValue() == event.getClass()) {
        return entry.getKey();
      }
    }
    throw new IllegalStateException("event without a name in the log: " + event.getClass());
  }

  String fields(ProbeEvent event) {
    try {
      ObjectNode node;
      if (event instanceof ProbeEvent.Captured captured) {
        node = captureFields(captured.capture());
      } else if (event instanceof ProbeEvent.Happened happened) {
        node = mapper.valueToTree(happened.what());
      } else {
        node = mapper.valueToTree(event);
      }
      node.remove("micros");
      // Kept in English only.
      node.remove("words");
      node.remove("said");
      return mapper.writeValueAsString(node);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("event cannot be written as JSON: " + event, e);
    }
  }

  ProbeEvent event(String kind, long micros, String fields) throws LogException {
    Class<? extends Happening> what = HAPPENINGS.get(kind);
    Class<? extends ProbeEvent> type = KINDS.get(kind);
    if (type == null && what == null) {
      throw damaged("event of unknown kind \"" + kind + "\"", null);
    }
    try {
      JsonNode node = mapper.readTree(fields);
      if (!(node instanceof ObjectNode object)) {
        throw damaged("fields of event \"" + kind + "\" are no JSON object", null);
      }
      if (type == ProbeEvent.Captured.class) {
        return new ProbeEvent.Captured(micros, capture(object));
      }
      if (what != null) {
        return new ProbeEvent.Happened(micros, mapper.treeToValue(object, what));
      }
      object.put("micros", micros);
      return mapper.treeToValue(object, type);
    } catch (JsonProcessingException | IllegalArgumentException e) {
      throw damaged("fields of event \"" + kind + "\" are not those that Firstamp writes", e);
    }
  }

  String json(Object value) {
    try {
      return mapper.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("value cannot be written as JSON: " + value, e);
    }
  }

  <T> T value(String json, Class<T> type) throws LogException {
    try {
      T value = mapper.readValue(json, type);
      if (value == null) {
        throw damaged("stored " + type.getSimpleName() + " is null", null);
      }
      return value;
    } catch (JsonProcessingException | IllegalArgumentException | NullPointerException e) {
      throw damaged("stored " + type.getSimpleName() + " is not what Firstamp writes", e);
    }
  }

  private ObjectNode captureFields(Capture capture) {
    ObjectNode node = mapper.createObjectNode();
    node.put("tripNumber", capture.tripNumber());
    node.put("decidedMicros", capture.decidedMicros());
    node.put("missing", capture.missing());
    ArrayNode counts = node.putArray("counts");
    for (int place = 0; place < Capture.LENGTH; place++) {
      counts.add(capture.counts(place));
    }
    return node;
  }

  private static Capture capture(ObjectNode node) {
    JsonNode list = node.path("counts");
    short[] counts = new short[Math.min(list.size(), Capture.LENGTH + 1)];
    for (int place = 0; place < counts.length; place++) {
      counts[place] = (short) list.get(place).asInt();
    }
    return new Capture(
        node.path("tripNumber").asInt(),
        node.path("decidedMicros").asLong(),
        node.path("missing").asInt(),
        counts);
  }

  private static LogException damaged(String what, Throwable cause) {
    return new LogException(
        LogException.Kind.DAMAGED,
        LogException.say("event-codec.run-log-check-to-see", what),
        cause);
  }

  private static Map<String, Class<? extends Happening>> happenings() {
    Map<String, Class<? extends Happening>> kinds = new LinkedHashMap<>();
    for (Happening.RecordState state : Happening.RecordState.values()) {
      kinds.put(new Happening.Recording(state).kind(), Happening.Recording.class);
    }
    kinds.put(Happening.CLIP, ClipMove.class);
    kinds.put(Happening.CONTACT, ClipMove.class);
    kinds.put("mode", Happening.ModeSet.class);
    kinds.put("step", Happening.Step.class);
    kinds.put("change", Happening.SetChanged.class);
    kinds.put("start", Happening.LoadStarted.class);
    kinds.put("supply", Happening.SupplySaid.class);
    kinds.put("clips-read", Happening.ClipsRead.class);
    return Map.copyOf(kinds);
  }

  private static Map<String, Class<? extends ProbeEvent>> kinds() {
    Map<String, Class<? extends ProbeEvent>> kinds = new LinkedHashMap<>();
    kinds.put("switch", ProbeEvent.SwitchChanged.class);
    kinds.put("look", ProbeEvent.Looked.class);
    kinds.put("trip", ProbeEvent.Tripped.class);
    kinds.put("capture", ProbeEvent.Captured.class);
    kinds.put("gap", ProbeEvent.Gap.class);
    kinds.put("press", ProbeEvent.Pressed.class);
    kinds.put("link", ProbeEvent.LinkChanged.class);
    kinds.put("log", ProbeEvent.LogChanged.class);
    kinds.put("mark", ProbeEvent.Marked.class);
    kinds.put("seen", ProbeEvent.Acknowledged.class);
    kinds.put("note", ProbeEvent.Noted.class);
    kinds.put("limit", ProbeEvent.LimitChanged.class);
    kinds.put("answered", ProbeEvent.Answered.class);
    kinds.put("conditions", ProbeEvent.ConditionsSaid.class);
    kinds.put("again", ProbeEvent.SwitchedOnAgain.class);
    kinds.put("off-reason", ProbeEvent.OffExplained.class);
    kinds.put("condition", ProbeEvent.ProbeCondition.class);
    kinds.put("ended", ProbeEvent.RunEnded.class);
    return Map.copyOf(kinds);
  }
}
