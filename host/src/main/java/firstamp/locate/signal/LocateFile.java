package firstamp.locate.signal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.model.text.JsonText;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/** The state file of a search, format 1; {@code schemas/locate.schema.json} describes it. */
public final class LocateFile {
  private static final int FORMAT = 1;

  private LocateFile() {}

  /** Reads a state file; a bad one ends in an IllegalArgumentException that names the field. */
  public static LocateSession read(String text) {
    JsonNode top = JsonText.parse(text);
    JsonText.onlyKeys(
        top,
        JsonText.part("file"),
        "locate",
        "name",
        "modes",
        "points",
        "joints",
        "railAlarms",
        "steps");
    if (JsonText.number(top, "locate", JsonText.part("file")) != FORMAT) {
      throw JsonText.bad("format", "locate", top.get("locate"), FORMAT);
    }
    List<SignalGraph.Mode> modes = new ArrayList<>();
    for (JsonNode node : JsonText.objects(top, "modes")) {
      JsonText.onlyKeys(node, JsonText.part("mode"), "name", "source");
      modes.add(
          new SignalGraph.Mode(
              JsonText.text(node, "name", JsonText.part("mode")),
              JsonText.text(node, "source", JsonText.part("mode"))));
    }
    List<SignalGraph.PathPoint> points = new ArrayList<>();
    for (JsonNode node : JsonText.objects(top, "points")) {
      points.add(point(node));
    }
    List<SignalGraph.PathJoint> joints = new ArrayList<>();
    for (JsonNode node : JsonText.objects(top, "joints")) {
      joints.add(joint(node));
    }
    SignalGraph graph =
        new SignalGraph(JsonText.text(top, "name", JsonText.part("file")), modes, points, joints);
    LocateSession session =
        LocateSession.start(graph)
            .withRailAlarms(JsonText.texts(top, "railAlarms", JsonText.part("file")));
    for (JsonNode node : JsonText.objects(top, "steps")) {
      session = session.with(step(node));
    }
    return session;
  }

  private static SignalGraph.PathPoint point(JsonNode node) {
    JsonText.onlyKeys(
        node, JsonText.part("point"), "name", "expectedDbv", "expectedByModeDbv", "effort");
    String name = JsonText.text(node, "name", JsonText.part("point"));
    Map<String, Double> byMode = new HashMap<>();
    JsonNode named = node.get("expectedByModeDbv");
    if (named != null) {
      named
          .fieldNames()
          .forEachRemaining(mode -> byMode.put(mode, JsonText.number(named, mode, name)));
    }
    Double effort = JsonText.numberOrNull(node, "effort", name);
    return new SignalGraph.PathPoint(
        name,
        JsonText.numberOrNull(node, "expectedDbv", name),
        byMode,
        effort == null ? 1 : effort);
  }

  private static SignalGraph.PathJoint joint(JsonNode node) {
    JsonText.onlyKeys(
        node, JsonText.part("joint"), "name", "from", "to", "kind", "modes", "weight");
    String name = JsonText.text(node, "name", JsonText.part("joint"));
    JointKind kind = JointKind.of(JsonText.text(node, "kind", name));
    Double weight = JsonText.numberOrNull(node, "weight", name);
    return new SignalGraph.PathJoint(
        name,
        JsonText.text(node, "from", name),
        JsonText.text(node, "to", name),
        kind,
        new LinkedHashSet<>(JsonText.texts(node, "modes", name)),
        weight == null ? kind.weight() : weight);
  }

  private static Observation step(JsonNode node) {
    JsonText.onlyKeys(
        node,
        JsonText.part("step"),
        "point",
        "mode",
        "from",
        "levelDbv",
        "uncertaintyDb",
        "atMost",
        "there",
        "strokes",
        "levelsDb",
        "tapped",
        "quietDb",
        "touchedDb",
        "mended");
    if (node.has("mended")) {
      return new Observation.Mended(JsonText.text(node, "mended", JsonText.part("step")));
    }
    if (node.has("strokes")) {
      return new Observation.Strokes(
          JsonText.text(node, "strokes", JsonText.part("step")),
          JsonText.numbers(node, "levelsDb", JsonText.part("step")));
    }
    if (node.has("tapped")) {
      return new Observation.Taps(
          JsonText.text(node, "tapped", JsonText.part("step")),
          JsonText.numbers(node, "quietDb", JsonText.part("step")),
          JsonText.numbers(node, "touchedDb", JsonText.part("step")));
    }
    String point = JsonText.text(node, "point", JsonText.part("step"));
    String mode = JsonText.textOrNull(node, "mode", JsonText.part("step"));
    String from = JsonText.textOrNull(node, "from", JsonText.part("step"));
    if (node.has("there")) {
      return new Observation.Heard(
          point, mode, from, JsonText.flag(node, "there", JsonText.part("step")));
    }
    return new Observation.Level(
        point,
        mode,
        from,
        JsonText.number(node, "levelDbv", JsonText.part("step")),
        JsonText.number(node, "uncertaintyDb", JsonText.part("step")),
        node.has("atMost") && JsonText.flag(node, "atMost", JsonText.part("step")));
  }

  /** The text of a state file. */
  public static String write(LocateSession session) {
    ObjectNode top = JsonNodeFactory.instance.objectNode();
    top.put("locate", FORMAT).put("name", session.graph().name());
    ArrayNode modes = top.putArray("modes");
    for (SignalGraph.Mode mode : session.graph().modes()) {
      modes.addObject().put("name", mode.name()).put("source", mode.source());
    }
    ArrayNode points = top.putArray("points");
    for (SignalGraph.PathPoint point : session.graph().points()) {
      ObjectNode node = points.addObject().put("name", point.name());
      if (point.expectedDbv() != null) {
        node.put("expectedDbv", point.expectedDbv());
      }
      if (!point.expectedByMode().isEmpty()) {
        ObjectNode byMode = node.putObject("expectedByModeDbv");
        new TreeMap<>(point.expectedByMode()).forEach(byMode::put);
      }
      node.put("effort", point.effort());
    }
    ArrayNode joints = top.putArray("joints");
    for (SignalGraph.PathJoint joint : session.graph().joints()) {
      ObjectNode node = joints.addObject().put("name", joint.name());
      node.put("from", joint.from()).put("to", joint.to()).put("kind", joint.kind().id());
      if (!joint.modes().isEmpty()) {
        new TreeSet<>(joint.modes()).forEach(node.withArray("modes")::add);
      }
      node.put("weight", joint.weight());
    }
    session.railAlarms().forEach(top.putArray("railAlarms")::add);
    ArrayNode steps = top.putArray("steps");
    session.observations().forEach(observation -> write(steps.addObject(), observation));
    return JsonText.write(top);
  }

  private static void write(ObjectNode node, Observation observation) {
    if (observation instanceof Observation.Level level) {
      place(node, level.point(), level.mode(), level.from());
      node.put("levelDbv", level.levelDbv()).put("uncertaintyDb", level.uncertaintyDb());
      if (level.atMost()) {
        node.put("atMost", true);
      }
    } else if (observation instanceof Observation.Heard heard) {
      place(node, heard.point(), heard.mode(), heard.from());
      node.put("there", heard.there());
    } else if (observation instanceof Observation.Strokes strokes) {
      node.put("strokes", strokes.joint());
      strokes.levelsDb().forEach(node.putArray("levelsDb")::add);
    } else if (observation instanceof Observation.Taps taps) {
      node.put("tapped", taps.joint());
      taps.quietDb().forEach(node.putArray("quietDb")::add);
      taps.touchedDb().forEach(node.putArray("touchedDb")::add);
    } else if (observation instanceof Observation.Mended mended) {
      node.put("mended", mended.joint());
    }
  }

  private static void place(ObjectNode node, String point, String mode, String from) {
    node.put("point", point);
    if (mode != null) {
      node.put("mode", mode);
    }
    if (from != null) {
      node.put("from", from);
    }
  }
}
