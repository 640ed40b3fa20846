package firstamp.alarm;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Priority;
import firstamp.model.RuleId;
import firstamp.model.text.Wording;
import java.util.ArrayList;
import java.util.List;

/**
 * All raisings of a power-up and their states (ISA-18.2 / IEC 62682): raised unacknowledged; seen;
 * cleared while unseen; cleared and seen.
 */
final class AlarmBook {
  /** What begins within this time after the first deviation is shown under it (common practice). */
  private static final double FOLD_MS = 2000;

  /** Part of the limit; less far beyond where an alarm was raised is not worth a sentence. */
  private static final double CLEARLY_SHARE = 0.04;

  private static final double CLEARLY_DB = 1;

  private final RunState run;
  private final RuleListener listener;
  private final List<Entry> entries = new ArrayList<>();

  AlarmBook(RunState run, RuleListener listener) {
    this.run = run;
    this.listener = listener;
  }

  /** One entry per raising, in its present state. */
  List<Alarm> alarms() {
    List<Alarm> all = new ArrayList<>(entries.size());
    for (Entry entry : entries) {
      all.add(entry.alarm);
    }
    return List.copyOf(all);
  }

  /**
   * Raises an alarm.
   *
   * @param value what was seen, null = not measurable
   */
  void raise(
      AlarmCondition watch,
      long atMicros,
      long sinceMicros,
      Double value,
      boolean atMost,
      Double limit,
      String unit,
      Wording words) {
    int number = entries.size() + 1;
    long zero = run.zeroMicros();
    double atMs = (atMicros - zero) / 1000.0;
    double sinceMs = (sinceMicros - zero) / 1000.0;
    Alarm alarm =
        new Alarm(
            number,
            watch.rule().id(),
            watch.rail(),
            watch.name(),
            atMs,
            sinceMs,
            atMs,
            priority(watch),
            AlarmState.UNACKNOWLEDGED,
            value,
            atMost,
            limit,
            unit,
            AlarmWords.ENGLISH.say(words),
            fold(watch, sinceMs, number),
            words);
    entries.add(new Entry(alarm, watch, zero, words));
    watch.raised(number, sinceMicros);
    listener.onAlarm(alarm);
    boolean may = run.on() || watch.rule() == RuleId.SWITCH_FAILED;
    if (may && "off".equals(watch.settings().action())) {
      listener.onAction(watch.rule().id());
    }
  }

  /**
   * An active alarm is still beyond its limit: its text says how far it went, once that is clearly
   * further than where it was raised.
   */
  void follow(AlarmCondition watch, double value) {
    Entry entry = watch.stands() ? entries.get(watch.standing() - 1) : null;
    if (entry == null || entry.alarm.value() == null || entry.alarm.limit() == null) {
      return;
    }
    boolean up = entry.alarm.value() > entry.alarm.limit();
    boolean further = up ? value > entry.furthest : value < entry.furthest;
    if (!further) {
      return;
    }
    entry.furthest = value;
    double first = entry.alarm.value();
    boolean decibels = entry.alarm.unit().startsWith("dB");
    double clearly = decibels ? CLEARLY_DB : CLEARLY_SHARE * Math.abs(entry.alarm.limit());
    if (Math.abs(value - first) >= clearly) {
      Wording words =
          entry.words.and(
              up ? "highest" : "lowest", Wording.Quantity.of(value, entry.alarm.unit()));
      entry.alarm = entry.alarm.saying(words, AlarmWords.ENGLISH.say(words));
    }
  }

  /**
   * Of two active alarms of one cause the second one tells it better: the first is shown under it.
   */
  void lead(AlarmCondition better, AlarmCondition first) {
    if (!better.stands() || !first.stands()) {
      return;
    }
    Entry top = entries.get(first.standing() - 1);
    Entry under = entries.get(better.standing() - 1);
    if (under.alarm.foldedUnder() != top.alarm.number()) {
      return;
    }
    for (Entry entry : entries) {
      if (entry.alarm.foldedUnder() == top.alarm.number()) {
        entry.alarm = entry.alarm.folded(entry == under ? 0 : under.alarm.number());
      }
    }
    top.alarm = top.alarm.folded(under.alarm.number());
  }

  /** The same, with other wording once the condition is over. */
  void clear(AlarmCondition watch, long micros, Wording words) {
    Entry entry = entries.get(watch.standing() - 1);
    entry.alarm = entry.alarm.saying(words, AlarmWords.ENGLISH.say(words));
    clear(watch, micros);
  }

  /** The condition of an active alarm is over. */
  void clear(AlarmCondition watch, long micros) {
    Entry entry = entries.get(watch.standing() - 1);
    watch.conditionGone();
    if (watch.stands()) {
      return;
    }
    AlarmState next =
        entry.alarm.state() == AlarmState.UNACKNOWLEDGED
            ? AlarmState.CLEARED_UNACKNOWLEDGED
            : AlarmState.CLEARED;
    change(entry, next, micros);
  }

  /** The person has seen them; an empty rule means all. */
  void acknowledge(String rule, int rail, long micros) {
    for (Entry entry : entries) {
      boolean meant =
          rule == null
              || rule.isEmpty()
              || rule.equals(entry.alarm.rule()) && (rail == 0 || rail == entry.alarm.rail());
      if (meant) {
        acknowledge(entry, micros);
      }
    }
  }

  private void acknowledge(Entry entry, long micros) {
    boolean held = entry.watch.standing() == entry.alarm.number() && entry.watch.gone();
    switch (entry.alarm.state()) {
      case UNACKNOWLEDGED -> {
        if (held) {
          entry.watch.cleared();
        }
        change(entry, held ? AlarmState.CLEARED : AlarmState.ACKNOWLEDGED, micros);
      }
      case CLEARED_UNACKNOWLEDGED -> change(entry, AlarmState.CLEARED, micros);
      case ACKNOWLEDGED -> {
        if (held) {
          entry.watch.cleared();
          change(entry, AlarmState.CLEARED, micros);
        }
      }
      case CLEARED -> {}
    }
  }

  private void change(Entry entry, AlarmState next, long micros) {
    entry.alarm = entry.alarm.inState(next, (micros - entry.zeroMicros) / 1000.0);
    listener.onAlarm(entry.alarm);
  }

  /** The first deviation in time stays on top; what follows from it is folded under it. */
  private int fold(AlarmCondition watch, double sinceMs, int number) {
    if (watch.rule().scope() == RuleId.Scope.SESSION) {
      return 0;
    }
    Entry top = null;
    for (int k = entries.size() - 1; k >= 0; k--) {
      Entry entry = entries.get(k);
      boolean may =
          entry.watch.standing() == entry.alarm.number()
              && entry.watch.rule().scope() != RuleId.Scope.SESSION
              && entry.alarm.foldedUnder() == 0
              && Math.abs(sinceMs - entry.alarm.sinceMs()) <= FOLD_MS;
      if (may && (top == null || entry.alarm.sinceMs() <= top.alarm.sinceMs())) {
        top = entry;
      }
    }
    if (top == null) {
      return 0;
    }
    if (top.alarm.sinceMs() <= sinceMs) {
      return top.alarm.number();
    }
    for (Entry entry : entries) {
      boolean under = entry == top || entry.alarm.foldedUnder() == top.alarm.number();
      if (under) {
        entry.alarm = entry.alarm.folded(number);
      }
    }
    return 0;
  }

  private static Priority priority(AlarmCondition watch) {
    for (Priority priority : Priority.values()) {
      if (priority.id().equals(watch.settings().priority())) {
        return priority;
      }
    }
    throw new IllegalArgumentException("priority " + watch.settings().priority());
  }

  private static final class Entry {
    private Alarm alarm;
    private final AlarmCondition watch;
    private final long zeroMicros;
    private final Wording words;
    private double furthest;

    Entry(Alarm alarm, AlarmCondition watch, long zeroMicros, Wording words) {
      this.alarm = alarm;
      this.watch = watch;
      this.zeroMicros = zeroMicros;
      this.words = words;
      this.furthest = alarm.value() == null ? 0 : alarm.value();
    }
  }
}
