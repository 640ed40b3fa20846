package firstamp.window.present;

import firstamp.account.Verdict;
import firstamp.bench.Snapshot;
import firstamp.model.Alarm;
import firstamp.model.SelfTestWords;
import firstamp.model.TripCause;
import firstamp.model.text.Worded;
import firstamp.window.present.BenchView.Sentence;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;
import java.util.List;

/** The sentence after the probe box has opened its switch by itself. */
final class TripSentence {
  private final Words words;
  private final Numbers numbers;
  private final Spoken spoken;
  private final AlarmSentences alarms;
  private final MainsWords mains;

  TripSentence(Words words, Numbers numbers, AlarmSentences alarms, MainsWords mains) {
    this.words = words;
    this.numbers = numbers;
    this.spoken = new Spoken(words.locale());
    this.alarms = alarms;
    this.mains = mains;
  }

  Sentence sentence(Snapshot now, List<Alarm> standing) {
    Snapshot.TripView trip = TripPresenter.asOnSheet(now);
    Alarm shorted = Verdict.shortOf(standing);
    String action =
        standing.isEmpty()
            ? words.get("trip.causeAction", causeWords(trip), words.get("trip.action"))
            : spoken.alarm(shorted == null ? AlarmSentences.first(standing) : shorted);
    if (trip.atMs() != null) {
      action = words.get("trip.afterAction", numbers.moment(trip.atMs()), action);
    }
    if (now.phase() != Snapshot.Phase.ENDED) {
      action = MainsWords.join(action, words.get("sentence.hands"));
    }
    return new Sentence(
        Tone.ALARM,
        far(trip, now.findings().alarms()),
        MainsWords.join(action, mains.of(now.sheet())));
  }

  /** So short that it can stand in letters that are read from two metres. */
  private String far(Snapshot.TripView trip, List<Alarm> all) {
    Alarm found = Verdict.shortOf(all);
    if (found != null) {
      return words.get("verdict.short", alarms.valueWords(found));
    }
    String value =
        "A".equals(trip.unit()) && trip.highest() != null
            ? TripPresenter.highest(trip, words, numbers)
            : valueWords(trip);
    return value == null
        ? words.get("trip.off")
        : words.get("alarm.value", words.get("trip.off"), value);
  }

  private String causeWords(Snapshot.TripView trip) {
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
}
