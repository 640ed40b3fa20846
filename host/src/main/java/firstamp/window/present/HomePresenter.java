package firstamp.window.present;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.app.SetEntry;
import firstamp.log.PowerUpEntry;
import firstamp.model.JobSheet;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Outcomes;
import firstamp.window.words.Words;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.ArrayList;
import java.util.List;

/** Words of the first screen. Without state: the same bench, the same words. */
public final class HomePresenter {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private final Words words;
  private final Numbers numbers;
  private final DateTimeFormatter dates;
  private final JobPresenter jobs;

  public HomePresenter(Words words, Numbers numbers, ZoneId zone) {
    this.words = words;
    this.numbers = numbers;
    this.jobs = new JobPresenter(words);
    this.dates =
        DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT)
            .withLocale(words.locale())
            .withZone(zone);
  }

  /**
   * One line of a list.
   *
   * @param main in large
   * @param more in small below it
   * @param tone state
   */
  public record Row(String main, String more, Tone tone) {
    public String spoken() {
      return more.isEmpty() ? main : main + ", " + more;
    }
  }

  public Row set(SetEntry set) {
    String main = set.name().isBlank() ? words.get("home.noName") : set.name();
    return switch (set.kind()) {
      case BEGUN -> new Row(main, words.get("home.begun"), Tone.ASK);
      case EMULATED -> new Row(main, words.get("home.emulated.more"), Tone.PLAIN);
      case REAL -> real(main, set);
    };
  }

  private Row real(String main, SetEntry set) {
    PowerUpEntry last = set.powerUps().isEmpty() ? null : set.powerUps().get(0);
    String outcome = last == null ? words.get("home.noPowerUp") : outcome(last);
    String job = jobs.brief(set.job(), outcome);
    Tone tone = last == null ? Tone.PLAIN : toneOf(last);
    if (job != null) {
      return new Row(main, job, tone);
    }
    return last == null
        ? new Row(main, words.get("home.never"), tone)
        : new Row(main, words.get("home.last", date(last.startedEpochMs()), outcome), tone);
  }

  public Row powerUp(PowerUpEntry entry) {
    List<String> parts = new ArrayList<>();
    parts.add(date(entry.startedEpochMs()));
    if (entry.label() != null && !entry.label().isBlank()) {
      parts.add("\u201c" + entry.label() + "\u201d");
    }
    if (entry.baseline()) {
      parts.add(words.get("home.knownGood"));
    }
    if (entry.asFound()) {
      parts.add(words.get("home.asFound"));
    }
    return new Row(
        words.get("home.powerUp", String.valueOf(entry.number()), outcome(entry)),
        String.join(", ", parts),
        toneOf(entry));
  }

  public String date(long epochMs) {
    return dates.format(Instant.ofEpochMilli(epochMs));
  }

  /** How it ended; never the word "normal". */
  String outcome(PowerUpEntry entry) {
    if (!entry.finished() || entry.outcome() == null) {
      return words.get("home.cutShort");
    }
    if (onMs(entry) == 0) {
      return words.get("home.notOn");
    }
    return Outcomes.of(
        words,
        numbers,
        entry.outcome(),
        summary(entry).path("ended").asText(null),
        onMs(entry),
        "verdict.quiet");
  }

  private Tone toneOf(PowerUpEntry entry) {
    if (!entry.finished() || entry.outcome() == null) {
      return Tone.CAUTION;
    }
    return switch (entry.outcome()) {
      case "tripped" -> Tone.ALARM;
      case "normal", "interrupted" -> Tone.PLAIN;
      default -> Tone.CAUTION;
    };
  }

  private static double onMs(PowerUpEntry entry) {
    return summary(entry).path("onMs").asDouble(0);
  }

  static JsonNode summary(PowerUpEntry entry) {
    try {
      return entry.summaryJson() == null
          ? MAPPER.createObjectNode()
          : MAPPER.readTree(entry.summaryJson());
    } catch (JsonProcessingException damaged) {
      // A summary that cannot be read says nothing.
      return MAPPER.createObjectNode();
    }
  }

  /** Where its job stands, a line each. */
  public List<String> job(SetEntry set) {
    return jobs.lines(set.job());
  }

  /** What is known of a set, a line each. */
  public List<String> about(JobSheet sheet) {
    List<String> lines = new ArrayList<>();
    JobSheet.Supply supply = sheet.supply();
    lines.add(
        words.get(
            "about.supply",
            numbers.volts(supply.nominalV()),
            words.get("choice." + supply.kind()),
            words.get("choice." + supply.probeSits())));
    JobSheet.Limits limits = sheet.limits();
    lines.add(
        limits == null || limits.runningA() == null
            ? words.get("about.noLimit")
            : words.get(
                "about.limit",
                numbers.amps(limits.runningA()),
                limits.inrushA() == null
                    ? words.get("about.same")
                    : numbers.amps(limits.inrushA()).toString()));
    List<String> rails = new ArrayList<>();
    for (JobSheet.Rail rail : sheet.rails()) {
      rails.add(
          rail.nominalV() == null
              ? rail.name()
              : rail.name() + " " + numbers.volts(rail.nominalV()));
    }
    lines.add(
        rails.isEmpty()
            ? words.get("about.noRails")
            : words.get("about.rails", String.join(", ", rails)));
    return lines;
  }
}
