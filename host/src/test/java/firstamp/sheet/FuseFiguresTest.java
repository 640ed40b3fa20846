package firstamp.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.JobSheet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Suggested limits against fuses as they are sold.
 *
 * <p>Typical melting I2t of time-lag 5 x 20 mm fuses (IEC 60127-2 sheet 5) at 10 times the rated
 * current, from one maker's data sheet: 1 A 1.1, 2 A 9.2, 3.15 A 33.7, 5 A 97.5 A2s. That a pulse
 * should stay under about 30 % of it is common practice of fuse makers' guides. The same data
 * sheet: 1.5 times the rated current is borne for at least 60 minutes, 4 times for at least 95 ms
 * (1 to 3.15 A) or 150 ms (above).
 */
class FuseFiguresTest {
  @ParameterizedTest
  @CsvSource({"1, 1.1, 95", "2, 9.2, 95", "3.15, 33.7, 95", "5, 97.5, 150"})
  void theProbeIsQuickerThanTheFuseAndTheFuseBearsWhatIsSuggested(
      double ratedA, double meltingA2s, double fourTimesMs) throws Exception {
    JobSheet.Limits limits =
        Defaults.fill(
                SheetReader.parse(
                        "s.json",
                        "{\"set\":{\"name\":\"Set\"},\"supply\":{\"nominalV\":12,\"fuseA\":"
                            + ratedA
                            + "}}")
                    .sheet())
            .limits();
    // The budget of surge heat opens the switch before the fuse melts, and ages it little.
    assertThat(limits.i2tA2s()).isLessThanOrEqualTo(0.3 * meltingA2s);
    assertThat(limits.i2tA2s()).isPositive();
    // What may flow for good is borne for hours, with room.
    assertThat(limits.runningA()).isLessThan(ratedA);
    // A surge that the probe lets pass is over before the fuse minds four times as much.
    assertThat(limits.inrushA()).isLessThanOrEqualTo(4 * ratedA);
    assertThat(limits.inrushMs()).isLessThan(fourTimesMs);
  }
}
