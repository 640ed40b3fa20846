package firstamp.cli.output;

import firstamp.account.FigureList;
import firstamp.account.FigureWords;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A summary in sentences. Never says that all is well: only what was seen, and what was not
 * watched.
 */
public final class SummaryText {
  private final Speech speech;
  private final Summary summary;
  private final List<String> lines = new ArrayList<>();

  private SummaryText(Summary summary, Speech speech) {
    this.summary = summary;
    this.speech = speech;
  }

  /** With these figures, in English. */
  public static List<String> lines(Summary summary, FigureList figures) {
    return lines(summary, figures, null, Speech.ENGLISH);
  }

  /**
   * With these figures.
   *
   * @param sheet for the names of rails; null = English, which needs none
   */
  public static List<String> lines(
      Summary summary, FigureList figures, JobSheet sheet, Speech speech) {
    SummaryText text = new SummaryText(summary, speech);
    text.headline();
    text.alarms();
    if (summary.look() != null) {
      text.add("look.line", speech.say("look." + summary.look().result()));
    }
    text.figures(figures);
    if (summary.notWatched() != null && !summary.notWatched().isEmpty()) {
      text.add("not-watched", speech.notWatched(summary.notWatched(), sheet, "; "));
    }
    text.source();
    return text.lines;
  }

  private void add(String key, Object... values) {
    lines.add(speech.say(key, values));
  }

  private void source() {
    if (summary.conversions() != null) {
      add(
          "conversions",
          summary.conversions().received(),
          summary.conversions().lost(),
          summary.conversions().gaps());
    }
    if (summary.log() != null && summary.log().file() != null) {
      if (summary.log().bytes() == null) {
        add("kept", summary.log().file());
      } else {
        add(
            "kept.size",
            summary.log().file(),
            speech.number("%.1f", summary.log().bytes() / 1000.0));
      }
    }
  }

  /** Each with what belongs to it, in the order of their causes. */
  private void alarms() {
    for (Alarm top : summary.alarms()) {
      if (top.foldedUnder() == 0) {
        add("alarm.line", speech.alarms().of(top));
        summary.alarms().stream()
            .filter(alarm -> alarm.foldedUnder() == top.number())
            .forEach(alarm -> add("alarm.also", speech.alarms().of(alarm)));
      }
    }
  }

  private void headline() {
    String number = summary.powerUp() == null ? "" : summary.powerUp().toString();
    lines.add(speech.say("head", number, ending()).replace(" :", ":"));
  }

  private String ending() {
    boolean offByRule = "rule-off".equals(summary.ended());
    boolean neverOn = "look".equals(summary.ended());
    return switch (summary.outcome()) {
      case "tripped" -> tripped();
      case "alarm" -> offByRule ? on("rule-off") : neverOn ? speech.say("look") : on("alarm");
      case "no-draw", "interrupted" -> on(summary.outcome());
      default -> on("normal");
    };
  }

  private String tripped() {
    String cause = speech.say("cause." + summary.tripCause());
    return summary.tripAtMs() == null
        ? speech.say("tripped.unknown", cause)
        : speech.say(
            "tripped", speech.figures().value(Math.max(0, summary.tripAtMs()), "ms"), cause);
  }

  private String on(String key) {
    String what = speech.say(key);
    return summary.onMs() == null
        ? what
        : speech.say("on", what, speech.number("%.2f", summary.onMs() / 1000));
  }

  private void figures(FigureList figures) {
    FigureWords words = speech.figures();
    for (FigureList.Figure figure : figures.figures()) {
      String plusMinus = words.plusMinus(figure);
      if (plusMinus.isEmpty()) {
        add("figure.line", words.name(figure), words.text(figure));
      } else {
        add("figure.sure", words.name(figure), words.text(figure), plusMinus);
      }
    }
  }

  public static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
