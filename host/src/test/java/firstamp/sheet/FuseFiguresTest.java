package firstamp.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.JobSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Suggested limits against fuses as they are sold.
 *
 * <p>Gate times of 5 x 20 mm time-lag fuses, IEC 60127-2 sheet 3, from memory: 2.75 times the rated
 * current 600 ms to 10 s, 4 times 150 ms to 3 s, 10 times 20 to 300 ms. Typical melting I2t at 10
 * times the rated current, data sheets of time-lag fuses, from memory: 1 A 1.1, 2 A 9.2, 3.15 A
 * 33.7, 5 A 97.5 A2s. Quick-acting ones (sheet 2) melt from about 0.5 times the rating squared on,
 * from memory.
 */
class FuseFiguresTest {
  private static JobSheet.Limits limits(double ratedA) throws SheetException {
    return Defaults.fill(
            SheetReader.parse(
                    "s.json",
                    "{\"set\":{\"name\":\"Set\"},\"supply\":{\"nominalV\":12,\"fuseA\":"
                        + ratedA
                        + "}}")
                .sheet())
        .limits();
  }

  /** Milliseconds until a steady current has used the budget up. */
  private static double budgetLastsMs(JobSheet.Limits limits, double ampere) {
    return 1000 * limits.i2tA2s() / (ampere * ampere - limits.runningA() * limits.runningA());
  }

  @ParameterizedTest
  @CsvSource({"1, 1.1", "2, 9.2", "3.15, 33.7", "5, 97.5"})
  void theProbeIsQuickerThanTheFuseAndTheFuseBearsWhatIsSuggested(double ratedA, double meltingA2s)
      throws Exception {
    JobSheet.Limits limits = limits(ratedA);
    // The I2t budget of the inrush opens the switch before the fuse melts.
    assertThat(limits.i2tA2s()).isPositive().isLessThanOrEqualTo(0.5 * meltingA2s);
    // What may flow for good is borne for hours, with room.
    assertThat(limits.runningA()).isLessThan(ratedA);
    // The shortest times in which a time-lag fuse may blow, and the probe before them.
    assertThat(budgetLastsMs(limits, 2.75 * ratedA)).isLessThan(600);
    assertThat(budgetLastsMs(limits, 4 * ratedA)).isLessThan(150);
    assertThat(budgetLastsMs(limits, 10 * ratedA)).isLessThan(20);
    assertThat(limits.inrushMs()).isLessThan(600);
  }

  /** 1.8 A for 10 ms through a slow fuse of 1 A: 0.0324 A2s, 3 % of what melts it. */
  @Test
  void anOrdinarySurgeIsLeftToTheFuseAndToTheBudget() throws Exception {
    JobSheet.Limits limits = limits(1);
    assertThat(limits.inrushA()).isGreaterThan(1.8);
    assertThat(limits.i2tA2s()).isGreaterThan(1.8 * 1.8 * 0.010);
    assertThat(1.8 * 1.8 * 0.010).isLessThan(0.03 * 1.1);
  }

  @ParameterizedTest
  @CsvSource({"0.49, false", "0.51, true"})
  void aBudgetThatAQuickFuseDoesNotStandIsWarnedOf(double squares, boolean warned)
      throws Exception {
    JobSheet sheet =
        SheetReader.parse(
                "s.json",
                "{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":12,\"fuseA\":1},"
                    + "\"limits\":{\"i2tA2s\":"
                    + squares
                    + "}}")
            .sheet();
    assertThat(
            SheetWarnings.of(sheet).stream()
                .anyMatch(text -> text.english().contains("withstands")))
        .isEqualTo(warned);
  }
}
