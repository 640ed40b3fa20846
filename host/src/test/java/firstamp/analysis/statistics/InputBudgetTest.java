package firstamp.analysis.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.analysis.KeptCalibration;
import firstamp.emulate.box.BoxInput;
import firstamp.emulate.box.DrawnBox;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Monte Carlo over drawn boxes: the value built in lies within the stated interval. The method of
 * JCGM 101:2008 in its plainest form; the figures of the budget are written out in the class, the
 * boxes are drawn from the parts list.
 */
final class InputBudgetTest {
  private static final int BOXES = 500;
  private static final double[] LEVELS = {0.02, 0.2, 0.4, 0.65, 0.95};

  private static double full(Channel channel) {
    return switch (channel) {
      case I -> 12;
      case J -> 0.38;
      case V -> 58;
      case R1, R2, R3 -> 19;
      case H -> 0.0095;
      case M -> 2.35;
    };
  }

  /** Share of the boxes whose figure holds the truth at a level. */
  private static double holding(Channel channel, double value, boolean calibrated) {
    int within = 0;
    for (long seed = 1; seed <= BOXES; seed++) {
      SplittableRandom random = new SplittableRandom(seed * 31 + 7);
      double kelvin = 20 * random.nextDouble() - 10;
      DrawnBox box = DrawnBox.of(seed, kelvin, random.nextDouble());
      Calibration known = calibrated ? KeptCalibration.of(box.kept()) : Calibration.nominal();
      BoxInput input = box.now().get(channel.ordinal());
      double base = Calibration.basePerUnit(channel);
      double heated =
          channel == Channel.I
              ? 1 + (2 * random.nextDouble() - 1) * 75e-6 * 20 * 0.05 * value * value
              : 1;
      double counts = input.counts(value * heated * base);
      // The zero is taken with the base of the limiter forced: 0.35 mA flow through the shunt.
      double forced = channel == Channel.I || channel == Channel.J ? 0.35e-3 : 0;
      double rest = input.counts(forced * base);
      double measured =
          channel.ordinal() <= Channel.V.ordinal()
              ? known.scale(channel).perCount() * (counts - rest)
              : known.scale(channel).value(counts);
      double stated = new Uncertainty(known).expanded(channel, value, 0);
      within += Math.abs(measured - value) <= stated ? 1 : 0;
    }
    return within / (double) BOXES;
  }

  @ParameterizedTest
  @EnumSource(Channel.class)
  void theTruthLiesWithinTheStatedIntervalOfACalibratedBox(Channel channel) {
    StringBuilder row = new StringBuilder("| " + channel);
    for (double level : LEVELS) {
      double share = holding(channel, level * full(channel), true);
      row.append(String.format(Locale.ROOT, " | %.1f %%", 100 * share));
      assertThat(share).as(channel + " at " + level).isGreaterThanOrEqualTo(0.95);
    }
    System.out.println(row + " |");
  }

  /** The volts and rails of a new box are within 5 % and the zero that the parts allow. */
  @ParameterizedTest
  @EnumSource(
      value = Channel.class,
      names = {"I", "J", "V", "R1", "R2", "R3"})
  void theTruthLiesWithinTheFivePercentOfANewBox(Channel channel) {
    for (double level : LEVELS) {
      assertThat(holding(channel, level * full(channel), false))
          .as(channel + " at " + level)
          .isGreaterThanOrEqualTo(0.95);
    }
  }

  /**
   * JCGM 100:2008, H.1 (end gauge): components 25, 9.7, 2.9, 16.6 nm and 3.9, 6.7 nm (of 5.8 and
   * 3.9 with 6.7) give 32 nm; the same root of the sum of squares.
   */
  @Test
  void combinesAsTheEndGaugeOfTheGuide() {
    CombinedUncertainty combined =
        CombinedUncertainty.of(new double[] {25, 9.7, 2.9, 16.6}, new double[] {18, 25.6, 50, 2});
    assertThat(combined.standard()).isCloseTo(32, within(0.5));
    assertThat(combined.degrees()).isCloseTo(16, within(1.0));
  }

  /** The page shows the lines that are used, channel by channel. */
  @Test
  void thePageShowsTheBudget() throws Exception {
    String page = Files.readString(Path.of("docs", "verification.md"));
    for (Channel channel : Channel.values()) {
      StringBuilder row = new StringBuilder("| `" + channel + "` |");
      for (InputBudget.Line line : InputBudget.lines(channel, 0.5 * full(channel))) {
        row.append(
            String.format(Locale.ROOT, " %.3f %%, %.2f |", 100 * line.gainShare(), line.counts()));
      }
      assertThat(page).contains(row.toString());
    }
  }
}
