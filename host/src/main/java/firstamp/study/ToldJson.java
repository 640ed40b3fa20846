package firstamp.study;

import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.model.Conditions;
import firstamp.model.ProbeEvent;

/** Writes what the person told as JSON lines hold it. */
public final class ToldJson {
  private ToldJson() {}

  /** Puts the kind and what belongs to it into an object; what was not said is absent. */
  public static ObjectNode put(ProbeEvent.Told told, ObjectNode node) {
    if (told instanceof ProbeEvent.Answered answered) {
      node.put("kind", "answered");
      node.put("question", answered.question());
      node.put("answeredEpochMs", answered.answeredEpochMs());
    } else if (told instanceof ProbeEvent.ConditionsSaid said) {
      conditions(said.conditions(), node.put("kind", "conditions"));
    } else if (told instanceof ProbeEvent.SwitchedOnAgain again) {
      again(again, node.put("kind", "again"));
    } else if (told instanceof ProbeEvent.OffExplained why) {
      node.put("kind", "off-reason");
      node.put("reason", why.reason().id());
    }
    return node;
  }

  private static void conditions(Conditions left, ObjectNode node) {
    if (left.load() != null) {
      node.put("load", left.load().id());
    }
    if (left.volume() != null) {
      node.put("volume", left.volume().id());
    }
    if (left.function() != null) {
      node.put("function", left.function().id());
    }
  }

  private static void again(ProbeEvent.SwitchedOnAgain again, ObjectNode node) {
    node.put("afterTrip", again.afterTrip());
    node.put("different", again.difference().id());
    if (again.ohm() != null) {
      node.put("rail", again.rail());
      node.put("ohm", again.ohm());
    }
    if (again.halfV() != null) {
      node.put("halfV", again.halfV());
    }
  }
}
