package firstamp.cli.output;

import firstamp.account.FigureWords;
import firstamp.account.NotWatchedWords;
import firstamp.account.VerdictSentence;
import firstamp.account.VerdictWords;
import firstamp.alarm.AlarmWords;
import firstamp.locate.odds.OddsWord;
import firstamp.locate.wire.WireWords;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.text.Phrases;
import firstamp.model.text.Worded;
import firstamp.study.ToldWords;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The language of what a command prints for people. Safe to share. */
public final class Speech {
  /** The language of the command line where no other is asked for. */
  public static final Speech ENGLISH = new Speech(Locale.ROOT);

  private final Locale locale;
  private final Phrases phrases;
  private final AlarmWords alarms;
  private final VerdictWords verdicts;
  private final FigureWords figures;

  /** In this language. */
  public Speech(Locale locale) {
    this.locale = locale;
    this.phrases = new Phrases("firstamp.cli.output.show", locale);
    this.alarms = new AlarmWords(locale);
    this.verdicts = new VerdictWords(locale);
    this.figures = new FigureWords(locale);
  }

  /** The language that the arguments ask for; English where they ask for none that there is. */
  public static Speech askedFor(String... arguments) {
    return "de".equals(language(arguments)) ? new Speech(Locale.GERMAN) : ENGLISH;
  }

  /** What stands behind --language, null = nothing. */
  public static String language(String... arguments) {
    String last = null;
    for (int k = 0; k < arguments.length; k++) {
      if (arguments[k].startsWith("--language=")) {
        last = arguments[k].substring("--language=".length());
      } else if (arguments[k].equals("--language") && k + 1 < arguments.length) {
        last = arguments[k + 1];
      }
    }
    return last;
  }

  /** The language. */
  public Locale locale() {
    return locale;
  }

  /** What another package, or the command line itself, has to say. */
  public String in(Worded words) {
    return words.in(locale);
  }

  /** A message on standard error, with the program's name in front. */
  public void note(Worded words) {
    System.err.println("firstamp: " + in(words));
  }

  /** A line on standard error. */
  public void err(Worded words) {
    System.err.println(in(words));
  }

  /** A line on standard output. */
  public void out(Worded words) {
    System.out.println(in(words));
  }

  /** A line of its own. */
  public String say(String key, Object... values) {
    return phrases.say(key, values);
  }

  /** A number by a format. */
  public String number(String format, Object... values) {
    return String.format(locale, format, values);
  }

  AlarmWords alarms() {
    return alarms;
  }

  /** Names and values of figures. */
  public FigureWords figures() {
    return figures;
  }

  /** Sentences about wires of unknown place. */
  public WireWords wires() {
    return new WireWords(locale);
  }

  /** How likely something is. */
  Worded odds(OddsWord word) {
    return Said.of("odds." + word.name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }

  /** What the person told. */
  public ToldWords told() {
    return new ToldWords(locale, ZoneId.systemDefault());
  }

  /** A sentence of the verdict. */
  String of(VerdictSentence sentence, List<NotWatched> gaps, JobSheet sheet) {
    boolean list = sentence.key().equals("not.watched") && gaps != null;
    return verdicts.of(
        list
            ? new VerdictSentence(
                sentence.importance(),
                sentence.key(),
                0,
                List.of(notWatched(gaps, sheet, ", ")),
                null)
            : sentence);
  }

  /** What was not watched: in English as the JSON line has it, else in words of the language. */
  String notWatched(List<NotWatched> gaps, JobSheet sheet, String between) {
    if (!locale.equals(Locale.ROOT)) {
      return new NotWatchedWords(locale).say(gaps, sheet, false);
    }
    List<String> parts = new ArrayList<>();
    for (NotWatched gap : gaps) {
      parts.add(gap.what() + " (" + gap.why() + ")");
    }
    return String.join(between, parts);
  }
}
