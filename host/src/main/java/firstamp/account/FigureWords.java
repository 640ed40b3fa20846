package firstamp.account;

import firstamp.analysis.figures.FigureText;
import firstamp.model.JobSheet;
import firstamp.model.text.Phrases;
import java.util.List;
import java.util.Locale;

/** Names and values of figures, in a language. Safe to share. */
public final class FigureWords {
  private static final List<String> LEVELS = List.of("dB", "dBV", "dBu", "VU");

  private final Phrases phrases;
  private final VerdictWords numbers;

  /** In this language. */
  public FigureWords(Locale locale) {
    this.phrases = new Phrases("firstamp.account.figures", locale);
    this.numbers = new VerdictWords(locale);
  }

  /** Name of a figure, with its rail. */
  public String name(FigureList.Figure figure) {
    return named(figure.key(), figure.rail(), figure.railName());
  }

  /** Name of a figure, with its rail as the sheet calls it. */
  public String name(String key, int rail, JobSheet sheet) {
    return named(key, rail, nameOnSheet(rail, sheet));
  }

  /** The value of a figure with its unit. */
  public String text(FigureList.Figure figure) {
    String value = value(figure);
    String said =
        switch (figure.bound()) {
          case NONE -> value;
          case AT_MOST -> phrases.say("value.at-most", value);
          case AT_LEAST -> phrases.say("value.at-least", value);
        };
    return figure.uncalibrated() ? phrases.say("value.uncalibrated", said) : said;
  }

  private String value(FigureList.Figure figure) {
    if (figure.unseen()) {
      double most = Math.abs(figure.value()) + figure.plusMinus();
      return phrases.say("value.under", value(most, figure.unit()));
    }
    return sure(figure)
        ? numbers.figure(
            FigureText.Sure.of(figure.value(), figure.plusMinus(), figure.unit()).value())
        : value(figure.value(), figure.unit());
  }

  /**
   * The uncertainty of a figure with its unit, empty where none is stated or the value is in it.
   */
  public String plusMinus(FigureList.Figure figure) {
    if (figure.plusMinus() == null || figure.unseen()) {
      return "";
    }
    return sure(figure)
        ? numbers.figure(
            FigureText.Sure.of(figure.value(), figure.plusMinus(), figure.unit()).plusMinus())
        : value(figure.plusMinus(), unitOfDifference(figure.unit()));
  }

  /** A distance of two levels has no reference: it is in dB, whatever they are counted from. */
  private static String unitOfDifference(String unit) {
    return LEVELS.contains(unit) ? "dB" : unit;
  }

  /** Whether value and plus-minus are written to the same place; a level has one decimal anyhow. */
  private static boolean sure(FigureList.Figure figure) {
    return figure.plusMinus() != null
        && figure.plusMinus() > 0
        && !LEVELS.contains(figure.unit())
        && !figure.unit().equals("A2s");
  }

  /** A value with its unit; small units that carry no prefix stay as they are. */
  public String value(double value, String unit) {
    return numbers.figure(
        switch (unit) {
          case "ms" -> value < 0 ? "-" + FigureText.millis(-value) : FigureText.millis(value);
          case "uF" -> FigureText.microfarads(value);
          case "dB", "dBV", "dBu", "VU" -> FigureText.decibels(value, unit);
          case "%" -> FigureText.digits(value) + " %";
          case "Hz" -> String.format(Locale.ROOT, "%.0f Hz", value);
          case "uA" -> FigureText.of(value * 1e-6, "A");
          // No prefix: "mA2s" would read as the square of milliamperes.
          case "A2s" -> String.format(Locale.ROOT, "%.2g A\u00b2s", value);
          default -> FigureText.of(value, unit);
        });
  }

  /** Where two traces diverge. */
  public String parting(Comparison.Parting parting, JobSheet sheet) {
    String what =
        parting.rail() == 0
            ? phrases.say("parting." + parting.what())
            : railName(parting.rail(), nameOnSheet(parting.rail(), sheet));
    String unit = parting.what().equals("supply current") ? "A" : "V";
    return what + " " + value(parting.before(), unit) + " / " + value(parting.after(), unit);
  }

  private static String nameOnSheet(int rail, JobSheet sheet) {
    JobSheet.Rail entry = sheet.rail(rail);
    return entry == null ? null : entry.name();
  }

  private String named(String key, int rail, String railName) {
    String name = phrases.say(key);
    return rail == 0 ? name : railName(rail, railName) + ": " + name;
  }

  /** Name of a rail, or its clip where the sheet has no name. */
  private String railName(int rail, String name) {
    return name == null ? phrases.say("parting.rail") + " " + rail : name;
  }
}
