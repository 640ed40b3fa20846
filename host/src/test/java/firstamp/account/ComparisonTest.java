package firstamp.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.Sheets;
import firstamp.analysis.SignalFeed;
import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.PowerUpFigures;
import firstamp.analysis.statistics.Tukey;
import firstamp.model.JobSheet;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.ReadingReducer;
import org.junit.jupiter.api.Test;

class ComparisonTest {
  private static Evidence evidence(double idleA, double railV, double tauS, long seed) {
    JobSheet sheet = Sheets.sheet(null, Sheets.rail(1, 8.2));
    SignalFeed feed =
        new SignalFeed()
            .noise(0.7, seed)
            .amps(t -> idleA + 1.5 * Math.exp(-t / 0.02))
            .with(Channel.V, t -> 12)
            .rail(1, t -> railV * (1 - Math.exp(-t / tauS)));
    PowerUpFigures figures = new PowerUpFigures(sheet, feed.calibration(), 330, 10);
    ReadingReducer reducer = new ReadingReducer(figures::onReading);
    figures.closedAt(0);
    for (long at = 0; at < 12 * 16_000; at += 16_000) {
      ConversionBlock block = feed.block(at, 16_000);
      figures.accept(block);
      reducer.accept(at, block.counts(), 0, 16_000);
    }
    return figures.evidence();
  }

  private static Comparison.Difference find(Comparison comparison, String figure) {
    return comparison.differences().stream()
        .filter(difference -> difference.figure().equals(figure))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void seesASmallChangeOfOneProbe() {
    Comparison comparison =
        Comparison.of(evidence(0.118, 8.2, 0.1, 1), evidence(0.121, 8.2, 0.1, 2), true);
    Comparison.Difference amps = find(comparison, "steadyA");
    assertThat(amps.difference()).isCloseTo(0.003, within(0.0002));
    assertThat(amps.plusMinus()).isLessThan(0.0005);
    assertThat(amps.significant()).isTrue();
    assertThat(amps.p()).isLessThan(0.001);
    assertThat(find(comparison, "steadyV").significant()).isFalse();
    assertThat(find(comparison, "inrushPeakA").significant()).isFalse();
    assertThat(comparison.parting()).isNull();
  }

  @Test
  void betweenTwoProbesThatAreNotCalibratedItIsNone() {
    Comparison comparison =
        Comparison.of(evidence(0.118, 8.2, 0.1, 1), evidence(0.121, 8.2, 0.1, 2), false);
    assertThat(find(comparison, "steadyA").significant()).isFalse();
    // 2.5 % of 0.118 and of 0.121 A, 95 %.
    assertThat(find(comparison, "steadyA").plusMinus()).isCloseTo(0.0083, within(0.0003));
  }

  /** At 5 mA of leakage at 20 C a room 10 degrees warmer draws 5 mA more: no change of the set. */
  @Test
  void aWarmerRoomIsNoChangeOfASetWithGermaniumParts() {
    Evidence cool = evidence(0.018, 8.2, 0.1, 1);
    Evidence warm = evidence(0.021, 8.2, 0.1, 2);
    assertThat(find(Comparison.of(cool, warm, true), "steadyA").significant()).isTrue();
    Comparison told = Comparison.of(cool, warm, true, 0.005);
    assertThat(find(told, "steadyA").significant()).isFalse();
    // 5 mA as a rectangle, 95 %: 1.96 times 2.89 mA.
    assertThat(find(told, "steadyA").plusMinus()).isCloseTo(0.00566, within(0.0002));
    assertThat(ComparisonWords.ENGLISH.leakage(told)).contains("raises").contains("by 5 mA;");
    assertThat(find(Comparison.of(cool, evidence(0.038, 8.2, 0.1, 2), true, 0.005), "steadyA"))
        .matches(Comparison.Difference::significant);
  }

  @Test
  void coursesOfASmallSetPartAtAFewMilliamperes() {
    Comparison.Parting parting =
        Comparison.of(evidence(0.010, 8.2, 0.1, 1), evidence(0.016, 8.2, 0.1, 2), true).parting();
    assertThat(parting.what()).isEqualTo("supply current");
    assertThat(parting.atMs()).isLessThan(300);
  }

  @Test
  void ofThreeTheOddOneStandsOut() {
    MultipleComparison several =
        MultipleComparison.of(
            java.util.List.of(
                evidence(0.118, 8.2, 0.1, 1),
                evidence(0.118, 8.2, 0.1, 2),
                evidence(0.122, 8.2, 0.1, 3)));
    MultipleComparison.Figure amps = several.figures().get(0);
    assertThat(amps.key()).isEqualTo("steadyA");
    assertThat(amps.pairs()).extracting(Tukey.Pair::significant).containsExactly(false, true, true);
    assertThat(amps.pairs().get(1).difference()).isCloseTo(0.004, within(0.0002));
    assertThat(several.figures())
        .extracting(MultipleComparison.Figure::key)
        .containsExactly("steadyA", "steadyV", "finalV");
  }

  @Test
  void namesTheMomentWhereTheCoursesPart() {
    Comparison comparison =
        Comparison.of(evidence(0.118, 8.2, 0.1, 1), evidence(0.118, 8.2, 0.3, 2), true);
    assertThat(comparison.parting().what()).isEqualTo("rail");
    assertThat(comparison.parting().rail()).isEqualTo(1);
    assertThat(comparison.parting().atMs()).isBetween(0.0, 30.0);
    assertThat(find(comparison, "tauMs").significant()).isTrue();
    assertThat(find(comparison, "tauMs").difference()).isCloseTo(200, within(5.0));
  }

  @Test
  void leavesOutWhatOneOfThemLacks() {
    Evidence whole = evidence(0.118, 8.2, 0.1, 1);
    Evidence never =
        new PowerUpFigures(
                Sheets.sheet(null, Sheets.rail(1, 8.2)), new SignalFeed().calibration(), 330, 10)
            .evidence();
    assertThat(Comparison.of(whole, never, true).differences()).isEmpty();
    assertThat(Comparison.of(never, whole, true).parting()).isNull();
  }
}
