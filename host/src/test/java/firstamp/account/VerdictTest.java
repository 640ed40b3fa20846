package firstamp.account;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.analysis.Sheets;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.JobSheet;
import firstamp.model.Priority;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import org.junit.jupiter.api.Test;

/** What the verdict concludes about supply current, rails and filters. */
class VerdictTest extends VerdictCase {
  @Test
  void namesATiredFilterWithItsFigures() {
    feed.rail(1, sawtooth(9, 0.12, 210, 100));
    Verdict verdict = run(Sheets.sheet(null, rail("full", 2200.0)), 8);
    VerdictSentence sentence = find(verdict, "filter.dry");
    assertThat(sentence.rail()).isEqualTo(1);
    assertThat(sentence.text())
        .startsWith("The filter on B1 measures about at most 2")
        .contains(", marked 2200 uF: ripple 1.")
        .contains(" at 100 Hz at 120 mA.");
    double uF =
        Double.parseDouble(sentence.text().replaceAll(".* at most ([0-9.]+) uF, marked.*", "$1"));
    assertThat(uF).isBetween(200.0, 222.0);
    assertThat(verdict.sentences().get(0)).isEqualTo(sentence);
  }

  @Test
  void aTiredFilterWithACurrentThatFormsIsCalledLeaky() {
    feed.amps(t -> 0.12 + 0.06 * Math.exp(-t / 5)).rail(1, sawtooth(9, 0.13, 210, 100));
    Verdict verdict = run(Sheets.sheet(null, rail("full", 2200.0)), 20);
    assertThat(find(verdict, "filter.leaky").text()).contains("leaky capacitor rather than a dry");
    assertThat(find(verdict, "shape.forming").text()).contains("capacitors that form");
  }

  @Test
  void chargeOfTheSurgeIsHeldAgainstTheSheet() {
    // 1000 uF at 12 V where the sheet says 2200 uF; the probe sits in the lead of a bench supply.
    feed.rail(1, t -> 9).amps(t -> 0.1 + 0.6 * Math.exp(-t / 0.02));
    assertThat(find(run(Sheets.sheet(null, rail("none", 2200.0)), 5), "surge.missing").text())
        .startsWith("The inrush charge corresponds to 10");
    assertThat(run(Sheets.sheet(null, rail("full", 2200.0)), 5).sentences())
        .noneMatch(sentence -> sentence.key().startsWith("surge."));
    feed.amps(t -> 0.1 + 1.32 * Math.exp(-t / 0.02));
    assertThat(find(run(Sheets.sheet(null, rail("none", 2200.0)), 5), "surge.agrees").importance())
        .isEqualTo(8);
  }

  @Test
  void aGoodFilterIsOnlyRecorded() {
    feed.rail(1, sawtooth(9, 0.12, 2200, 100));
    VerdictSentence sentence =
        find(run(Sheets.sheet(null, rail("full", 2200.0)), 8), "filter.holds");
    assertThat(sentence.importance()).isEqualTo(8);
  }

  @Test
  void flagsHalfWaveRippleBehindAFullWaveRectifier() {
    feed.rail(1, sawtooth(9, 0.12, 1000, 60));
    assertThat(find(run(Sheets.sheet(null, rail("full", 1000.0)), 6), "ripple.half").text())
        .startsWith("B1 ripples at 60 Hz, where a full-wave rectifier gives 120 Hz");
  }

  @Test
  void flagsARailOutsideItsWindowAndOneThatIsLate() {
    feed.rail(1, t -> 7.1 * (1 - Math.exp(-t / 0.2)));
    Verdict verdict = run(Sheets.sheet(null, rail("none", null)), 4);
    assertThat(find(verdict, "rail.outside").text())
        .startsWith("B1 ended at 7.1 V; the sheet says 9 V within 10 %.");
    assertThat(find(verdict, "rail.late").text()).contains("the sheet allows 300 ms");
  }

  @Test
  void tellsCreepFromAStep() {
    feed.rail(1, t -> 9).amps(t -> 0.1 + 0.004 * t);
    assertThat(find(run(Sheets.sheet(null, rail("none", null)), 15), "shape.creep").text())
        .startsWith("The current climbed from");
    feed.amps(t -> t < 9 ? 0.1 : 0.15);
    assertThat(run(Sheets.sheet(null, rail("none", null)), 15).sentences())
        .noneMatch(sentence -> sentence.key().equals("shape.creep"));
  }

  @Test
  void tellsAMotorThatStartsFromOneThatStays() {
    feed.rail(1, t -> 9).amps(t -> t < 3 ? 0.05 : 0.13 + 0.3 * Math.exp(-(t - 3) / 0.15));
    assertThat(find(run(Sheets.sheet(null, rail("none", null)), 8), "motor.started").text())
        .startsWith("A motor or another load started at 3 s");
    feed.amps(t -> t < 3 ? 0.05 : 0.4);
    assertThat(find(run(Sheets.sheet(null, rail("none", null)), 8), "motor.stays").text())
        .startsWith("A load switched on at 3 s: 40");
  }

  @Test
  void overshootAndDroopAreSaidWithTheirTimes() {
    feed.rail(1, t -> t < 1 ? 11 : t > 4 && t < 5 ? 8 : 9);
    Verdict verdict = run(Sheets.sheet(null, rail("none", null)), 8);
    assertThat(find(verdict, "rail.overshoot").text()).contains("went up to 11 V");
    assertThat(find(verdict, "rail.droop").text()).contains("down to 8 V at 4 s");
  }

  /** A count of the range is 39 mV: an end near 0 is passed by half of everything. */
  @Test
  void noiseOnARailIsNoSwing() {
    feed.rail(1, t -> 0.03);
    assertThat(swings(run(Sheets.sheet(null, rail("none", null)), 12))).isEmpty();
    // The mean of a reading leaves 0.54 V of it: more than a twentieth, and no swing.
    feed.noise(0, 1).rail(1, t -> 9 + 0.8 * Math.sin(2 * Math.PI * 47 * t));
    assertThat(swings(run(Sheets.sheet(null, rail("none", null)), 12))).isEmpty();
  }

  private static List<String> swings(Verdict verdict) {
    return verdict.sentences().stream()
        .map(VerdictSentence::key)
        .filter(key -> key.equals("rail.overshoot") || key.equals("rail.droop"))
        .toList();
  }

  @Test
  void aDryFilterAtTheKnownIdleCurrentIsToldFromALeakyOne() {
    feed.rail(1, sawtooth(9, 0.12, 1000, 100));
    JobSheet plain = Sheets.sheet(null, rail("full", 2200.0));
    assertThat(find(run(plain, 8), "filter.dry").text()).contains("measures about 98");
    assertThat(find(run(withIdle(plain, 0.118), 8), "filter.dry-same").text())
        .contains("no more than the 118 mA");
    assertThat(find(run(withIdle(plain, 0.08), 8), "filter.leaky").text())
        .contains("leaky capacitor");
  }

  private static JobSheet withIdle(JobSheet sheet, double idleA) {
    JobSheet.Supply said = sheet.supply();
    return new JobSheet(
        1,
        sheet.set(),
        new JobSheet.Supply(
            said.kind(),
            said.probeSits(),
            said.nominalV(),
            said.minV(),
            said.maxV(),
            said.limitA(),
            said.fuseA(),
            said.look(),
            null,
            null,
            idleA,
            null),
        sheet.limits(),
        sheet.rails(),
        sheet.levels(),
        sheet.rules());
  }

  @Test
  void saysWhereOneTimeConstantDoesNotDescribeTheRise() {
    // Two stages: at half of it the rail waits.
    feed.rail(1, t -> t < 0.3 ? 4.5 * (1 - Math.exp(-t / 0.01)) : 9);
    assertThat(find(run(Sheets.sheet(null, rail("none", null)), 4), "rail.not-first-order").text())
        .startsWith("B1 does not come up like one capacitor");
    feed.rail(1, t -> 9 * (1 - Math.exp(-t / 0.05)));
    assertThat(run(Sheets.sheet(null, rail("none", null)), 4).sentences())
        .noneMatch(one -> one.key().equals("rail.not-first-order"));
  }

  @Test
  void alarmsComeFirstAndWhatWasNotWatchedIsThere() {
    feed.rail(1, t -> 9);
    Alarm alarm =
        new Alarm(
            1,
            "no-draw",
            0,
            null,
            600,
            500,
            600,
            Priority.HIGH,
            AlarmState.UNACKNOWLEDGED,
            0.0,
            false,
            0.002,
            "A",
            "The set draws nothing. Look at the plug.",
            0);
    Verdict verdict = run(Sheets.sheet(null, rail("none", null)), 2, alarm);
    assertThat(verdict.sentences().get(0).text())
        .isEqualTo("The set draws nothing. Look at the plug.");
    assertThat(verdict.text())
        .endsWith("Ran 0:02, with alarms. Not watched: rail 2 (no clip).")
        .doesNotContain("no fault");
  }

  @Test
  void noSentenceUsesTheWordsThatStayOffTheScreen() {
    ResourceBundle bundle = ResourceBundle.getBundle("firstamp.account.verdict", Locale.ROOT);
    Enumeration<String> keys = bundle.getKeys();
    int seen = 0;
    while (keys.hasMoreElements()) {
      String text = bundle.getString(keys.nextElement());
      seen++;
      assertThat(text)
          .doesNotContainPattern(
              "(?i)\\b(conversion|latched|unacknowledged|deadband|on-delay|fold-?back|i2t|tau|odds|"
                  + "entropy|normal|ok|okay|safe)\\b");
    }
    assertThat(seen).isGreaterThan(30);
  }
}
