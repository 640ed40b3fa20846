package firstamp.cli.output;

import firstamp.account.FigureList;
import firstamp.analysis.figures.FigureText;
import firstamp.model.Alarm;
import firstamp.model.NotWatched;
import firstamp.model.Summary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A summary in sentences. Never says that all is well: only what was seen, and what was not
 * watched.
 */
public final class SummaryText {
  private SummaryText() {}

  /** With these figures. */
  public static List<String> lines(Summary summary, FigureList figures) {
    List<String> lines = new ArrayList<>();
    lines.add(headline(summary));
    alarms(summary.alarms(), lines);
    if (summary.look() != null) {
      lines.add("  first look: " + summary.look().result());
    }
    figures(figures, lines);
    notWatched(summary, lines);
    if (summary.conversions() != null) {
      lines.add(
          text(
              "  from the probe box: %d values, %d lost in %d gaps",
              summary.conversions().received(),
              summary.conversions().lost(),
              summary.conversions().gaps()));
    }
    if (summary.log() != null && summary.log().file() != null) {
      String bytes =
          summary.log().bytes() == null ? "" : text(", %.1f kB", summary.log().bytes() / 1000.0);
      lines.add("  kept in " + summary.log().file() + bytes);
    }
    return lines;
  }

  /** Each with what belongs to it, in the order of their causes. */
  private static void alarms(List<Alarm> alarms, List<String> lines) {
    for (Alarm top : alarms) {
      if (top.foldedUnder() == 0) {
        lines.add("  ! " + top.text());
        alarms.stream()
            .filter(alarm -> alarm.foldedUnder() == top.number())
            .forEach(alarm -> lines.add("    also: " + alarm.text()));
      }
    }
  }

  private static String headline(Summary summary) {
    String number = summary.powerUp() == null ? "Power-up" : "Power-up " + summary.powerUp();
    String on = summary.onMs() == null ? "" : text(", on for %.2f s", summary.onMs() / 1000);
    return switch (summary.outcome()) {
      case "tripped" ->
          number
              + ": switched itself off"
              + (summary.tripAtMs() == null
                  ? ""
                  : " "
                      + FigureText.millis(Math.max(0, summary.tripAtMs()))
                      + " after switching on")
              + " ("
              + summary.tripCause()
              + ").";
      case "no-draw" -> number + ": the set drew nothing" + on + ".";
      case "alarm" ->
          number
              + switch (String.valueOf(summary.ended())) {
                case "rule-off" -> ": Firstamp switched it off" + on;
                case "look" -> ": never switched on";
                default -> ": finished, with alarms" + on;
              }
              + ".";
      case "interrupted" -> number + ": stopped early" + on + ".";
      default -> number + ": no alarm" + on + ".";
    };
  }

  private static void figures(FigureList figures, List<String> lines) {
    for (FigureList.Figure figure : figures.figures()) {
      String sure = figure.plusMinus() == null ? "" : " +- " + figure.plusMinusText();
      lines.add("  " + figure.name() + ": " + figure.text() + sure);
    }
  }

  private static void notWatched(Summary summary, List<String> lines) {
    if (summary.notWatched() == null || summary.notWatched().isEmpty()) {
      return;
    }
    List<String> parts = new ArrayList<>();
    for (NotWatched gap : summary.notWatched()) {
      parts.add(gap.what() + " (" + gap.why() + ")");
    }
    lines.add("  not watched: " + String.join("; ", parts));
  }

  public static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
