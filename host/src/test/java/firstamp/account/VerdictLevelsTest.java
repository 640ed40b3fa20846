package firstamp.account;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.analysis.Sheets;
import firstamp.analysis.SignalFeed;
import firstamp.model.JobSheet;
import firstamp.model.samples.Channel;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** What the verdict concludes about the levels: lost signal, hum, buzz. */
final class VerdictLevelsTest extends VerdictCase {
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
}
