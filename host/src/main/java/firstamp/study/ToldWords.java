package firstamp.study;

import firstamp.model.Conditions;
import firstamp.model.ProbeEvent;
import firstamp.model.text.Numbers;
import java.text.MessageFormat;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;

/** What the person has told about a power-up, in sentences. Immutable. */
public final class ToldWords {
  private final Locale locale;
  private final ZoneId zone;
  private final ResourceBundle words;

  /** In English, as log and command line speak. */
  public ToldWords() {
    this(Locale.ROOT, ZoneId.systemDefault());
  }

  /** In a language. */
  public ToldWords(Locale locale, ZoneId zone) {
    this.locale = locale;
    this.zone = zone;
    this.words =
        ResourceBundle.getBundle(
            "firstamp.study.told",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  private String say(String key, Object... values) {
    String sentence = words.getString("told." + key);
    return values.length == 0 ? sentence : new MessageFormat(sentence, locale).format(values);
  }

  /** A sentence for each thing that was told; of several reasons for an off the last one holds. */
  public List<String> lines(List<ProbeEvent.Told> told) {
    List<String> lines = new ArrayList<>();
    List<String> answered = new ArrayList<>();
    String off = null;
    for (ProbeEvent.Told each : told) {
      if (each instanceof ProbeEvent.ConditionsSaid said) {
        lines.add(say("conditions", conditions(said.conditions())));
      } else if (each instanceof ProbeEvent.Answered answer) {
        answered.add(answer(answer));
      } else if (each instanceof ProbeEvent.SwitchedOnAgain again) {
        lines.add(again(again));
      } else if (each instanceof ProbeEvent.OffExplained why) {
        off = say("off", say("off." + why.reason().id()));
      }
    }
    if (!answered.isEmpty()) {
      lines.add(say("answered", String.join(", ", answered)));
    }
    if (off != null) {
      lines.add(off);
    }
    return lines;
  }

  /** A single one, as it comes. */
  public String line(ProbeEvent.Told told) {
    return String.join(" ", lines(List.of(told)));
  }

  private String conditions(Conditions conditions) {
    List<String> parts = new ArrayList<>();
    if (conditions.load() != null) {
      parts.add(say("load." + conditions.load().id()));
    }
    if (conditions.volume() != null) {
      parts.add(say("volume." + conditions.volume().id()));
    }
    if (conditions.function() != null) {
      parts.add(say("function." + conditions.function().id()));
    }
    return String.join(", ", parts);
  }

  private String answer(ProbeEvent.Answered answer) {
    String time =
        DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT)
            .format(Instant.ofEpochMilli(answer.answeredEpochMs()).atZone(zone));
    String key = "told.question." + answer.question();
    String question = words.containsKey(key) ? words.getString(key) : answer.question();
    return say("answer", question, time);
  }

  private String again(ProbeEvent.SwitchedOnAgain again) {
    String text =
        say(
            "again",
            String.valueOf(again.afterTrip()),
            say("different." + again.difference().id()));
    if (again.ohm() != null) {
      String where =
          again.rail() == 0 ? say("again.supply") : say("again.rail", String.valueOf(again.rail()));
      text += " " + say("again.ohm", where, number(again.ohm()));
    }
    if (again.halfV() != null) {
      text += " " + say("again.half", number(again.halfV()));
    }
    return text;
  }

  private String number(double value) {
    String text = Numbers.text(value);
    return "de".equals(locale.getLanguage()) ? text.replace('.', ',') : text;
  }
}
