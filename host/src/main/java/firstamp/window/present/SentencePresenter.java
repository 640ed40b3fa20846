package firstamp.window.present;

import firstamp.account.NotWatchedWords;
import firstamp.bench.Snapshot;
import firstamp.model.Alarm;
import firstamp.model.NotWatched;
import firstamp.model.ProbeEvent;
import firstamp.model.TripCause;
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
import java.util.List;

/** Says in one sentence what matters most now, and what to do first. */
public final class SentencePresenter {
  private final Words words;
  private final Numbers numbers;
  private final NotWatchedWords notWatched;
  private final Spoken spoken;
  private final RestorePresenter restores;
  private final AlarmSentences alarms;
  private final TripSentence trips;
  private final MainsWords mains;

  public SentencePresenter(Words words, Numbers numbers) {
    this.words = words;
    this.notWatched = new NotWatchedWords(words.locale());
    this.numbers = numbers;
    this.spoken = new Spoken(words.locale());
    this.restores = new RestorePresenter(words);
    this.alarms = new AlarmSentences(words, numbers);
    this.mains = new MainsWords(words);
    this.trips = new TripSentence(words, numbers, alarms, mains);
  }

  /** Says the alarms. */
  AlarmSentences alarms() {
    return alarms;
  }

  Sentence sentence(Snapshot now) {
    List<Alarm> standing =
        now.findings().alarms().stream().filter(AlarmSentences::matters).toList();
    boolean tripped = now.findings().trip() != null && hasTripped(now);
    // Other trips have a cause of their own: that the computer hung meanwhile does not hide it.
    boolean silent = !tripped || now.findings().trip().cause() == TripCause.HOST_SILENCE;
    if (now.beside().sleptAtEpochMs() != null && isOff(now.phase()) && silent) {
      return slept(now, standing);
    }
    if (RestorePresenter.met(now) != null) {
      return restores.sentence(RestorePresenter.met(now), mains.of(now.sheet()));
    }
    if (tripped) {
      return trips.sentence(now, standing);
    }
    if (!standing.isEmpty()) {
      Alarm first = AlarmSentences.first(standing);
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
        MainsWords.join(
            words.get("sentence.falling.action"),
            words.get("sentence.found", alarms.headline(found)));
    return new Sentence(
        AlarmSentences.toneOf(found.priority()),
        words.get("sentence.falling"),
        MainsWords.join(action, mains.of(now.sheet())));
  }

  private Sentence alarm(Snapshot now, Alarm alarm) {
    String action = spoken.alarm(alarm);
    return alarms.sentence(
        now, alarm, isOff(now.phase()) ? MainsWords.join(action, mains.of(now.sheet())) : action);
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
      action = MainsWords.join(MainsWords.join(whyOff(now), action), mains.of(now.sheet()));
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
        MainsWords.join(
            now.notice() == null ? words.get("sentence.refused.action") : spoken.say(now.notice()),
            mains.of(now.sheet())));
  }

  /** The verdict of a power-up without alarm: never the word "normal". */
  private Sentence ended(Snapshot now) {
    if (now.times().closedMs() == null && "user-off".equals(now.findings().summary().ended())) {
      return new Sentence(
          Tone.PLAIN,
          words.get("sentence.stopped"),
          MainsWords.join(words.get("sentence.stopped.action"), mains.of(now.sheet())));
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
        MainsWords.join(MainsWords.join(whyOff(now), action), mains.of(now.sheet())));
  }

  /** The probe fell back to off by itself while nobody listened to it. */
  private Sentence slept(Snapshot now, List<Alarm> standing) {
    String at =
        LocalTime.ofInstant(
                Instant.ofEpochMilli(now.beside().sleptAtEpochMs()), ZoneId.systemDefault())
            .format(DateTimeFormatter.ofPattern("HH:mm", words.locale()));
    String action =
        standing.isEmpty()
            ? words.get("awake.slept.action")
            : spoken.alarm(AlarmSentences.first(standing));
    return new Sentence(
        Tone.ALARM,
        words.get("awake.slept", at),
        MainsWords.join(
            words.get("awake.slept.off"), MainsWords.join(action, mains.of(now.sheet()))));
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

  private static String orEmpty(String text) {
    return text == null ? "" : text;
  }
}
