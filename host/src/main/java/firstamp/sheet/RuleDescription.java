package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.limits.Coverage;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;

/**
 * What one rule of the host looks for, in words.
 *
 * @param words continues "raises an alarm"
 * @param on input it is seen on, null = none
 * @param limit null = none
 * @param unit of the limit, null = none
 * @param stepMs how often it can look
 */
record RuleDescription(Phrase words, String on, Double limit, String unit, double stepMs) {
  private static final double READING_MS = 10;
  private static final double WINDOW_MS = 200;

  static RuleDescription of(JobSheet sheet, Coverage.Item item) {
    RuleId rule = item.rule();
    int rail = item.rail();
    JobSheet.RuleSettings settings = rule.settings(sheet);
    JobSheet.Supply supply = sheet.supply();
    JobSheet.Rail said = rail == 0 ? null : sheet.rail(rail);
    Object name = said == null ? new Phrase("the-supply") : said.name();
    String input = SheetCheck.input(rail);
    return switch (rule) {
      case OVER_CURRENT -> reading(rule, "I", null, null);
      case SHORT -> {
        double below = settings.numbers().get("belowOhm");
        yield reading(rule, "I, J", below, "ohm", below);
      }
      case NO_DRAW -> {
        double below = settings.numbers().get("belowA");
        yield reading(
            rule, "J", below, "A", Quantity.amps(below), settings.numbers().get("afterMs"));
      }
      case CURRENT_CREEP -> {
        Double over = settings.numbers().get("overAPerMin");
        yield new RuleDescription(
            over == null
                ? new Phrase("goal.current-creep.share")
                : words(rule, Quantity.amps(over)),
            "I, J",
            over,
            "A/min",
            settings.numbers().get("forMs"));
      }
      case RAIL_WINDOW -> window(said, supply, name, input);
      case RAIL_LATE -> reading(rule, input, said.settleMs(), "ms", name, said.settleMs());
      case RAIL_UNSTEADY, RAIL_NOT_FOLLOWING -> {
        double percent = settings.numbers().get("percent");
        yield reading(rule, input, percent, "%", name, percent);
      }
      case RIPPLE ->
          new RuleDescription(
              words(rule, name, said.rippleMaxVrms() * 1000),
              input,
              said.rippleMaxVrms(),
              "V",
              WINDOW_MS);
      case RIPPLE_TOO_LOW ->
          new RuleDescription(
              words(rule, name), input, settings.numbers().get("belowShare"), "share", WINDOW_MS);
      case OVER_VOLTAGE -> {
        double over = said == null ? supply.maxV() : said.overV();
        yield reading(rule, input, over, "V", name, over);
      }
      case WRONG_POLARITY -> reading(rule, input, 0.5, "V", name);
      case RAIL_CLIMBING -> {
        double over = settings.numbers().get("overV");
        yield reading(rule, input, over, "V", name, over);
      }
      case OUTPUT_OFFSET -> {
        double over = settings.numbers().get("overV");
        yield reading(rule, input, over, "V", rail, over);
      }
      case HEAD_BELOW_METER -> head(sheet.levels());
      case HUM -> {
        double above = settings.numbers().get("aboveDbv");
        yield new RuleDescription(words(rule, above), "H", above, "dBV", WINDOW_MS);
      }
      case INPUT_CLIPPED, CLIP_OFF -> reading(rule, input, null, null, name);
      case PROBE_SILENT -> {
        double after = settings.numbers().get("afterMs");
        yield new RuleDescription(words(rule, after), null, after, "ms", after);
      }
      case NOT_LOGGING -> new RuleDescription(words(rule), null, null, null, 0);
      case SWITCH_FAILED -> reading(rule, "J", 0.005, "A");
    };
  }

  private static RuleDescription window(
      JobSheet.Rail rail, JobSheet.Supply supply, Object name, String input) {
    double low = rail == null ? supply.minV() : rail.nominalV() - tolerance(rail);
    double high = rail == null ? supply.maxV() : rail.nominalV() + tolerance(rail);
    return reading(RuleId.RAIL_WINDOW, input, null, null, name, low, high);
  }

  private static double tolerance(JobSheet.Rail rail) {
    return Math.abs(rail.nominalV()) * rail.tolerancePercent() / 100;
  }

  private static RuleDescription head(JobSheet.Levels levels) {
    if (levels.expectedDb() == null) {
      return new RuleDescription(new Phrase("goal.head.nothing"), "H, M", null, null, WINDOW_MS);
    }
    double limit = levels.expectedDb() + levels.marginDb();
    return new RuleDescription(new Phrase("goal.head", limit), "H, M", limit, "dB", WINDOW_MS);
  }

  private static RuleDescription reading(
      RuleId rule, String on, Double limit, String unit, Object... values) {
    return new RuleDescription(words(rule, values), on, limit, unit, READING_MS);
  }

  private static Phrase words(RuleId rule, Object... values) {
    return new Phrase("goal." + rule.id(), values);
  }
}
