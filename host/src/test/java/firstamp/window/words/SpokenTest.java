package firstamp.window.words;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.account.VerdictSentence;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Priority;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording;
import firstamp.protocol.codes.SelfTestFault;
import firstamp.run.talk.Refusals;
import firstamp.sheet.SheetForm;
import firstamp.sheet.SheetQuestion;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class SpokenTest {
  private final Spoken german = new Spoken(Locale.GERMAN);

  private static VerdictSentence sentence(String key, Object... figures) {
    return new VerdictSentence(1, key, 0, List.of(figures), null);
  }

  private static Alarm alarm(Wording words, String english) {
    return new Alarm(
        1,
        "over-current",
        0,
        null,
        0,
        0,
        0,
        Priority.HIGH,
        AlarmState.UNACKNOWLEDGED,
        null,
        false,
        null,
        null,
        english,
        0,
        words);
  }

  @Test
  void saysAVerdictWithItsFigures() {
    assertThat(german.verdict(sentence("settled", "118 mA", "12 V", "1.4 W", "2 A")))
        .isEqualTo(
            "Das Ger\u00e4t zog am Ende 118 mA bei 12 V (1,4 W), nach einem Einschaltstrom von 2"
                + " A.");
    assertThat(
            german.verdict(
                sentence(
                    "tripped.short", new Wording.Phrase("at.most", "1.44 ohm"), "1.2 s", "6.36 A")))
        .startsWith(
            "Kurzschluss, h\u00f6chstens 1,44 \u03a9: nach 1,2 s selbst abgeschaltet."
                + " H\u00f6chster Strom 6,36 A.");
    assertThat(german.verdict(sentence("ran.fine", "0:12")))
        .isEqualTo("Lief 0:12, kein Fehler gesehen.");
    assertThat(german.verdict(sentence("off.wrong-polarity", "26 ms", "B1", "-4.13 V")))
        .isEqualTo("Firstamp hat nach 26 ms abgeschaltet, weil B1 verpolt war: \u22124,13 V.");
  }

  @Test
  void saysEveryPartOfAnAlarmAndItsLabel() {
    Wording words =
        Wording.of("over-current.seen", Wording.Quantity.amps(3.094), Wording.Quantity.amps(1))
            .and("label", "W3 went to P7")
            .and("over-current.first");
    assertThat(german.alarm(alarm(words, "")))
        .isEqualTo(
            "Zu viel Strom: 3,09 A, als die Grenze von 1 A \u00fcberschritten wurde. Die Speisung wurde abgeschaltet."
                + " (Seit: W3 went to P7.) Pr\u00fcfen Sie vor dem Wiedereinschalten, was zuletzt"
                + " ge\u00e4ndert wurde.");
  }

  @Test
  void saysTheActingLimitAndAMotorsStart() {
    Wording words =
        Wording.of(
            "over-current-motor.seen",
            Wording.Quantity.amps(0.998),
            new Wording.Phrase(
                "acting", new Wording.Quantity(0.986, "A"), new Wording.Quantity(1, "A")),
            new Wording.Phrase("after.load", 12.0));
    assertThat(german.alarm(alarm(words, "")))
        .isEqualTo(
            "Zu viel Strom: 998 mA beim \u00dcberschreiten der Grenze von 0,986 A (1 A auf dem"
                + " Blatt), 12 ms nach dem Zuschalten einer Last. Die Speisung wurde"
                + " abgeschaltet.");
    Wording volts =
        Wording.of("over-voltage.seen", "B1", 9.8, new Wording.Phrase("acting.volts", 9.77, 9.8));
    assertThat(german.alarm(alarm(volts, ""))).endsWith("9,77 V, auf dem Blatt 9,8 V.");
  }

  /** The log keeps the English text and nothing else. */
  @Test
  void leavesAnAlarmOutOfALogInEnglish() {
    assertThat(german.alarm(alarm(null, "B1 is late."))).isEqualTo("B1 is late.");
  }

  @Test
  void saysWhatItCostsNotToKnow() {
    assertThat(german.say(SheetForm.empty().cost(SheetQuestion.FUSE)))
        .isEqualTo(
            "Kein Lauf ohne Aufsicht. Die Dauergrenze folgt nicht aus der Schmelzsicherung, und der"
                + " Einschaltsto\u00df wird aus \u00fcblichen Kondensatoren gesch\u00e4tzt.");
  }

  @Test
  void saysWhyTheProbeBoxRefusesWithEveryFaultItNames() {
    int bits = 1 << SelfTestFault.INPUT_STUCK.ordinal() | 1 << SelfTestFault.MEMORY.ordinal();
    assertThat(Refusals.failsSelfTest(bits).english())
        .isEqualTo(
            "The probe box fails its self-test: one of its inputs is stuck; its memory is faulty.");
    assertThat(german.say(Refusals.failsSelfTest(bits)))
        .isEqualTo(
            "Der Messkasten besteht seine Selbstpr\u00fcfung nicht: einer seiner Eing\u00e4nge"
                + " h\u00e4ngt; sein Speicher ist fehlerhaft.");
    assertThat(german.say(Refusals.otherFeed(new Wording.Quantity(3.2, "V"), "B1")))
        .startsWith("3,2 V an B1 bei offenem Schalter");
    assertThat(german.say(Worded.asIs("something else"))).isEqualTo("something else");
  }

  @Test
  void everyScenarioHasItsSentenceInBothLanguages() {
    Words english = new Words(Locale.ENGLISH);
    Words inGerman = new Words(Locale.GERMAN);
    for (String name : firstamp.emulate.Scenarios.names()) {
      assertThat(english.get("scenario." + name))
          .isEqualTo(firstamp.emulate.Scenarios.describe(name));
      assertThat(inGerman.get("scenario." + name)).isNotEqualTo(english.get("scenario." + name));
    }
  }

  @Test
  void saysAVerdictInEnglishAsItIs() {
    Spoken english = new Spoken(Locale.ENGLISH);
    assertThat(english.verdict(sentence("ran.fine", "0:12"))).isEqualTo("Ran 0:12, no fault seen.");
  }
}
