package firstamp.analysis.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.PublishedFiguresTest;
import firstamp.analysis.Sheets;
import firstamp.analysis.SignalFeed;
import firstamp.analysis.figures.ExpectedDistance;
import firstamp.analysis.figures.LevelSums;
import firstamp.model.JobSheet;
import firstamp.model.samples.Channel;
import firstamp.model.samples.LevelWindow;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Needle, bands, expected curve and the split of a tone, from conversions. */
class LevelDetailTest {
  private static final int SAMPLES = 20;

  private final SignalFeed feed = new SignalFeed().noise(0.7, 9).with(Channel.H, t -> 0);
  private final List<LevelDetail> details = new ArrayList<>();
  private final List<LevelWindow> windows = new ArrayList<>();

  private void run(Double toneHz, int count) {
    LevelMeter meter =
        new LevelMeter(
            Sheets.sheet(Sheets.levels(toneHz)), feed.calibration(), windows::add, details::add);
    meter.accept(feed.block(0, 3200 * count));
  }

  /** 0 VU = 1.228 V rms of a sine; rise as published (see {@link PublishedFiguresTest}). */
  @Test
  void aNeedleOnTheMeterClipShowsVolumeUnits() {
    feed.with(Channel.M, t -> SignalFeed.sine(1.227652988, 1000).applyAsDouble(t) + 0.2);
    run(null, 10);
    // After 200 ms it is under way, at 399 ms it is 1.25 % over, then it rests at 0.
    assertThat(details.get(0).needleHighestV).isBetween(0.80 * 1.2277, 0.95 * 1.2277);
    double highest = details.stream().mapToDouble(one -> one.needleHighestV).max().orElseThrow();
    assertThat(highest / 1.227652988).isBetween(1.01, 1.02);
    assertThat(Decibels.ratio(details.get(9).needleMeanV, VuBallistics.ZERO_V))
        .isCloseTo(0, within(0.03));
    assertThat(details.get(9).meterDcV).isCloseTo(0.2, within(0.005));
  }

  @Test
  void aBurstOf300MsBringsTheNeedleTo99Percent() {
    feed.noise(0, 1).with(Channel.M, t -> t < 0.3 ? SignalFeed.sine(1, 1000).applyAsDouble(t) : 0);
    run(null, 5);
    double highest = details.stream().mapToDouble(one -> one.needleHighestV).max().orElseThrow();
    assertThat(highest).isBetween(0.985, 1.005);
  }

  @Test
  void aGapLetsTheNeedleBeginAnew() {
    feed.with(Channel.M, SignalFeed.sine(0.5, 1000));
    LevelMeter meter =
        new LevelMeter(
            Sheets.sheet(Sheets.levels(null)), feed.calibration(), windows::add, details::add);
    meter.accept(feed.block(0, 3200 * 4));
    meter.accept(feed.block(3200 * 6, 3200));
    assertThat(details.get(3).needleMeanV).isCloseTo(0.5, within(0.01));
    assertThat(details.get(4).needleMeanV).isLessThan(0.35);
  }

  @ParameterizedTest
  @ValueSource(doubles = {400, 402.2, 313})
  void splitsTheHeadIntoToneHarmonicsAndNoise(double hz) {
    feed.with(Channel.M, SignalFeed.sine(0.2, hz))
        .with(
            Channel.H,
            t ->
                SignalFeed.sine(2e-3, hz).applyAsDouble(t)
                    + SignalFeed.sine(8e-5, 2 * hz).applyAsDouble(t)
                    + SignalFeed.sine(6e-5, 3 * hz).applyAsDouble(t)
                    + SignalFeed.sine(5e-4, 50).applyAsDouble(t));
    run(hz, 20);
    double tone = 0;
    double harmonics = 0;
    double noise = 0;
    for (LevelDetail detail : details) {
      tone += detail.split.tone() / 20;
      harmonics += detail.split.harmonics() / 20;
      noise += detail.split.noise() / 20;
    }
    assertThat(Decibels.ratio(Math.sqrt(tone), 2e-3)).isCloseTo(0, within(0.05));
    // 80 and 60 uV together are 100 uV: 5 %.
    assertThat(Math.sqrt(harmonics / tone)).isCloseTo(0.05, within(0.0025));
    // Converter noise of 0.757 counts: 13.1 uV in the band; the hum beside it does not count.
    assertThat(Math.sqrt(noise)).isCloseTo(13.1e-6, within(1.5e-6));
  }

  @Test
  void aCleanToneHasNoHarmonics() {
    feed.with(Channel.M, SignalFeed.sine(0.2, 400)).with(Channel.H, SignalFeed.sine(2e-3, 400));
    run(400.0, 10);
    double share = 0;
    for (LevelDetail detail : details) {
      share += Math.sqrt(detail.split.harmonics() / detail.split.tone()) / 10;
    }
    assertThat(share).isLessThan(0.004);
  }

  /** IEC 61260-1, base ten (from memory): 1000 Hz from 891.25 to 1122.02 Hz; 63 Hz is 63.0957. */
  @Test
  void bandsAreThirdOctaves() {
    assertThat(ThirdOctaves.hz(12)).isCloseTo(1000, within(1e-9));
    assertThat(ThirdOctaves.hz(0)).isCloseTo(63.0957, within(1e-4));
    assertThat(ThirdOctaves.hz(14)).isCloseTo(1584.89, within(0.01));
    // Bins of 5 Hz: 895 to 1120.
    assertThat(ThirdOctaves.bins(12)).isEqualTo(46);
    double[] flat = new double[400];
    java.util.Arrays.fill(flat, 1);
    double[] powers = ThirdOctaves.powers(flat, 2);
    assertThat(powers[12]).isEqualTo(92);
  }

  @ParameterizedTest
  @CsvSource({"50, 44", "100, 44", "200, 41", "400, 38", "1131.37, 36.5", "3000, 35"})
  void theExpectedCurveIsReadOverTheLogarithmOfTheFrequency(double hz, double db) {
    JobSheet.Levels levels =
        new JobSheet.Levels(
            400.0,
            10.0,
            null,
            6.0,
            -30.0,
            500.0,
            null,
            List.of(
                new JobSheet.LevelPoint(100, 44),
                new JobSheet.LevelPoint(400, 38),
                new JobSheet.LevelPoint(1600, 36),
                new JobSheet.LevelPoint(1700, 35)));
    // 200 Hz lies half-way between 100 and 400, 1131.37 Hz three quarters between 400 and 1600.
    assertThat(ExpectedDistance.of(levels).db(hz)).isCloseTo(db, within(1e-4));
  }

  /**
   * Two kinds of speech through one equaliser: the plain distance differs, the distance from the
   * expected curve does not.
   */
  @ParameterizedTest
  @CsvSource({"0.1, 0.02, 0, 0", "0.02, 0.1, 0, 0", "0.1, 0.02, 9, 9", "0.02, 0.1, 9, 9"})
  void onSpeechTheCurveTellsALossFromAnotherVoice(
      double lowV, double highV, double lossDb, double expectedOver) {
    JobSheet.Levels levels =
        new JobSheet.Levels(
            400.0,
            10.0,
            null,
            6.0,
            -30.0,
            500.0,
            null,
            List.of(new JobSheet.LevelPoint(200, 44), new JobSheet.LevelPoint(1000, 34)));
    double loss = Math.pow(10, -lossDb / 20);
    feed.with(Channel.M, t -> voice(t, lowV, highV))
        .with(
            Channel.H,
            t ->
                loss * voice(t, lowV * Math.pow(10, -44 / 20.0), highV * Math.pow(10, -34 / 20.0)));
    LevelSums sums = new LevelSums(0.03, ExpectedDistance.of(levels), null);
    run(400.0, 25);
    for (int k = 0; k < 25; k++) {
      sums.add(windows.get(k), details.get(k));
    }
    assertThat(sums.speech().over().mean()).isCloseTo(expectedOver, within(0.5));
    assertThat(sums.speech().over().plusMinus()).isLessThan(0.5);
    // The plain distance of these two voices is 6 dB and more apart.
    double plain = sums.speech().distance().mean() - lossDb;
    assertThat(plain).isBetween(lowV > highV ? 42.0 : 33.5, lowV > highV ? 44.5 : 35.5);
  }

  /** A low and a high tone that swell with the rhythm of speech. */
  private static double voice(double t, double lowV, double highV) {
    double swell = 0.7 + 0.3 * Math.sin(2 * Math.PI * 1.3 * t);
    return swell
        * (SignalFeed.sine(lowV, 200).applyAsDouble(t)
            + SignalFeed.sine(highV, 1000).applyAsDouble(t));
  }

  /** Mean magnitude of a sine is 2/pi of its peak, also where four samples make a period. */
  @ParameterizedTest
  @ValueSource(doubles = {100, 400, 730, 1000, 1250, 1600})
  void samplesInBetweenLetARectifierBeRight(double hz) {
    for (double phase = 0; phase < 1.5; phase += 0.4) {
      Upsampler4 between = new Upsampler4(SAMPLES);
      double sum = 0;
      for (int n = 0; n < 4020; n += SAMPLES) {
        float[] samples = new float[SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
          samples[i] = (float) Math.sin(2 * Math.PI * hz * (n + i) / 4000 + phase);
        }
        float[][] quarters = between.at(samples);
        for (int i = 0; n > 0 && i < SAMPLES; i++) {
          for (float[] quarter : quarters) {
            sum += Math.abs(quarter[i]);
          }
        }
      }
      assertThat(sum / 16_000)
          .as("phase %s", phase)
          .isCloseTo(2 / Math.PI, within(hz > 1500 ? 0.03 : 0.01));
    }
  }
}
