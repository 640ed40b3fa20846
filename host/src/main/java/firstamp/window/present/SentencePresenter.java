package firstamp.window.present;

import firstamp.account.NotWatchedWords;
import firstamp.account.Verdict;
import firstamp.alarm.AlarmWords;
import firstamp.alarm.OffWords;
import firstamp.bench.Snapshot;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.Priority;
import firstamp.model.ProbeEvent;
import firstamp.model.SelfTestWords;
import firstamp.model.TripCause;
import firstamp.model.text.Worded;
import firstamp.run.questions.Asking;
import firstamp.window.present.BenchView.Sentence;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Outcomes;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;

/** Says in one sentence what matters most now, and what to do first. */
public final class SentencePresenter {
  private final Words words;
  private final Numbers numbers;
  private final NotWatchedWords notWatched;
  private final Spoken spoken;
  private final RestorePresenter restores;

  public SentencePresenter(Words words, Numbers numbers) {
    this.words = words;
    this.notWatched = new NotWatchedWords(words.locale());
    this.numbers = numbers;
    this.spoken = new Spoken(words.locale());
    this.restores = new RestorePresenter(words);
  }

  Sentence sentence(Snapshot now) {
    List<Alarm> standing =
        now.findings().alarms().stream().filter(SentencePresenter::matters).toList();
    boolean tripped = now.findings().trip() != null && hasTripped(now);
    // Other trips have a cause of their own: that the computer hung meanwhile does not hide it.
    boolean silent = !tripped || now.findings().trip().cause() == TripCause.HOST_SILENCE;
    if (now.beside().sleptAtEpochMs() != null && isOff(now.phase()) && silent) {
      return slept(now, standing);
    }
    if (RestorePresenter.met(now) != null) {
      return restores.sentence(RestorePresenter.met(now), mains(now.sheet()));
    }
    if (tripped) {
      return tripped(now, standing);
    }
    if (!standing.isEmpty()) {
      Alarm first = first(standing);
      return now.phase() == Snapshot.Phase.RAILS_FALLING && before(first, now)
          ? falling(now, first)
          : alarm(now, first);
    }
    if (now.link().state() == Snapshot.LinkState.LOST
        || now.link().state() == Snapshot.LinkState.PROBE_RESTARTED) {
      return new Sentence(
          Tone.ALARM,
          words.get(
              "sentence." + (now.link().state() == Snapshot.LinkState.LOST ? "lost" : "restarted")),
          orEmpty(now.link().text()));
    }
    if (now.beside().neverAnswered()) {
      return new Sentence(
          Tone.CAUTION,
          words.get("sentence.neverAnswered"),
          now.notice() == null ? "" : spoken.say(now.notice()));
    }
    if (untouched(now)) {
      return new Sentence(
          Tone.ASK,
          words.get("sentence.untouched", now.beside().untouchedOffInS()),
          words.get("sentence.untouched.action"));
    }
    if (now.beside().stopped() && now.questions().get(0).id().equals(Asking.HANDS_OUT)) {
      return new Sentence(
          Tone.ASK, words.get("sentence.stopped"), words.get("sentence.stoppedAgain.action"));
    }
    if (!now.questions().isEmpty()) {
      return new Sentence(Tone.ASK, words.get("sentence.ask"), words.get("sentence.ask.action"));
    }
    if (now.countdownS() != null) {
      return new Sentence(
          Tone.CAUTION,
          words.get("sentence.countdown", now.countdownS()),
          words.get("sentence.countdown.action"));
    }
    return calm(now);
  }

  /** Whether it was raised before the switch opened. */
  private static boolean before(Alarm alarm, Snapshot now) {
    return now.times().elapsedMs() == null || alarm.atMs() <= now.times().elapsedMs();
  }

  /** While rails fall, hands are what matters; what was found before comes after it. */
  private Sentence falling(Snapshot now, Alarm found) {
    String action =
        join(words.get("sentence.falling.action"), words.get("sentence.found", headline(found)));
    return new Sentence(
        toneOf(found.priority()), words.get("sentence.falling"), join(action, mains(now.sheet())));
  }

  private static boolean untouched(Snapshot now) {
    return now.phase() == Snapshot.Phase.ON && now.beside().untouchedOffInS() != null;
  }

  /** Whether one stroke may say why it was switched off: somebody did, after it was on. */
  public static boolean asksWhy(Snapshot now) {
    boolean off =
        now.phase() == Snapshot.Phase.RAILS_FALLING || now.phase() == Snapshot.Phase.ENDED;
    return off
        && now.kind() != Snapshot.Kind.REPLAY
        && now.times().closedMs() != null
        && now.findings().trip() == null;
  }

  /** What comes first of what is said once it is off. */
  private String whyOff(Snapshot now) {
    Integer left = now.beside().untouchedOffInS();
    if (left != null && left == 0) {
      return words.get("sentence.untouchedOff");
    }
    if (!asksWhy(now)) {
      return "";
    }
    String said = words.get("why.ask");
    for (ProbeEvent.Told told : now.beside().told()) {
      if (told instanceof ProbeEvent.OffExplained why) {
        said = words.get("told.off", words.get("told.off." + why.reason().id()));
      }
    }
    return said;
  }

  private Sentence calm(Snapshot now) {
    if (now.phase() == Snapshot.Phase.ENDED) {
      return now.findings().summary() != null ? ended(now) : refused(now);
    }
    String key =
        switch (now.phase()) {
          case CONNECTING -> "sentence.connecting";
          case OPEN -> "sentence.open";
          case CHECK -> "sentence.check";
          case LOOK -> "sentence.look";
          case ON -> "sentence.on";
          case RAILS_FALLING, TRIPPED -> "sentence.falling";
          case ENDED -> throw new IllegalStateException("said before");
        };
    String action =
        now.notice() != null
            ? spoken.say(now.notice())
            : now.phase() == Snapshot.Phase.ON ? watching(now) : words.get(key + ".action");
    if (isOff(now.phase())) {
      action = join(join(whyOff(now), action), mains(now.sheet()));
    }
    return new Sentence(
        now.phase() == Snapshot.Phase.ON ? Tone.CALM : Tone.PLAIN, words.get(key), action);
  }

  private String watching(Snapshot now) {
    String gaps = notWatched.say(now.findings().notWatched(), now.sheet(), true);
    return gaps.isEmpty() ? words.get("sentence.on.action") : words.get("verdict.notWatched", gaps);
  }

  /** It never came to closing the switch, or ended without figures: say why. */
  private Sentence refused(Snapshot now) {
    return new Sentence(
        Tone.CAUTION,
        words.get("sentence.refused"),
        join(
            now.notice() == null ? words.get("sentence.refused.action") : spoken.say(now.notice()),
            mains(now.sheet())));
  }

  /** The verdict of a power-up without alarm: never the word "normal". */
  private Sentence ended(Snapshot now) {
    if (now.times().closedMs() == null && "user-off".equals(now.findings().summary().ended())) {
      return new Sentence(
          Tone.PLAIN,
          words.get("sentence.stopped"),
          join(words.get("sentence.stopped.action"), mains(now.sheet())));
    }
    boolean quiet = "normal".equals(now.findings().summary().outcome());
    String head = Outcomes.head(words, numbers, now.findings().summary());
    List<NotWatched> gaps = now.findings().summary().notWatched();
    String action =
        gaps == null || gaps.isEmpty()
            ? words.get("verdict.allWatched")
            : words.get("verdict.notWatched", notWatched.say(gaps, now.sheet(), false));
    return new Sentence(
        quiet ? Tone.PLAIN : Tone.CAUTION,
        head,
        join(join(whyOff(now), action), mains(now.sheet())));
  }

  /** The probe fell back to off by itself while nobody listened to it. */
  private Sentence slept(Snapshot now, List<Alarm> standing) {
    String at =
        LocalTime.ofInstant(
                Instant.ofEpochMilli(now.beside().sleptAtEpochMs()), ZoneId.systemDefault())
            .format(DateTimeFormatter.ofPattern("HH:mm", words.locale()));
    String action =
        standing.isEmpty() ? words.get("awake.slept.action") : spoken.alarm(first(standing));
    return new Sentence(
        Tone.ALARM,
        words.get("awake.slept", at),
        join(words.get("awake.slept.off"), join(action, mains(now.sheet()))));
  }

  private Sentence tripped(Snapshot now, List<Alarm> standing) {
    Snapshot.TripView trip = TripPresenter.asOnSheet(now);
    Alarm shorted = Verdict.shortOf(standing);
    String action =
        standing.isEmpty()
            ? words.get("trip.causeAction", causeWords(trip), words.get("trip.action"))
            : spoken.alarm(shorted == null ? first(standing) : shorted);
    if (trip.atMs() != null) {
      action = words.get("trip.afterAction", numbers.moment(trip.atMs()), action);
    }
    if (now.phase() != Snapshot.Phase.ENDED) {
      action = join(action, words.get("sentence.hands"));
    }
    return new Sentence(
        Tone.ALARM, farTrip(trip, now.findings().alarms()), join(action, mains(now.sheet())));
  }

  /** So short that it can stand in letters that are read from two metres. */
  private String farTrip(Snapshot.TripView trip, List<Alarm> alarms) {
    Alarm found = Verdict.shortOf(alarms);
    if (found != null) {
      return words.get("verdict.short", valueWords(found));
    }
    String value =
        "A".equals(trip.unit()) && trip.highest() != null
            ? TripPresenter.highest(trip, words, numbers)
            : valueWords(trip);
    return value == null
        ? words.get("trip.off")
        : words.get("alarm.value", words.get("trip.off"), value);
  }

  String causeWords(Snapshot.TripView trip) {
    String key = "trip." + trip.cause().id();
    String value = valueWords(trip);
    if (trip.selfTestBits() != 0) {
      Worded fault = SelfTestWords.of(trip.selfTestBits());
      return words.get("trip.fault", words.get(key), fault.in(words.locale()));
    }
    if (value == null) {
      return words.get(key);
    }
    String name = trip.railName() == null ? words.get(key) : trip.railName() + " " + words.get(key);
    return trip.limit() == null || trip.cause() == TripCause.HARD_SHORT
        ? words.get("trip.value", name, value)
        : words.get(
            "trip.valueLimit", name, value, numbers.inUnit(trip.limit(), trip.unit()).toString());
  }

  private String valueWords(Snapshot.TripView trip) {
    if (trip.value() == null) {
      return null;
    }
    String value = numbers.inUnit(trip.value(), trip.unit()).toString();
    if (trip.atMost()) {
      return words.get("value.atMost", value);
    }
    boolean held = trip.highest() != null && trip.highest().limitedMs() != null;
    boolean atLeast = held ? trip.highest().atLeast() : trip.cause() == TripCause.HARD_SHORT;
    return atLeast ? words.get("value.atLeast", value) : value;
  }

  private Sentence alarm(Snapshot now, Alarm alarm) {
    String action = spoken.alarm(alarm);
    if (isOff(now.phase())) {
      action = join(action, mains(now.sheet()));
    }
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
        join(headCurrent(now, expected), action));
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

  private String valueWords(Alarm alarm) {
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
        now.findings().alarms().stream().filter(SentencePresenter::matters).toList();
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
  private static Alarm first(List<Alarm> standing) {
    return standing.stream()
        .filter(alarm -> alarm.foldedUnder() == 0)
        .findFirst()
        .orElse(standing.get(0));
  }

  private static boolean matters(Alarm alarm) {
    return alarm.state() != AlarmState.CLEARED;
  }

  public static Tone toneOf(Priority priority) {
    return switch (priority) {
      case HIGH -> Tone.ALARM;
      case MEDIUM -> Tone.CAUTION;
      case LOW -> Tone.PLAIN;
    };
  }

  /** Whether the latest trip is what the power-up stands at (not one that was restored since). */
  public static boolean hasTripped(Snapshot now) {
    return now.phase() == Snapshot.Phase.TRIPPED
        || (now.phase() == Snapshot.Phase.ENDED || now.phase() == Snapshot.Phase.RAILS_FALLING)
            && (now.findings().summary() == null
                || "tripped".equals(now.findings().summary().outcome()));
  }

  private static boolean isOff(Snapshot.Phase phase) {
    return phase == Snapshot.Phase.RAILS_FALLING
        || phase == Snapshot.Phase.TRIPPED
        || phase == Snapshot.Phase.ENDED;
  }

  /** Where a plug may be in the wall, opening the switch leaves the mains side live. */
  String mains(JobSheet sheet) {
    if (!OffWords.plugIn(sheet)) {
      return "";
    }
    return OffWords.atReservoir(sheet)
        ? join(words.get("sentence.mains"), words.get("sentence.reservoir"))
        : words.get("sentence.mains");
  }

  private static String join(String one, String other) {
    // The text of an alarm that switched off says it already.
    return (one.contains(other) ? one : one + " " + other).trim();
  }

  private static String orEmpty(String text) {
    return text == null ? "" : text;
  }
}
