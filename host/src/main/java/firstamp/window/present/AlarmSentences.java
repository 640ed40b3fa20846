package firstamp.window.present;

import firstamp.alarm.AlarmWords;
import firstamp.bench.Snapshot;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Priority;
import firstamp.window.present.BenchView.Sentence;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/** Says alarms: one so that it is read from two metres, the others a line each. */
public final class AlarmSentences {
  private final Words words;
  private final Numbers numbers;

  public AlarmSentences(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  /**
   * What an alarm says.
   *
   * @param action what to do first, in whole sentences
   */
  Sentence sentence(Snapshot now, Alarm alarm, String action) {
    Double expected = now.sheet().levels() == null ? null : now.sheet().levels().expectedDb();
    if (!alarm.rule().equals("head-below-meter") || alarm.value() == null || expected == null) {
      return new Sentence(toneOf(alarm.priority()), farHeadline(alarm), action);
    }
    String weak = words.get("rule.head-below-meter");
    if (AlarmWords.headSilent(alarm)) {
      return new Sentence(toneOf(alarm.priority()), words.get("head.none", weak), action);
    }
    String below = numbers.decibels(alarm.value(), "dB").toString();
    return new Sentence(
        toneOf(alarm.priority()),
        words.get("head.below", below),
        MainsWords.join(headCurrent(now, expected), action));
  }

  /** Heads are spoken of in microamperes: what flows, and what this meter's level foretells. */
  private String headCurrent(Snapshot now, double expectedDb) {
    if (now.figures().levels().headUa() == null
        || now.figures().levels().headBelowMeterDb() == null) {
      return "";
    }
    double expectedUa =
        now.figures().levels().headUa()
            * Math.pow(10, (now.figures().levels().headBelowMeterDb() - expectedDb) / 20);
    return words.get(
        "head.current",
        numbers.microamps(now.figures().levels().headUa()),
        numbers.microamps(expectedUa));
  }

  /** Cause and figure, to be read from two metres; the alarm's own text names the limit. */
  public String farHeadline(Alarm alarm) {
    if (alarm.rule().equals("short") && alarm.limit() == null) {
      return words.get("rule.limiting");
    }
    String plain = words.getOr("rule." + alarm.rule(), alarm.rule());
    String cause = onRail(alarm, words.getOr("far." + alarm.rule(), plain));
    String value = valueWords(alarm);
    return value == null ? cause : words.get("alarm.value", cause, value);
  }

  private String onRail(Alarm alarm, String cause) {
    return alarm.railName() == null || alarm.railName().isBlank()
        ? cause
        : words.get("rule.onRail", alarm.railName(), cause);
  }

  String valueWords(Alarm alarm) {
    if (alarm.value() == null) {
      return null;
    }
    String value = numbers.inUnit(alarm.value(), alarm.unit()).toString();
    return alarm.atMost() ? words.get("value.atMost", value) : value;
  }

  /** Cause, figure and limit of an alarm in one line. */
  String headline(Alarm alarm) {
    boolean limiting = alarm.rule().equals("short") && alarm.limit() == null;
    String rule = limiting ? "limiting" : alarm.rule();
    String cause = onRail(alarm, words.getOr("rule." + rule, alarm.rule()));
    String value = limiting ? null : valueWords(alarm);
    if (value == null) {
      return cause;
    }
    return alarm.limit() == null
        ? words.get("alarm.value", cause, value)
        : words.get(
            "alarm.valueLimit",
            cause,
            value,
            numbers.inUnit(alarm.limit(), alarm.unit()).toString());
  }

  /** Further alarms behind the first one, a line each. */
  List<String> folded(Snapshot now) {
    List<Alarm> standing =
        now.findings().alarms().stream().filter(AlarmSentences::matters).toList();
    List<String> lines = new ArrayList<>();
    Alarm first = standing.isEmpty() ? null : first(standing);
    for (Alarm alarm : now.findings().alarms()) {
      if (alarm != first) {
        lines.add(
            words.get(
                "alarm.line",
                numbers.moment(alarm.atMs()),
                headline(alarm),
                words.get("alarm.state." + alarm.state().id())));
      }
    }
    return lines;
  }

  /** Whether something waits to be seen. */
  static boolean unseen(Snapshot now) {
    return now.findings().alarms().stream()
        .anyMatch(
            alarm ->
                alarm.state() == AlarmState.UNACKNOWLEDGED
                    || alarm.state() == AlarmState.CLEARED_UNACKNOWLEDGED);
  }

  /** The first one of those that stand, or of those nobody has seen; never one folded under it. */
  static Alarm first(List<Alarm> standing) {
    return standing.stream()
        .filter(alarm -> alarm.foldedUnder() == 0)
        .findFirst()
        .orElse(standing.get(0));
  }

  static boolean matters(Alarm alarm) {
    return alarm.state() != AlarmState.CLEARED;
  }

  public static Tone toneOf(Priority priority) {
    return switch (priority) {
      case HIGH -> Tone.ALARM;
      case MEDIUM -> Tone.CAUTION;
      case LOW -> Tone.PLAIN;
    };
  }
}
