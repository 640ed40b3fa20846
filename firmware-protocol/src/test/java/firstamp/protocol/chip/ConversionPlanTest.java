package firstamp.protocol.chip;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.TripLimits;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
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
      "t_s,supply_V,supply_A,rail1_V,rail2_V,rail3_V\n0,12,0.1,8,5,-5\n";
  private static final LookParameters NO_LOOK = new LookParameters(true, 300, 563, 5, 51, 61, 236);

  /** Every limit is watched, none is passed. */
  private static final TripLimits LIMITS =
      TripLimits.builder()
          .silenceMillis(10_000)
          .inrush(20, 800)
          .running(400, 900)
          .i2t(10_000_000, 400)
          .rail(1, new RailWindow(0, 1000))
          .overV(900)
          .confirmCurrent(3, 2)
          .confirmVolts(3, 3)
          .build();

  static final int LONGEST_INTERRUPTS_OFF_CYCLES = 95;
  private static final int LONGEST_TICK_WAIT_CYCLES = 85;
  private static final int SMALLEST_STACK_GAP_BYTES = 256;

  @TempDir Path folder;

  @Test
  void rawIsWhatWasFedInForAMinute() throws Exception {
    ChipMeasures measures = run(StreamKind.RAW, 60, false, false);
    assertRaw(measures, 60);
    assertThat(measures.number("", "busyShare")).isLessThanOrEqualTo(0.70);
  }

  @Test
  void rawIsWhatWasFedInWhileTheSwitchIsOn() throws Exception {
    ChipMeasures measures = run(StreamKind.RAW, 10, false, true);
    assertRaw(measures, 10);
    assertThat(measures.number("", "busyShare")).isLessThanOrEqualTo(0.70);
  }

  @Test
  void rawIsWhatWasFedInWhileTheReceiveLineIsFull() throws Exception {
    ChipMeasures measures = run(StreamKind.RAW, 10, true, false);
    assertRaw(measures, 10);
    assertThat(measures.number("", "busiestWindowShare")).isLessThanOrEqualTo(0.90);
  }

  @Test
  void rawIsWhatWasFedInWhileTheReceiveLineIsFullAndTheSwitchIsOn() throws Exception {
    ChipMeasures measures = run(StreamKind.RAW, 10, true, true);
    assertRaw(measures, 10);
    assertThat(measures.number("", "busiestWindowShare")).isLessThanOrEqualTo(0.90);
  }

  @Test
  void reducedIsTheSumOfWhatWasFedIn() throws Exception {
    ChipMeasures measures = run(StreamKind.REDUCED, 20, false, false);
    assertThat(measures.number("conversions", "readingsCompared")).isGreaterThan(1_900);
    assertThat(measures.number("conversions", "readingsWrong")).isZero();
    assertBudgets(measures);
  }

  @Test
  @Tag("full")
  void rawIsWhatWasFedInForTenMinutes() throws Exception {
    assertRaw(run(StreamKind.RAW, 600, false, false), 600);
  }

  private ChipMeasures run(StreamKind kind, int seconds, boolean flooded, boolean on)
      throws Exception {
    Path file = folder.resolve("measures.json");
    List<String> options =
        List.of(
            "--flat-out",
            "--for-ms",
            Integer.toString(seconds * 1000 + 500),
            "--noise-counts",
            // With the switch on, what is tested before the closing must not take noise for a
            // fault.
            on ? "0.7" : "20",
            "--measure",
            file.toString());
    try (ChipProbe probe = ChipProbe.start(folder, WAVEFORM, options)) {
      probe.hello();
      probe.command(new HostMessage.SetLimits(LIMITS));
      probe.command(new HostMessage.StreamRequest(kind));
      if (on) {
        probe.command(new HostMessage.SwitchOn(NO_LOOK));
      }
      while (probe.isRunning()) {
        if (flooded) {
          probe.sendQuietly(new HostMessage.Heartbeat());
        } else {
          probe.awaitEnd(100);
        }
      }
      ChipEvents events = probe.finish();
      assertThat(events.bytesLost()).isZero();
      assertThat(events.lastSupply()).isEqualTo(on ? "on" : "");
      assertThat(probe.record().holes()).as("holes in the stream").isEmpty();
    }
    ChipMeasures measures = new ChipMeasures(file);
    System.out.printf(
        Locale.ROOT,
        "%s %d s%s%s: busy %.2f, busiest 200 ms %.2f, interrupts off %.0f cycles, the tick"
            + " waits %.0f, stack gap %.0f%n",
        kind,
        seconds,
        flooded ? ", receive line full" : "",
        on ? ", switch on" : "",
        measures.number("", "busyShare"),
        measures.number("", "busiestWindowShare"),
        measures.number("interruptsOff", "longestCycles"),
        measures.number("conversions", "longestJitterCycles"),
        measures.number("stack", "gapBytes"));
    return measures;
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
    // From where the grid of the first start puts a conversion to where it began.
    assertThat(measures.number("conversions", "longestJitterCycles"))
        .as("the tick waits: %s", measures)
        .isLessThanOrEqualTo(LONGEST_TICK_WAIT_CYCLES);
    assertThat(measures.number("stack", "gapBytes"))
        .as("stack gap")
        .isGreaterThanOrEqualTo(SMALLEST_STACK_GAP_BYTES);
  }
}
