package firstamp.window.words;

import firstamp.account.FigureWords;
import firstamp.account.VerdictSentence;
import firstamp.account.VerdictWords;
import firstamp.alarm.AlarmWords;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.sheet.SheetException;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Says in the person's language what other packages have to say, with the signs of the window.
 * Alarms, verdict and figures come as keys with their values. What still comes as an English
 * sentence is found again by its pattern; one that fits none stays as it is. Immutable.
 */
public final class Spoken {
  private static final String FIGURE = "\\{(\\d)\\}";

  private final Locale locale;
  private final VerdictWords verdicts;
  private final AlarmWords alarms;
  private final List<Pair> logs;
  private final FigureWords figures;
  private final List<Pair> questions;
  private final List<Pair> refusals;
  private final List<Pair> ports;
  private final List<Pair> problems;
  private final List<Pair> modes;

  /** A pattern and the same in the other language. */
  private record Pair(Pattern pattern, List<Integer> order, String other) {}

  public Spoken(Locale locale) {
    this.locale = locale;
    verdicts = new VerdictWords(locale);
    alarms = new AlarmWords(locale);
    logs = pairs("firstamp.log.trouble");
    figures = new FigureWords(locale);
    questions = pairs("firstamp.sheet.questions");
    refusals = pairs("firstamp.run.refusals");
    ports = pairs("firstamp.link.ports");
    problems = pairs("firstamp.sheet.problems");
    modes = pairs("firstamp.run.modes");
  }

  private List<Pair> pairs(String name) {
    ResourceBundle.Control control =
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);
    ResourceBundle from = ResourceBundle.getBundle(name, Locale.ROOT, control);
    ResourceBundle to = ResourceBundle.getBundle(name, locale, control);
    List<Pair> pairs = new ArrayList<>();
    for (String key : from.keySet()) {
      String english = from.getString(key);
      if (!english.equals(to.getString(key)) && !english.matches(FIGURE)) {
        pairs.add(pair(english, to.getString(key)));
      }
    }
    // What fits most letters fits best.
    pairs.sort(Comparator.comparingInt((Pair each) -> -each.pattern().pattern().length()));
    return pairs;
  }

  private static Pair pair(String english, String other) {
    String plain = english.replace("''", "'");
    Matcher figures = Pattern.compile(FIGURE).matcher(plain);
    List<Integer> order = new ArrayList<>();
    StringBuilder regex = new StringBuilder();
    int at = 0;
    while (figures.find()) {
      regex.append(Pattern.quote(plain.substring(at, figures.start()))).append("(.+?)");
      order.add(Integer.parseInt(figures.group(1)));
      at = figures.end();
    }
    regex.append(Pattern.quote(plain.substring(at)));
    return new Pair(Pattern.compile(regex.toString()), order, other);
  }

  public String verdict(VerdictSentence sentence) {
    return sentence.key().equals("alarm")
        ? alarm(sentence.alarm())
        : Signs.in(verdicts.of(sentence));
  }

  /** Name of a figure, with its rail. */
  public String figure(String key, int rail, JobSheet sheet) {
    return Signs.in(figures.name(key, rail, sheet));
  }

  /** A figure with its unit. */
  public String value(double value, String unit) {
    return Signs.in(figures.value(value, unit));
  }

  /** A reason or a cost around the questions of a new sheet. */
  public String question(String sentence) {
    return Signs.in(whole(sentence, questions));
  }

  /** What an alarm says; why the log is not written comes from the log's own bundle. */
  public String alarm(Alarm alarm) {
    String text = alarms.of(alarm);
    return alarm.rule().equals("not-logging") ? trouble(text) : Signs.in(text);
  }

  /** Why the log is not written. */
  public String trouble(String text) {
    return parts(text, logs);
  }

  /** Why the probe box does not switch on; a failed self-test names several faults. */
  public String refusal(String text) {
    String port = whole(text, ports);
    return port.equals(text) ? parts(whole(text, refusals), refusals) : Signs.in(port);
  }

  /** What hands in or soak says. */
  public String mode(String sentence) {
    return Signs.in(whole(sentence, modes));
  }

  /** Why something could not be done: by its kind a sheet, else a port or the probe box. */
  public String failure(Exception failure) {
    String text = String.valueOf(failure.getMessage());
    return failure instanceof SheetException ? problem(text) : refusal(text);
  }

  /** What is wrong with a job sheet, in parts. */
  public String problem(String text) {
    return parts(text, problems);
  }

  private String parts(String text, List<Pair> pairs) {
    String said = text;
    for (Pair pair : pairs) {
      Matcher matcher = pair.pattern().matcher(said);
      if (matcher.find()) {
        said =
            said.substring(0, matcher.start())
                + fill(pair, matcher, pairs)
                + said.substring(matcher.end());
      }
    }
    return Signs.in(said);
  }

  private String whole(String text, List<Pair> pairs) {
    for (Pair pair : pairs) {
      Matcher matcher = pair.pattern().matcher(text);
      if (matcher.matches()) {
        return fill(pair, matcher, pairs);
      }
    }
    return text;
  }

  /** A figure may itself be words of the same bundle, as in "at most 1.4 ohm". */
  private String fill(Pair pair, Matcher matcher, List<Pair> pairs) {
    int most = pair.order().stream().mapToInt(each -> each + 1).max().orElse(0);
    Object[] values = new Object[most];
    for (int k = 0; k < pair.order().size(); k++) {
      values[pair.order().get(k)] = whole(matcher.group(k + 1), pairs);
    }
    return pair.order().isEmpty() && !pair.other().contains("''")
        ? pair.other()
        : new MessageFormat(pair.other(), locale).format(values);
  }
}
