package firstamp.locate.wire;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;

/** What was done about the wires so far, in sentences with dates, so that it reads like a story. */
public final class WireStory {
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm");

  private WireStory() {}

  /** One line per step, in order. */
  public static List<String> of(WireCase wires, ZoneId zone, WireWords words) {
    List<String> lines = new ArrayList<>();
    for (WireStep step : wires.steps()) {
      String day =
          step instanceof WireStep.Dated dated
              ? DAY.withZone(zone).format(Instant.ofEpochMilli(dated.atEpochMs())) + "  "
              : "";
      lines.add(day + words.step(step));
    }
    for (LooseWire wire : wires.wires()) {
      String now = wires.answer(wire.name(), words).sentence();
      lines.add(words.say("now", wire.name(), now));
    }
    return lines;
  }
}
