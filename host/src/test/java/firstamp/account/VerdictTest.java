package firstamp.account;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.analysis.Sheets;
import firstamp.analysis.SignalFeed;
import firstamp.analysis.figures.PowerUpFigures;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.analysis.spectrum.RippleMeter;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.OffCause;
import firstamp.model.Priority;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.SwitchState;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.ReadingReducer;
import java.util.Enumeration;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class VerdictTest {
  private final SignalFeed feed =
      new SignalFeed()
          .noise(0.7, 21)
          .amps(t -> 0.12)
          .with(Channel.V, t -> 12)
          .with(Channel.H, t -> 0)
          .with(Channel.M, t -> 0);

  private final Map<Double, String> marks = new HashMap<>();

  private static JobSheet.Rail rail(String rectifier, Double uF) {
    return new JobSheet.Rail(1, "B1", 9.0, 10.0, 300.0, 14.0, null, uF, rectifier);
  }

  private Verdict run(JobSheet sheet, int seconds, Alarm... alarms) {
    return run(sheet, seconds, 0, alarms);
  }

  /** The switch closes {@code offSeconds} after the begin; courses count from the begin. */
  private Verdict run(JobSheet sheet, int seconds, int offSeconds, Alarm... alarms) {
    PowerUpFigures figures = new PowerUpFigures(sheet, feed.calibration(), 330, 10);
    ReadingReducer reducer = new ReadingReducer(figures::onReading);
    LevelMeter levels =
        new LevelMeter(sheet, feed.calibration(), figures::onLevels, figures::onDetail);
    RippleMeter ripple =
        new RippleMeter(sheet, feed.calibration(), figures::onRipple, figures::onRailLines);
    for (int second = 0; second < seconds + offSeconds; second++) {
      if (second == offSeconds) {
        figures.onEvent(
            new ProbeEvent.SwitchChanged(second * 1_000_000L, SwitchState.ON, OffCause.USER));
      }
      String mark = marks.get((double) (second - offSeconds));
      if (mark != null) {
        figures.onEvent(
            new ProbeEvent.Happened(second * 1_000_000L, new Happening.SetChanged(mark)));
      }
      ConversionBlock block = feed.block(second * 16_000L, 16_000);
      figures.accept(block);
      reducer.accept(block.firstIndex(), block.counts(), 0, 16_000);
      levels.accept(block);
      ripple.accept(block);
    }
    Summary summary =
        new Summary(
            1,
            "u",
            "normal",
            "time",
            null,
            null,
            figures.onMs(),
            figures.look(),
            figures.supply(),
            figures.rails(),
            figures.levels(),
            List.of(),
            List.of(new NotWatched("rail 2", "no clip")),
            List.of(alarms),
            null,
            null,
            null);
    return Verdict.of(sheet, summary, figures.evidence());
  }

  private static VerdictSentence find(Verdict verdict, String key) {
    return verdict.sentences().stream()
        .filter(sentence -> sentence.key().equals(key))
        .findFirst()
        .orElseThrow(() -> new AssertionError(key + " not among " + verdict.sentences()));
  }

  /** Full-wave sawtooth of I / (100 Hz C). */
  private static DoubleUnaryOperator sawtooth(double meanV, double amps, double uF, double hz) {
    double vpp = amps / (hz * uF * 1e-6);
    return t -> meanV + vpp * (0.5 - t * hz % 1);
  }

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

  @Test
  void aHeadWithoutSignalBehindAMovingMeterComesFirst() {
    feed.rail(1, t -> 9).with(Channel.M, SignalFeed.sine(0.126, 400));
    Verdict verdict = run(Sheets.sheet(Sheets.levels(400.0), rail("none", null)), 4);
    assertThat(verdict.sentences().get(0).key()).isIn("head.floor", "head.low");
    feed.with(Channel.H, SignalFeed.sine(0.126e-2, 400));
    assertThat(run(Sheets.sheet(Sheets.levels(400.0), rail("none", null)), 4).sentences())
        .noneMatch(sentence -> sentence.key().startsWith("head."));
  }

  @Test
  void withoutAnExpectedDistanceItOffersToKeepTheOneFound() {
    feed.rail(1, t -> 9)
        .with(Channel.M, SignalFeed.sine(0.126, 400))
        .with(Channel.H, SignalFeed.sine(1.26e-3, 400));
    JobSheet.Levels levels = new JobSheet.Levels(400.0, 10.0, null, null, -30.0, 500.0);
    assertThat(find(run(Sheets.sheet(levels, rail("none", null)), 4), "head.keep").text())
        .startsWith("The head is 40.0 dB below the meter.");
  }

  @Test
  void saysWhenTheMeterStaysQuiet() {
    feed.rail(1, t -> 9);
    assertThat(
            find(run(Sheets.sheet(Sheets.levels(400.0), rail("none", null)), 4), "meter.silent")
                .text())
        .startsWith("I cannot see your meter");
  }

  @Test
  void humThatWasThereBeforeIsNotFromTheSet() {
    feed.rail(1, t -> 9).with(Channel.H, SignalFeed.sine(0.4e-3, 50));
    JobSheet sheet = Sheets.sheet(Sheets.levels(400.0), rail("none", null));
    assertThat(find(run(sheet, 4, 2), "hum.before").text()).startsWith("Hum of -68.0 dBV was");
    feed.with(Channel.H, t -> t < 2 ? 0 : SignalFeed.sine(0.4e-3, 50).applyAsDouble(t));
    assertThat(find(run(sheet, 4, 2), "hum.mains").text())
        .startsWith("Hum in the head is -68.0 dBV, nearly all of it 50 Hz");
    // With the tone on, whose frequency is a multiple of the mains: it is no hum.
    DoubleUnaryOperator tone = SignalFeed.sine(4e-3, 400);
    feed.with(Channel.M, t -> t < 2 ? 0 : 50 * tone.applyAsDouble(t))
        .with(
            Channel.H,
            t -> t < 2 ? 0 : tone.applyAsDouble(t) + SignalFeed.sine(0.4e-3, 50).applyAsDouble(t));
    assertThat(find(run(sheet, 4, 2), "hum.mains").text()).contains("nearly all of it 50 Hz");
    feed.with(Channel.M, t -> 0);
    feed.with(Channel.H, t -> t < 2 ? 0 : SignalFeed.sine(0.4e-3, 120).applyAsDouble(t));
    assertThat(find(run(sheet, 4, 2), "hum.twice").text()).contains("nearly all of it 120 Hz");
    feed.with(
        Channel.H,
        t ->
            t < 2
                ? 0
                : SignalFeed.sine(0.3e-3, 50).applyAsDouble(t)
                    + SignalFeed.sine(0.2e-3, 100).applyAsDouble(t));
    assertThat(find(run(sheet, 4, 2), "hum.seen").text()).contains("multiples of 50 Hz");
    // The rail ripples at 100 Hz, half of the hum is at 50: it explains half at most.
    feed.rail(1, sawtooth(9, 0.12, 500, 100));
    assertThat(find(run(sheet, 4, 2), "hum.not-in-step").text()).startsWith("B1 ripples too, but");
  }

  @Test
  void humInStepWithARailsRippleNamesThatRail() {
    DoubleUnaryOperator rail = sawtooth(9, 0.12, 500, 100);
    feed.rail(1, rail).with(Channel.H, t -> t < 2 ? 0 : 4e-4 * (rail.applyAsDouble(t - 0.001) - 9));
    JobSheet sheet = Sheets.sheet(Sheets.levels(400.0), rail("full", 500.0));
    Verdict verdict = run(sheet, 4, 2);
    assertThat(find(verdict, "hum.in-step").text())
        .contains("is in step with B1, which ripples at 100 Hz");
    assertThat(verdict.sentences()).noneMatch(one -> one.key().equals("hum.not-in-step"));
    // Half as much is the hum of an ordinary set: a figure, and no advice.
    feed.with(Channel.H, t -> t < 2 ? 0 : 2e-4 * (rail.applyAsDouble(t - 0.001) - 9));
    assertThat(run(sheet, 4, 2).sentences()).noneMatch(one -> one.key().startsWith("hum."));
  }

  @Test
  void aBuzzIsToldFromAHum() {
    feed.rail(1, t -> 9)
        .with(Channel.H, t -> t < 2 ? 0 : Math.floorMod((long) (t * 16_000), 160L) < 4 ? 3e-3 : 0);
    JobSheet sheet = Sheets.sheet(Sheets.levels(400.0), rail("none", null));
    assertThat(find(run(sheet, 4, 2), "hum.buzz").text()).contains("150 Hz and above");
  }

  @Test
  void aMarkMakesABeforeAndAfterOfTheHum() {
    marks.put(3.0, "charger off");
    feed.rail(1, t -> 9)
        .with(Channel.H, t -> t < 5 ? SignalFeed.sine(0.4e-3, 50).applyAsDouble(t) : 0);
    JobSheet sheet = Sheets.sheet(Sheets.levels(400.0), rail("none", null));
    Verdict verdict = run(sheet, 6, 2);
    assertThat(find(verdict, "hum.gone").text())
        .contains("\u201ccharger off\u201d")
        .contains("-68.0 dBV before");
    feed.with(Channel.H, t -> SignalFeed.sine(t < 5 ? 0.4e-3 : 0.1e-3, 50).applyAsDouble(t));
    assertThat(find(run(sheet, 6, 2), "hum.fell").text()).contains("from -68.0 dBV to -80");
    feed.with(Channel.H, t -> SignalFeed.sine(t < 5 ? 0.1e-3 : 0.4e-3, 50).applyAsDouble(t));
    assertThat(find(run(sheet, 6, 2), "hum.rose").text()).contains("from -80");
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
