package firstamp.worlds;

import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;

/** The classes of sets, each with its healthy form and its faults. */
final class Kinds {
  /** Draws one power-up. */
  interface Kind {
    World draw(Draw draw, Path folder) throws Exception;
  }

  private Kinds() {}

  static Map<String, Kind> all() {
    Map<String, Kind> kinds = new TreeMap<>();
    for (String fault : new String[] {"healthy", "short", "runaway", "loose-wire", "pulled-down"}) {
      kinds.put("plain " + fault, (draw, folder) -> StageKinds.plain(draw, fault));
    }
    for (String fault : new String[] {"healthy", "stalled"}) {
      kinds.put("motor " + fault, (draw, folder) -> LoadKinds.motor(draw, fault, false));
      kinds.put("governor " + fault, (draw, folder) -> LoadKinds.motor(draw, fault, true));
    }
    kinds.put("lamps healthy", (draw, folder) -> LoadKinds.lamps(draw));
    kinds.put("battery healthy", (draw, folder) -> LoadKinds.battery(draw));
    kinds.put("music healthy", (draw, folder) -> MusicKinds.music(draw, folder, 0));
    kinds.put(
        "music creep", (draw, folder) -> MusicKinds.music(draw, folder, draw.decades(1.3, 4)));
    for (String fault : new String[] {"healthy", "tired-filter", "half-open"}) {
      kinds.put("transformer " + fault, (draw, folder) -> SupplyKinds.transformer(draw, fault));
    }
    kinds.put("steps healthy", (draw, folder) -> SupplyKinds.steps(draw));
    kinds.put("turned-up healthy", (draw, folder) -> SupplyKinds.turnedUp(draw, false));
    kinds.put("turned-up from-zero healthy", (draw, folder) -> SupplyKinds.turnedUp(draw, true));
    kinds.put("limited short", (draw, folder) -> SupplyKinds.limited(draw));
    kinds.put("speech healthy", (draw, folder) -> SpeechKinds.speech(draw, folder, 0));
    for (int loss : new int[] {7, 12, 18, 25}) {
      kinds.put("speech loss-" + loss, (draw, folder) -> SpeechKinds.speech(draw, folder, loss));
    }
    kinds.put("speech open", (draw, folder) -> SpeechKinds.speech(draw, folder, 60));
    kinds.put("speech level-control healthy", SpeechKinds::levelControl);
    kinds.put("speech contact", SpeechKinds::contact);
    return kinds;
  }
}
