package firstamp.locate;

import firstamp.model.Numbers;
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
  public static List<String> of(WireCase wires, ZoneId zone) {
    List<String> lines = new ArrayList<>();
    for (WireStep step : wires.steps()) {
      String day =
          step instanceof WireStep.Dated dated
              ? DAY.withZone(zone).format(Instant.ofEpochMilli(dated.atEpochMs())) + "  "
              : "";
      lines.add(day + words(step));
    }
    for (WireCase.Wire wire : wires.wires()) {
      lines.add(wire.name() + " now: " + wires.answer(wire.name()).sentence());
    }
    return lines;
  }

  /** A step in words. */
  public static String words(WireStep step) {
    WireStep bare = step.bare();
    if (bare instanceof WireStep.Clue clue) {
      String kind = clue.kind().id().replace('-', ' ');
      return clue.wire() + ": " + kind + " speaks " + side(clue.fits()) + clue.place();
    } else if (bare instanceof WireStep.Hunch hunch) {
      return hunch.wire() + ": " + hunch.word() + " at " + hunch.place();
    } else if (bare instanceof WireStep.WireOhms ohms) {
      String other = ohms.otherWayOhm() == null ? "" : ", other way " + ohm(ohms.otherWayOhm());
      return ohms.wire() + " to " + ohms.place() + ": " + ohm(ohms.ohm()) + other;
    } else if (bare instanceof WireStep.PlaceOhms ohms) {
      return ohms.place() + " to the chassis: " + ohm(ohms.ohm());
    } else if (bare instanceof WireStep.Diode diode) {
      return diode.wire() + ": a junction, " + volts(diode.forwardV()) + " forward";
    } else if (bare instanceof WireStep.Swing swing) {
      return swing.wire()
          + ": climbs from "
          + ohm(swing.firstOhm())
          + " to "
          + ohm(swing.lastOhm())
          + " in "
          + Numbers.text(swing.seconds())
          + " s";
    } else if (bare instanceof WireStep.SourceTest test) {
      return test.wire()
          + ", end insulated: "
          + volts(test.aloneV())
          + " alone, "
          + volts(test.loadedV())
          + " with 10 kohm to the chassis";
    } else if (bare instanceof WireStep.PlaceVolts volts) {
      return volts.place() + ": " + volts(volts.volts()) + " with nothing joined";
    } else if (bare instanceof WireStep.Trial trial) {
      return trial(trial);
    } else if (bare instanceof WireStep.Moved moved) {
      String note = moved.note() == null ? "" : ": " + moved.note();
      return "Moved " + moved.wire() + " to " + moved.place() + note;
    } else if (bare instanceof WireStep.Photograph photograph) {
      return photograph.wire() + ": photograph " + photograph.path();
    }
    throw new IllegalStateException("no words for " + bare);
  }

  private static String trial(WireStep.Trial trial) {
    String number = trial.powerUp() == null ? "" : " (power-up " + trial.powerUp() + ")";
    String figures = trial.figures().isEmpty() ? "" : ": " + String.join(" and ", trial.figures());
    return "Tried "
        + trial.wire()
        + " at "
        + trial.place()
        + number
        + ": "
        + trial.verdict().words()
        + figures;
  }

  private static String side(boolean fits) {
    return fits ? "for " : "against ";
  }

  private static String ohm(double ohm) {
    if (ohm >= 1e6) {
      return Numbers.text(ohm / 1e6) + " Mohm";
    }
    return ohm >= 1000 ? Numbers.text(ohm / 1000) + " kohm" : Numbers.text(ohm) + " ohm";
  }

  private static String volts(Double volts) {
    return volts == null ? "open" : Numbers.text(volts) + " V";
  }
}
