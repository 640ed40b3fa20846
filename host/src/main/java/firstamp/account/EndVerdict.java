package firstamp.account;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.FigureText;
import firstamp.analysis.figures.TripPeak;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.SelfTestWords;
import firstamp.model.Summary;
import firstamp.model.text.Wording.Phrase;
import java.util.List;
import java.util.Set;

/** Sentences about how a power-up ended: who opened the switch and why, or that nobody had to. */
final class EndVerdict {
  /** Sentences up to this importance report something to look at. */
  private static final int WRONG = 6;

  private static final int FIRST = 0;
  private static final int LATE = 7;
  private static final Set<String> STOPPED = Set.of("link-lost", "probe-reset", "signal");

  /** Rules that can be about the supply as well as about a rail. */
  private static final Set<String> SUPPLY_TOO =
      Set.of("rail-window", "over-voltage", "wrong-polarity");

  private final JobSheet sheet;
  private final Summary summary;
  private final Evidence evidence;
  private final VerdictWriter writer;

  EndVerdict(JobSheet sheet, Summary summary, Evidence evidence, VerdictWriter writer) {
    this.sheet = sheet;
    this.summary = summary;
    this.evidence = evidence;
    this.writer = writer;
  }

  /** Call this last: what can be said of a quiet run depends on whether anything was found. */
  void judge() {
    if (evidence.onMs() == null || evidence.onMs() == 0) {
      neverOn();
    } else if (summary.tripCause() != null) {
      tripped();
    } else if ("rule-off".equals(summary.ended())) {
      switchedOffByRule();
    } else if (STOPPED.contains(String.valueOf(summary.ended()))) {
      writer.say(FIRST, "stopped." + summary.ended(), 0, on());
    } else if (!alarms().isEmpty()) {
      writer.say(LATE, "ran.alarms", 0, on());
    } else if (writer.said(WRONG)) {
      writer.say(LATE, "ran.quiet", 0, on());
    } else {
      writer.say(FIRST, "ran.fine", 0, on());
    }
  }

  /** The short of this power-up: ohms under the limit, not a supply in current limit. */
  static Alarm shortOf(List<Alarm> alarms) {
    return alarms == null
        ? null
        : alarms.stream()
            .filter(alarm -> alarm.rule().equals("short"))
            .filter(alarm -> alarm.value() != null && alarm.limit() != null)
            .findFirst()
            .orElse(null);
  }

  private void neverOn() {
    Summary.LookFigures look = evidence.look();
    if (!"look".equals(summary.ended()) || look == null) {
      writer.say(alarms().isEmpty() ? FIRST : LATE, "never.on", 0);
      return;
    }
    switch (look.result()) {
      case "short" -> {
        Alarm found = shortOf(alarms());
        if (found != null) {
          writer.say(FIRST, "refused.short", 0, ohms(found));
        } else {
          writer.say(FIRST, "never.on", 0);
        }
      }
      case "reversed" -> writer.say(FIRST, "refused.reversed", 0);
      case "too-high" -> writer.say(FIRST, "refused.too-high", 0);
      case "no-supply" -> writer.say(FIRST, "refused.no-supply", 0);
      case "too-much-charge" -> writer.say(FIRST, "refused.too-much-charge", 0);
      case "no-zero", "shunt", "limiter" -> writer.say(FIRST, "refused.box", 0);
      default -> writer.say(FIRST, "refused.other", 0);
    }
  }

  private void tripped() {
    String after =
        summary.tripAtMs() == null ? after() : FigureText.millis(Math.max(0, summary.tripAtMs()));
    Alarm found = shortOf(alarms());
    TripPeak peak = evidence.tripPeak();
    Object highest = peak == null ? "" : highest(peak);
    String held =
        peak == null || peak.limitedMs() == null ? "" : FigureText.millis(peak.limitedMs());
    if (found != null && peak != null) {
      String key = held.isEmpty() ? "tripped.short" : "tripped.short-held";
      writer.say(FIRST, key, 0, ohms(found), after, highest, held);
      return;
    }
    switch (summary.tripCause()) {
      case "inrush", "running", "i2t", "hard-short" -> {
        if (peak == null) {
          writer.say(FIRST, "tripped", 0, after);
        } else {
          String key = "tripped." + summary.tripCause() + (held.isEmpty() ? "" : "-held");
          writer.say(FIRST, key, 0, after, highest, held);
        }
      }
      case "self-test" -> {
        int bits = evidence.trip() == null ? 0 : evidence.trip().selfTestBits();
        if (bits == 0) {
          writer.say(FIRST, "tripped.self-test", 0, after);
        } else {
          writer.say(FIRST, "tripped.self-test-fault", 0, after, SelfTestWords.of(bits));
        }
      }
      case "over-voltage", "host-silence", "chassis-clip" ->
          writer.say(FIRST, "tripped." + summary.tripCause(), 0, after);
      default -> writer.say(FIRST, "tripped", 0, after);
    }
  }

  private void switchedOffByRule() {
    Alarm cause =
        alarms().stream()
            .filter(alarm -> alarm.foldedUnder() == 0 && switchesOff(alarm))
            .findFirst()
            .orElse(alarms().stream().filter(this::switchesOff).findFirst().orElse(null));
    if (cause == null) {
      writer.say(FIRST, "off", 0, after());
      return;
    }
    String key = "off." + cause.rule();
    Object name = cause.railName() == null ? "" : cause.railName();
    if (cause.rule().equals("short")) {
      key = cause.limit() == null ? "off.limiting" : key;
      name = ohms(cause);
    } else if (cause.rail() == 0 && SUPPLY_TOO.contains(cause.rule())) {
      key += "-supply";
    }
    String value =
        cause.value() == null || cause.unit() == null
            ? ""
            : FigureList.value(cause.value(), cause.unit());
    writer.say(FIRST, key, cause.rail(), after(), name, value);
  }

  private boolean switchesOff(Alarm alarm) {
    RuleId rule = RuleId.of(alarm.rule());
    return rule != null && "off".equals(rule.settings(sheet).action());
  }

  private static Object ohms(Alarm found) {
    String ohms = FigureText.ohms(found.value());
    return found.atMost() ? new Phrase("at.most", ohms) : ohms;
  }

  private static Object highest(TripPeak peak) {
    String amps = FigureText.amps(peak.amps());
    return peak.atLeast() ? new Phrase("at.least", amps) : amps;
  }

  private String on() {
    return FigureText.clock(evidence.onMs());
  }

  /** As exact as the first line and the log give it. */
  private String after() {
    return FigureText.millis(evidence.onMs());
  }

  private List<Alarm> alarms() {
    return summary.alarms() == null ? List.of() : summary.alarms();
  }
}
