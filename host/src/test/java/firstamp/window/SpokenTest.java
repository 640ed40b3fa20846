package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;

class SpokenTest {
  private final Spoken german = new Spoken(Locale.GERMAN);

  @Test
  void saysAVerdictWithItsFigures() {
    assertThat(
            german.verdict(
                "At the end the set drew 118 mA at 12 V (1.4 W), after an inrush of 2 A."))
        .isEqualTo(
            "Das Ger\u00e4t zog am Ende 118 mA bei 12 V (1.4 W), nach einem Einschaltstrom von 2"
                + " A.");
    assertThat(
            german.verdict(
                "A short, at most 1.44 ohm: it switched itself off after 1.2 s. Highest"
                    + " current 6.36 A. Take off the wire joined last, then measure the ohms with the"
                    + " supply off."))
        .startsWith("Kurzschluss, h\u00f6chstens 1.44 \u03a9: nach 1.2 s selbst abgeschaltet.");
    assertThat(german.verdict("Ran 0:12, no fault seen."))
        .isEqualTo("Lief 0:12, kein Fehler gesehen.");
    assertThat(
            german.verdict(
                "Firstamp switched it off after 26 ms because B1 was reversed: -4.13 V."))
        .isEqualTo("Firstamp hat nach 26 ms abgeschaltet, weil B1 verpolt war: \u22124.13 V.");
  }

  @Test
  void saysEveryPartOfAnAlarmAndItsLabel() {
    assertThat(
            german.alarm(
                "Too much current: 3.09 A when the limit of 1 A was crossed. The supply was switched off."
                    + " (Since W3 went to P7.) Look at what was changed last before switching on"
                    + " again."))
        .isEqualTo(
            "Zu viel Strom: 3.09 A, als die Grenze von 1 A \u00fcberschritten wurde. Die Speisung wurde abgeschaltet."
                + " (Seit: W3 went to P7.) Pr\u00fcfen Sie vor dem Wiedereinschalten, was zuletzt"
                + " ge\u00e4ndert wurde.");
  }

  @Test
  void saysTheActingLimitAndAMotorsStart() {
    assertThat(
            german.alarm(
                "Too much current: 998 mA when the limit of 0.986 A (1 A on the sheet) was crossed,"
                    + " 12 ms after a load came on. The supply was switched off."))
        .isEqualTo(
            "Zu viel Strom: 998 mA beim \u00dcberschreiten der Grenze von 0.986 A (1 A auf dem"
                + " Blatt), 12 ms nach dem Zuschalten einer Last. Die Speisung wurde"
                + " abgeschaltet.");
    assertThat(
            german.alarm(
                "B1 is above its maximum voltage: 9.8 V, the limit is 9.77 V, on the sheet 9.8 V."))
        .endsWith("9.77 V, auf dem Blatt 9.8 V.");
  }

  @Test
  void saysWhatItCostsNotToKnow() {
    assertThat(
            german.question("A supply that limits the current takes longer to tell from a short."))
        .isEqualTo(
            "Ein Netzger\u00e4t in der Strombegrenzung wird erst sp\u00e4ter von einem Kurzschluss"
                + " unterschieden.");
  }

  @Test
  void saysWhyTheProbeBoxRefusesWithEveryFaultItNames() {
    assertThat(
            german.refusal(
                "The probe box fails its self-test: one of its inputs is stuck; its memory"
                    + " is faulty."))
        .isEqualTo(
            "Der Messkasten besteht seine Selbstpr\u00fcfung nicht: einer seiner Eing\u00e4nge"
                + " h\u00e4ngt; sein Speicher ist fehlerhaft.");
    assertThat(
            german.refusal(
                "The chassis clip is not on. Clip it to the set's chassis, then try again."))
        .isEqualTo(
            "Die Chassisklemme ist ab. Am Chassis des Ger\u00e4ts anklemmen, dann noch"
                + " einmal.");
    assertThat(german.refusal("something else")).isEqualTo("something else");
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
  void leavesWhatItDoesNotKnowAndEnglishAsTheyAre() {
    assertThat(german.verdict("Something new.")).isEqualTo("Something new.");
    Spoken english = new Spoken(Locale.ENGLISH);
    assertThat(english.verdict("Ran 0:12, no alarm.")).isEqualTo("Ran 0:12, no alarm.");
  }
}
