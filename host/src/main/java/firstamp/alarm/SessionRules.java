package firstamp.alarm;

import firstamp.model.ProbeEvent;
import firstamp.model.RuleId;
import java.util.Locale;

/** Cable and bench log. */
final class SessionRules {
  private final RunState run;
  private final AlarmBook book;
  private final AlarmTexts texts;
  private final AlarmCondition silent;
  private final AlarmCondition notLogging;
  private long notLoggingMicros;
  private final long silentMicros;
  private long lastData = RunState.NEVER;

  SessionRules(RunState run, AlarmConditions watches, AlarmBook book, AlarmTexts texts) {
    this.run = run;
    this.book = book;
    this.texts = texts;
    this.silent = watches.of(RuleId.PROBE_SILENT, 0);
    this.notLogging = watches.of(RuleId.NOT_LOGGING, 0);
    this.silentMicros = silent == null ? 0 : Math.round(silent.number("afterMs") * 1000);
  }

  /** Conversions came; a hole before them was silence too. */
  void data(long fromMicros, long toMicros) {
    if (silent == null || toMicros <= lastData) {
      return;
    }
    if (lastData != RunState.NEVER && fromMicros - lastData >= silentMicros) {
      raiseSilent(lastData + silentMicros, lastData);
    }
    lastData = toMicros;
    if (silent.stands()) {
      book.clear(silent, fromMicros);
    }
  }

  void link(ProbeEvent.LinkChanged event) {
    if (silent == null || event.state() == ProbeEvent.LinkState.RESTORED) {
      return;
    }
    long since = lastData == RunState.NEVER ? event.micros() : Math.min(lastData, event.micros());
    raiseSilent(event.micros(), since);
  }

  private void raiseSilent(long atMicros, long sinceMicros) {
    if (!silent.stands()) {
      double limitMs = silentMicros / 1000.0;
      double silentMs = (atMicros - sinceMicros) / 1000.0;
      // The line may be gone before the limit is up; then the limit is not why.
      boolean early = silentMs < limitMs;
      book.raise(
          silent,
          atMicros,
          sinceMicros,
          silentMs,
          false,
          early ? null : (Double) limitMs,
          "ms",
          texts.text(
              early ? "cable-gone" : "probe-silent",
              run.everClosed(),
              Math.max(0, Math.rint(silentMs))));
    }
  }

  void log(ProbeEvent.LogChanged event) {
    if (notLogging == null) {
      return;
    }
    if (!event.logging() && !notLogging.stands()) {
      book.raise(
          notLogging,
          event.micros(),
          event.micros(),
          null,
          false,
          null,
          null,
          texts.text("not-logging", false, said(event)));
      notLoggingMicros = event.micros();
    } else if (event.logging() && notLogging.stands()) {
      book.clear(
          notLogging,
          event.micros(),
          texts.text(
              "not-logging-over",
              false,
              Math.max(0.1, Math.rint((event.micros() - notLoggingMicros) / 1e5) / 10),
              said(event)));
    }
  }

  private static Object said(ProbeEvent.LogChanged event) {
    return event.words() == null ? sentence(event.text()) : event.words();
  }

  /** What older versions kept began small and had no full stop. */
  private static String sentence(String text) {
    if (text == null || text.isBlank()) {
      return "";
    }
    String begun = text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    return begun.endsWith(".") ? begun : begun + ".";
  }
}
