package firstamp.cli;

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
final class SummaryText {
  private SummaryText() {}

  static List<String> lines(Summary summary) {
    List<String> lines = new ArrayList<>();
    lines.add(headline(summary));
    for (Alarm alarm : summary.alarms()) {
      lines.add((alarm.foldedUnder() != 0 ? "    then: " : "  ! ") + alarm.text());
    }
    look(summary, lines);
    supply(summary, lines);
    rails(summary, lines);
    levels(summary, lines);
    notWatched(summary, lines);
    if (summary.conversions() != null) {
      lines.add(
          text(
              "  conversions: %d received, %d lost in %d gaps",
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

  private static String headline(Summary summary) {
    String number = summary.powerUp() == null ? "Power-up" : "Power-up " + summary.powerUp();
    String on = summary.onMs() == null ? "" : text(", on for %.2f s", summary.onMs() / 1000);
    return switch (summary.outcome()) {
      case "tripped" ->
          number
              + ": switched itself off"
              + (summary.tripAtMs() == null
                  ? ""
                  : text(" %.1f ms after switching on", summary.tripAtMs()))
              + " ("
              + summary.tripCause()
              + ").";
      case "no-draw" -> number + ": the set drew nothing" + on + ".";
      case "alarm" -> number + ": alarms stand" + on + ".";
      case "interrupted" -> number + ": interrupted" + on + ".";
      default -> number + ": nothing tripped" + on + ".";
    };
  }

  private static void look(Summary summary, List<String> lines) {
    Summary.LookFigures look = summary.look();
    if (look == null) {
      return;
    }
    StringBuilder line = new StringBuilder("  first look: ").append(look.result());
    append(line, look.ohm(), ", %.3g ohm");
    append(line, look.uF(), ", %.0f uF");
    append(line, look.supplyV(), ", supply %.2f V");
    lines.add(line.toString());
  }

  private static void supply(Summary summary, List<String> lines) {
    Summary.SupplyFigures supply = summary.supply();
    if (supply == null) {
      return;
    }
    StringBuilder line = new StringBuilder("  supply:");
    append(line, supply.steadyA(), " %.4f A");
    append(line, supply.steadyAPlusMinus(), " (+-%.4f)");
    append(line, supply.steadyV(), " at %.2f V,");
    append(line, supply.inrushPeakA(), " surge %.2f A,");
    append(line, supply.inrushI2tA2s(), " surge heat %.3f A2s,");
    append(line, supply.chargeC(), " charge in the first second %.3f C");
    lines.add(line.toString());
  }

  private static void rails(Summary summary, List<String> lines) {
    if (summary.rails() == null) {
      return;
    }
    for (Summary.RailFigures rail : summary.rails()) {
      StringBuilder line = new StringBuilder("  rail ").append(rail.rail());
      if (rail.name() != null) {
        line.append(' ').append(rail.name());
      }
      line.append(':');
      append(line, rail.finalV(), " %.2f V");
      append(line, rail.settledMs(), ", settled after %.0f ms");
      append(line, rail.tauMs(), ", time constant %.0f ms");
      append(line, rail.rippleVrms(), ", ripple %.4f V rms");
      append(line, rail.rippleHz(), " at %.0f Hz");
      lines.add(line.toString());
    }
  }

  private static void levels(Summary summary, List<String> lines) {
    Summary.LevelFigures levels = summary.levels();
    if (levels == null) {
      return;
    }
    StringBuilder line = new StringBuilder("  levels:");
    append(line, levels.meterDbv(), " meter %.1f dBV,");
    append(line, levels.headDbv(), " head %.1f dBV,");
    append(line, levels.headUa(), " %.1f uA in the head,");
    append(line, levels.headBelowMeterDb(), " head %.1f dB below the meter");
    append(line, levels.expectedDb(), " (expected %.1f)");
    append(line, levels.humDbv(), ", hum %.1f dBV");
    lines.add(line.toString());
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

  private static void append(StringBuilder line, Double value, String format) {
    if (value != null) {
      line.append(text(format, value));
    }
  }

  static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
