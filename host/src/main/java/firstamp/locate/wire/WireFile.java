package firstamp.locate.wire;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.model.text.JsonText;
import java.util.ArrayList;
import java.util.List;

/** The state file of unknown wires, format 1; {@code schemas/trial.schema.json} describes it. */
public final class WireFile {
  private static final int FORMAT = 1;

  private WireFile() {}

  /** Reads a state file; a bad one ends in an IllegalArgumentException that names the field. */
  public static WireCase read(String text) {
    JsonNode top = JsonText.parse(text);
    JsonText.onlyKeys(top, JsonText.part("file"), "trial", "set", "wires", "places", "steps");
    if (JsonText.number(top, "trial", JsonText.part("file")) != FORMAT) {
      throw JsonText.bad("format", "trial", top.get("trial"), FORMAT);
    }
    JsonNode set = top.get("set");
    if (set == null || !set.isObject()) {
      throw JsonText.bad("set");
    }
    JsonText.onlyKeys(set, "set", "name", "chassis", "supplyV", "runningA", "goodIdleA");
    List<LooseWire> wires = new ArrayList<>();
    for (JsonNode node : JsonText.objects(top, "wires")) {
      JsonText.onlyKeys(
          node, JsonText.part("wire"), "name", "colour", "build", "reachMm", "foundAt", "places");
      String name = JsonText.text(node, "name", JsonText.part("wire"));
      wires.add(
          new LooseWire(
              name,
              JsonText.textOrNull(node, "colour", name),
              JsonText.textOrNull(node, "build", name),
              JsonText.numberOrNull(node, "reachMm", name),
              JsonText.textOrNull(node, "foundAt", name),
              JsonText.texts(node, "places", name)));
    }
    List<LandingPlace> places = new ArrayList<>();
    for (JsonNode node : JsonText.objects(top, "places")) {
      JsonText.onlyKeys(node, JsonText.part("place"), "name", "kind", "ifWrong");
      String name = JsonText.text(node, "name", JsonText.part("place"));
      places.add(
          new LandingPlace(
              name,
              PlaceKind.of(JsonText.text(node, "kind", name)),
              JsonText.textOrNull(node, "ifWrong", name)));
    }
    WireCase wireCase =
        new WireCase(
            new SetFacts(
                JsonText.text(set, "name", "set"),
                JsonText.text(set, "chassis", "set"),
                JsonText.number(set, "supplyV", "set"),
                JsonText.number(set, "runningA", "set"),
                JsonText.numberOrNull(set, "goodIdleA", "set")),
            wires,
            places,
            List.of());
    for (JsonNode node : JsonText.objects(top, "steps")) {
      wireCase = wireCase.withStored(dated(node));
    }
    return wireCase;
  }

  private static WireStep dated(JsonNode node) {
    Double atEpochMs = JsonText.numberOrNull(node, "atEpochMs", JsonText.part("step"));
    if (atEpochMs == null) {
      return step(node);
    }
    ObjectNode bare = node.deepCopy();
    bare.remove("atEpochMs");
    return new WireStep.Dated(step(bare), atEpochMs.longValue());
  }

  private static WireStep step(JsonNode node) {
    String what = JsonText.text(node, "step", JsonText.part("step"));
    return switch (what) {
      case "clue" -> {
        JsonText.onlyKeys(node, JsonText.part("clue"), "step", "wire", "place", "clue", "fits");
        yield new WireStep.Clue(
            wire(node),
            place(node),
            ClueKind.of(JsonText.text(node, "clue", what)),
            JsonText.flag(node, "fits", what));
      }
      case "hunch" -> {
        JsonText.onlyKeys(node, JsonText.part("hunch"), "step", "wire", "place", "word");
        yield new WireStep.Hunch(wire(node), place(node), JsonText.text(node, "word", what));
      }
      case "wire-ohms" -> {
        JsonText.onlyKeys(node, "wire-ohms", "step", "wire", "place", "ohm", "otherWayOhm");
        yield new WireStep.WireOhms(
            wire(node),
            place(node),
            JsonText.number(node, "ohm", what),
            JsonText.numberOrNull(node, "otherWayOhm", what));
      }
      case "place-ohms" -> {
        JsonText.onlyKeys(node, "place-ohms", "step", "place", "ohm");
        yield new WireStep.PlaceOhms(place(node), JsonText.number(node, "ohm", what));
      }
      case "diode" -> {
        JsonText.onlyKeys(node, JsonText.part("diode"), "step", "wire", "forwardV", "backwardV");
        yield new WireStep.Diode(
            wire(node),
            JsonText.numberOrNull(node, "forwardV", what),
            JsonText.numberOrNull(node, "backwardV", what));
      }
      case "swing" -> {
        JsonText.onlyKeys(
            node, JsonText.part("swing"), "step", "wire", "firstOhm", "lastOhm", "seconds");
        yield new WireStep.Swing(
            wire(node),
            JsonText.number(node, "firstOhm", what),
            JsonText.number(node, "lastOhm", what),
            JsonText.number(node, "seconds", what));
      }
      case "known" -> {
        JsonText.onlyKeys(node, JsonText.part("note"), "step", "wire", "note");
        yield new WireStep.Known(wire(node), JsonText.text(node, "note", what));
      }
      case "source-test" -> {
        JsonText.onlyKeys(node, JsonText.part("source-test"), "step", "wire", "aloneV", "loadedV");
        yield new WireStep.SourceTest(
            wire(node),
            JsonText.number(node, "aloneV", what),
            JsonText.number(node, "loadedV", what));
      }
      case "place-volts" -> {
        JsonText.onlyKeys(node, "place-volts", "step", "place", "volts");
        yield new WireStep.PlaceVolts(place(node), JsonText.number(node, "volts", what));
      }
      case "trial" -> {
        JsonText.onlyKeys(
            node, JsonText.part("trial"), "step", "wire", "place", "powerUp", "verdict", "figures");
        Double powerUp = JsonText.numberOrNull(node, "powerUp", what);
        yield new WireStep.Trial(
            wire(node),
            place(node),
            powerUp == null ? null : powerUp.intValue(),
            TrialVerdict.of(JsonText.text(node, "verdict", what)),
            JsonText.texts(node, "figures", what));
      }
      case "moved" -> {
        JsonText.onlyKeys(node, JsonText.part("note"), "step", "wire", "place", "note");
        yield new WireStep.Moved(wire(node), place(node), JsonText.textOrNull(node, "note", what));
      }
      case "photograph" -> {
        JsonText.onlyKeys(node, JsonText.part("photograph"), "step", "wire", "path", "sha256");
        yield new WireStep.Photograph(
            wire(node), JsonText.text(node, "path", what), JsonText.text(node, "sha256", what));
      }
      default -> throw WireRefusals.of("step", what);
    };
  }

  private static String wire(JsonNode node) {
    return JsonText.text(node, "wire", JsonText.part("step"));
  }

  private static String place(JsonNode node) {
    return JsonText.text(node, "place", JsonText.part("step"));
  }

  /** The text of a state file. */
  public static String write(WireCase wires) {
    ObjectNode top = JsonNodeFactory.instance.objectNode();
    top.put("trial", FORMAT);
    ObjectNode set = top.putObject("set").put("name", wires.set().name());
    set.put("chassis", wires.set().chassis()).put("supplyV", wires.set().supplyV());
    set.put("runningA", wires.set().runningA());
    put(set, "goodIdleA", wires.set().goodIdleA());
    ArrayNode all = top.putArray("wires");
    for (LooseWire wire : wires.wires()) {
      ObjectNode node = all.addObject().put("name", wire.name());
      put(node, "colour", wire.colour());
      put(node, "build", wire.build());
      put(node, "reachMm", wire.reachMm());
      put(node, "foundAt", wire.foundAt());
      wire.places().forEach(node.putArray("places")::add);
    }
    ArrayNode places = top.putArray("places");
    for (LandingPlace place : wires.places()) {
      ObjectNode node = places.addObject().put("name", place.name());
      put(node.put("kind", place.kind().id()), "ifWrong", place.ifWrong());
    }
    ArrayNode steps = top.putArray("steps");
    wires.steps().forEach(step -> write(steps.addObject(), step));
    return JsonText.write(top);
  }

  private static void write(ObjectNode node, WireStep written) {
    WireStep step = written.bare();
    node.put("step", "");
    if (written instanceof WireStep.Dated dated) {
      node.put("atEpochMs", dated.atEpochMs());
    }
    put(node, "wire", step.wire());
    put(node, "place", step.place());
    if (step instanceof WireStep.Clue clue) {
      node.put("step", "clue").put("clue", clue.kind().id()).put("fits", clue.fits());
    } else if (step instanceof WireStep.Hunch hunch) {
      node.put("step", "hunch").put("word", hunch.word());
    } else if (step instanceof WireStep.WireOhms ohms) {
      put(node.put("step", "wire-ohms").put("ohm", ohms.ohm()), "otherWayOhm", ohms.otherWayOhm());
    } else if (step instanceof WireStep.PlaceOhms ohms) {
      node.put("step", "place-ohms").put("ohm", ohms.ohm());
    } else if (step instanceof WireStep.Diode diode) {
      put(node.put("step", "diode"), "forwardV", diode.forwardV());
      put(node, "backwardV", diode.backwardV());
    } else if (step instanceof WireStep.Swing swing) {
      node.put("step", "swing").put("firstOhm", swing.firstOhm());
      node.put("lastOhm", swing.lastOhm()).put("seconds", swing.seconds());
    } else if (step instanceof WireStep.Known known) {
      node.put("step", "known").put("note", known.note());
    } else if (step instanceof WireStep.SourceTest test) {
      node.put("step", "source-test").put("aloneV", test.aloneV()).put("loadedV", test.loadedV());
    } else if (step instanceof WireStep.PlaceVolts volts) {
      node.put("step", "place-volts").put("volts", volts.volts());
    } else if (step instanceof WireStep.Trial trial) {
      node.put("step", "trial");
      if (trial.powerUp() != null) {
        node.put("powerUp", trial.powerUp());
      }
      node.put("verdict", trial.verdict().id());
      trial.figures().forEach(node.putArray("figures")::add);
    } else if (step instanceof WireStep.Moved moved) {
      put(node.put("step", "moved"), "note", moved.note());
    } else if (step instanceof WireStep.Photograph photograph) {
      node.put("step", "photograph").put("path", photograph.path());
      node.put("sha256", photograph.sha256());
    }
  }

  private static void put(ObjectNode node, String key, String value) {
    if (value != null) {
      node.put(key, value);
    }
  }

  private static void put(ObjectNode node, String key, Double value) {
    if (value != null) {
      node.put(key, value);
    }
  }
}
