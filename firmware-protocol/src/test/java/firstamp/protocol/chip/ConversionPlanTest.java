package firstamp.protocol.chip;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.HostMessage;
import firstamp.protocol.StreamKind;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every conversion that the firmware streams is the one that was fed in, under the right channel,
 * none is lost, and the chip keeps within its budgets. Noise makes neighbours differ, so that a
 * shifted plan cannot pass.
 */
@Tag("chip")
class ConversionPlanTest {
  private static final String WAVEFORM =
      "t_s,supply_V,supply_A,rail1_V,rail2_V,rail3_V\n0,0,0,0,0,0\n";
  private static final int LONGEST_INTERRUPTS_OFF_CYCLES = 85;
  private static final int SMALLEST_STACK_GAP_BYTES = 256;

  @TempDir Path folder;

  @Test
  void rawIsWhatWasFedInForAMinute() throws Exception {
    ChipMeasures measures = run(StreamKind.RAW, 60, false);
    assertRaw(measures, 60);
    assertThat(measures.number("", "busyShare")).isLessThanOrEqualTo(0.70);
  }

  @Test
  void rawIsWhatWasFedInWhileTheReceiveLineIsFull() throws Exception {
    ChipMeasures measures = run(StreamKind.RAW, 10, true);
    assertRaw(measures, 10);
    assertThat(measures.number("", "busiestWindowShare")).isLessThanOrEqualTo(0.95);
  }

  /** The budget that is not met yet: 0.915 was measured in the busiest 200 ms. */
  @Test
  @Tag("full")
  void keepsATenthOfTheTimeWhileTheReceiveLineIsFull() throws Exception {
    ChipMeasures measures = run(StreamKind.RAW, 10, true);
    assertThat(measures.number("", "busiestWindowShare")).isLessThanOrEqualTo(0.90);
  }

  @Test
  void reducedIsTheSumOfWhatWasFedIn() throws Exception {
    ChipMeasures measures = run(StreamKind.REDUCED, 20, false);
    assertThat(measures.number("conversions", "readingsCompared")).isGreaterThan(1_900);
    assertThat(measures.number("conversions", "readingsWrong")).isZero();
    assertBudgets(measures);
  }

  @Test
  @Tag("full")
  void rawIsWhatWasFedInForTenMinutes() throws Exception {
    assertRaw(run(StreamKind.RAW, 600, false), 600);
  }

  private ChipMeasures run(StreamKind kind, int seconds, boolean flooded) throws Exception {
    Path file = folder.resolve("measures.json");
    List<String> options =
        List.of(
            "--flat-out",
            "--for-ms",
            Integer.toString(seconds * 1000 + 500),
            "--noise-counts",
            "20",
            "--measure",
            file.toString());
    try (ChipProbe probe = ChipProbe.start(folder, WAVEFORM, options)) {
      probe.hello();
      probe.command(new HostMessage.StreamRequest(kind));
      while (probe.isRunning()) {
        if (flooded) {
          probe.sendQuietly(new HostMessage.Heartbeat());
        } else {
          probe.awaitEnd(100);
        }
      }
      assertThat(probe.finish().bytesLost()).isZero();
    }
    return new ChipMeasures(file);
  }

  private static void assertRaw(ChipMeasures measures, int seconds) throws IOException {
    // 16 000 a second; half a second goes into the start, the last blocks are still under way.
    assertThat(measures.number("conversions", "compared")).isGreaterThan(seconds * 16_000 - 8_000);
    assertThat(measures.number("conversions", "wrong")).as("wrong: %s", measures).isZero();
    assertThat(measures.number("conversions", "mislabelled")).as("mislabelled").isZero();
    assertThat(measures.number("conversions", "notFound")).as("not found").isZero();
    assertThat(measures.number("conversions", "missedStarts")).as("missed starts").isZero();
    assertThat(measures.number("conversions", "offPlan")).as("off plan").isZero();
    assertBudgets(measures);
  }

  private static void assertBudgets(ChipMeasures measures) {
    assertThat(measures.number("interruptsOff", "longestCycles"))
        .as("interrupts off: %s", measures)
        .isLessThanOrEqualTo(LONGEST_INTERRUPTS_OFF_CYCLES);
    assertThat(measures.number("stack", "gapBytes"))
        .as("stack gap")
        .isGreaterThanOrEqualTo(SMALLEST_STACK_GAP_BYTES);
  }
}
