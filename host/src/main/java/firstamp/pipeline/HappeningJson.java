package firstamp.pipeline;

import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.model.ClipMove;
import firstamp.model.Happening;

/** Writes what happened as JSON lines and exported files hold it. */
public final class HappeningJson {
  private HappeningJson() {}

  /**
   * Puts kind, time and what belongs to the kind into an object.
   *
   * @param atMs from the closing, null = nobody knows it yet: absent
   */
  public static ObjectNode put(Happening what, Double atMs, ObjectNode node) {
    node.put("kind", what.kind());
    if (atMs != null) {
      node.put("atMs", atMs);
    }
    if (what instanceof ClipMove move) {
      clip(move, node);
    } else if (what instanceof Happening.ModeSet set) {
      node.put("mode", set.mode().id());
    } else if (what instanceof Happening.Step step) {
      node.put("step", step.step());
      node.put("of", step.of());
      node.put("state", step.state().id());
      node.put("text", step.text());
    } else if (what instanceof Happening.ClipsRead read) {
      node.put("headJoined", read.head());
      node.put("meterJoined", read.meter());
    } else if (!(what instanceof Happening.Recording)) {
      node.put("text", what.words());
    }
    return node;
  }

  private static void clip(ClipMove move, ObjectNode node) {
    node.put("act", move.act().id());
    if (!move.name().isEmpty()) {
      node.put("name", move.name());
    }
    if (move.mode() != null) {
      node.put("mode", move.mode());
    }
    if (move.input() != null) {
      node.put("input", move.input().name().toLowerCase(java.util.Locale.ROOT));
    }
    if (move.levelDbv() != null) {
      node.put("levelDbv", move.levelDbv());
    }
  }
}
