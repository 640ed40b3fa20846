package firstamp.report;

import firstamp.account.ComparisonWords;
import firstamp.account.FigureWords;
import firstamp.account.NotWatchedWords;
import firstamp.account.VerdictSentence;
import firstamp.account.VerdictWords;
import firstamp.alarm.AlarmWords;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.text.Worded;
import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;

/** The words of the page in one language. */
final class ReportWords {
  private final Locale locale;
  private final ResourceBundle words;
  private final FigureWords figures;
  private final VerdictWords verdicts;
  private final AlarmWords alarms;

  ReportWords(Locale locale) {
    this.locale = locale;
    this.words =
        ResourceBundle.getBundle(
            "firstamp.report.report",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    this.figures = new FigureWords(locale);
    this.verdicts = new VerdictWords(locale);
    this.alarms = new AlarmWords(locale);
  }

  /** Words of a key, with these texts in them. */
  String word(String key, Object... texts) {
    String pattern = words.getString(key);
    return texts.length == 0 ? pattern : new MessageFormat(pattern, locale).format(texts);
  }

  FigureWords figures() {
    return figures;
  }

  ComparisonWords comparison() {
    return new ComparisonWords(locale);
  }

  /** Milliseconds as a sentence writes them. */
  String millis(double ms) {
    return figures.value(ms, "ms");
  }

  /** A number by a format. */
  String number(String format, Object... values) {
    return String.format(locale, format, values);
  }

  String verdict(VerdictSentence sentence, List<NotWatched> gaps, JobSheet sheet) {
    boolean list = english() || !sentence.key().equals("not.watched") || gaps == null;
    return verdicts.of(
        list
            ? sentence
            : new VerdictSentence(
                sentence.importance(),
                sentence.key(),
                0,
                List.of(new NotWatchedWords(locale).say(gaps, sheet, false)),
                null));
  }

  String in(Worded said) {
    return said.in(locale);
  }

  String alarm(Alarm alarm) {
    return alarms.of(alarm);
  }

  /** What was not watched, a line each. */
  List<String> notWatched(List<NotWatched> gaps, JobSheet sheet) {
    return english()
        ? gaps.stream().map(gap -> gap.what() + ": " + gap.why()).toList()
        : List.of(new NotWatchedWords(locale).say(gaps, sheet, false));
  }

  private boolean english() {
    return !"de".equals(locale.getLanguage());
  }

  String language() {
    return english() ? "en" : "de";
  }
}
