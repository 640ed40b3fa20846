package firstamp.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.log.PowerUpEntry;
import firstamp.log.PowerUpHeader;
import firstamp.model.JobSheet;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import org.junit.jupiter.api.Test;

/** Limits of a trial end low too: never a second without a running limit. */
class TrialLimitsTest {
  private static JobSheet.Limits tight(int settleMs, PowerUpEntry good) throws Exception {
    JobSheet sheet =
        Defaults.fill(
            SheetReader.parse(
                    "s",
                    "{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":12,\"idleA\":0.118,\"fuseA\":1},"
                        + "\"limits\":{\"inrushA\":4.5,\"inrushMs\":60,\"runningA\":1,\"i2tA2s\":0.3},"
                        + "\"rails\":[{\"input\":1,\"nominalV\":8.2,\"settleMs\":"
                        + settleMs
                        + "}]}")
                .sheet());
    return TrialLimits.tighten(sheet, good).limits();
  }

  /** 1.2 * 0.118 A = 0.1416 A. */
  @Test
  void theSurgeTimeEndsAtTwoHundredMilliseconds() throws Exception {
    assertThat(tight(80, null).inrushMs()).isEqualTo(160);
    assertThat(tight(500, null).inrushMs()).isEqualTo(200);
    assertThat(tight(500, null).runningA()).isCloseTo(0.1416, within(1e-9));
    assertThat(tight(500, null).i2tA2s()).isEqualTo(0.3);
  }

  /**
   * Rails that settle within 300 ms, surge 1.84 A over 0.118 A: 1.722 * e^(-4 * 200 / 300) = 0.1197
   * A still charge when the surge time is over; 1.2 * (0.118 + 0.1197) = 0.285 A. Within 100 ms
   * nothing does.
   */
  @Test
  void whatStillChargesIsAllowedFor() throws Exception {
    PowerUpEntry good =
        new PowerUpEntry(
            1,
            "u",
            null,
            "S",
            0,
            1L,
            PowerUpHeader.Stream.RAW,
            "emulated",
            true,
            "normal",
            "time",
            "{\"supply\":{\"steadyA\":0.118,\"inrushPeakA\":1.84}}",
            false,
            false);
    assertThat(tight(300, good).runningA()).isCloseTo(0.285, within(1e-3));
    assertThat(tight(100, good).runningA()).isCloseTo(0.1416, within(1e-9));
    assertThat(tight(300, good).inrushA()).isCloseTo(2.208, within(1e-9));
  }
}
