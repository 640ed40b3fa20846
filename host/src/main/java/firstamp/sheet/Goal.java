package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.limits.Coverage;
import firstamp.model.text.Numbers;

/**
 * What one rule of the host looks for, in words.
 *
 * @param words continues "raises an alarm"
 * @param on input it is seen on, null = none
 * @param limit null = none
 * @param unit of the limit, null = none
 * @param stepMs how often it can look
 */
record Goal(String words, String on, Double limit, String unit, double stepMs) {
  private static final double READING_MS = 10;
  private static final double WINDOW_MS = 200;

  static Goal of(JobSheet sheet, Coverage.Item item) {
    RuleId rule = item.rule();
    int rail = item.rail();
    JobSheet.RuleSettings settings = rule.settings(sheet);
    JobSheet.Supply supply = sheet.supply();
    JobSheet.Rail said = rail == 0 ? null : sheet.rail(rail);
    String name = said == null ? "the supply" : said.name();
    String input = SheetCheck.input(rail);
    return switch (rule) {
      case OVER_CURRENT -> reading("when the probe switched off by current", "I", null, null);
      case SHORT -> {
        double below = settings.numbers().get("belowOhm");
        yield reading(
            "when volts over amps are under "
                + Numbers.text(below)
                + " ohm, or when your supply is limiting",
            "I, J",
            below,
            "ohm");
      }
      case NO_DRAW -> {
        double below = settings.numbers().get("belowA");
        yield reading(
            "when the set draws less than "
                + Numbers.amps(below)
                + " from "
                + Numbers.text(settings.numbers().get("afterMs"))
                + " ms on",
            "J",
            below,
            "A");
      }
      case CURRENT_CREEP -> {
        double over = settings.numbers().get("overAPerMin");
        yield new Goal(
            "when the current climbs by more than " + Numbers.amps(over) + " a minute",
            "I, J",
            over,
            "A/min",
            settings.numbers().get("forMs"));
      }
      case RAIL_WINDOW -> window(said, supply, name, input);
      case RAIL_LATE ->
          reading(
              "when " + name + " is not up after " + Numbers.text(said.settleMs()) + " ms",
              input,
              said.settleMs(),
              "ms");
      case RAIL_UNSTEADY -> {
        double percent = settings.numbers().get("percent");
        yield reading(
            "when " + name + " moves by more than " + Numbers.text(percent) + " % in a second",
            input,
            percent,
            "%");
      }
      case RIPPLE ->
          new Goal(
              "when "
                  + name
                  + " has more than "
                  + Numbers.text(said.rippleMaxVrms() * 1000)
                  + " mV of ripple",
              input,
              said.rippleMaxVrms(),
              "V",
              WINDOW_MS);
      case RIPPLE_TOO_LOW ->
          new Goal(
              "when " + name + " is high and has hardly any ripple",
              input,
              settings.numbers().get("belowShare"),
              "share",
              WINDOW_MS);
      case OVER_VOLTAGE -> {
        double over = said == null ? supply.maxV() : said.overV();
        yield reading("when " + name + " is over " + Numbers.text(over) + " V", input, over, "V");
      }
      case WRONG_POLARITY ->
          reading(
              "when " + name + " is more than 0.5 V on the wrong side of the chassis",
              input,
              0.5,
              "V");
      case RAIL_NOT_FOLLOWING -> {
        double percent = settings.numbers().get("percent");
        yield reading(
            "when "
                + name
                + " falls by "
                + Numbers.text(percent)
                + " % in a second while the supply stands still",
            input,
            percent,
            "%");
      }
      case RAIL_CLIMBING -> {
        double over = settings.numbers().get("overV");
        yield reading(
            "when " + name + " climbs by " + Numbers.text(over) + " V after the switch opened",
            input,
            over,
            "V");
      }
      case OUTPUT_OFFSET -> {
        double over = settings.numbers().get("overV");
        yield reading(
            "when the output on clip " + rail + " stands at more than " + Numbers.text(over) + " V",
            input,
            over,
            "V");
      }
      case HEAD_BELOW_METER -> head(sheet.levels());
      case HUM -> {
        double above = settings.numbers().get("aboveDbv");
        yield new Goal(
            "when hum at the head is above " + Numbers.text(above) + " dBV",
            "H",
            above,
            "dBV",
            WINDOW_MS);
      }
      case INPUT_CLIPPED ->
          reading("when " + name + " stands at the end of its range", input, null, null);
      case CLIP_OFF ->
          reading("when " + name + " is gone at once and the current stays", input, null, null);
      case PROBE_SILENT -> {
        double after = settings.numbers().get("afterMs");
        yield new Goal(
            "when nothing comes from the probe for " + Numbers.text(after) + " ms",
            null,
            after,
            "ms",
            after);
      }
      case NOT_LOGGING -> new Goal("when the bench log is not written", null, null, null, 0);
      case SWITCH_FAILED ->
          reading("when current flows although the switch is open", "J", 0.005, "A");
    };
  }

  private static Goal window(
      JobSheet.Rail rail, JobSheet.Supply supply, String name, String input) {
    if (rail == null) {
      return reading(
          "when the supply is outside "
              + Numbers.text(supply.minV())
              + " to "
              + Numbers.text(supply.maxV())
              + " V",
          input,
          null,
          null);
    }
    double tolerance = Math.abs(rail.nominalV()) * rail.tolerancePercent() / 100;
    return reading(
        "when "
            + name
            + " is outside "
            + Numbers.text(rail.nominalV() - tolerance)
            + " to "
            + Numbers.text(rail.nominalV() + tolerance)
            + " V",
        input,
        null,
        null);
  }

  private static Goal head(JobSheet.Levels levels) {
    if (levels.expectedDb() == null) {
      return new Goal(
          "when the needle shows signal, record is on and the head gets nothing",
          "H, M",
          null,
          null,
          WINDOW_MS);
    }
    double limit = levels.expectedDb() + levels.marginDb();
    return new Goal(
        "when the head is more than " + Numbers.text(limit) + " dB below the meter",
        "H, M",
        limit,
        "dB",
        WINDOW_MS);
  }

  private static Goal reading(String words, String on, Double limit, String unit) {
    return new Goal(words, on, limit, unit, READING_MS);
  }
}
