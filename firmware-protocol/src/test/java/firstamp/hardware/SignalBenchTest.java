package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Gains, corners and likeness of the inputs, in ngspice. Limits: wire-format.md and the hardware
 * guide.
 */
@ToolCondition.Needs("ngspice")
class SignalBenchTest {
  private static final double COUNT = 4.096 / 1024;

  @TempDir Path folder;

  @Test
  void headAndMeterHaveTheGainOfTheirRange() throws Exception {
    Map<String, Double> r = new Bench("signal").run(folder);
    // 20 mV and 5 V make 4.096 V: 46.23 and -1.73 dB
    assertThat(r.get("h400")).isCloseTo(46.23, within(0.1));
    assertThat(r.get("m400")).isCloseTo(-1.73, within(0.1));
  }

  @Test
  void headAndMeterAreAlikeBelowOneKilohertzWithTheWorstParts() throws Exception {
    for (double way : new double[] {0, 1, -1}) {
      Bench bench = new Bench("signal");
      for (String ref : new String[] {"R92", "R93"}) {
        bench.scale(ref, 1 + 0.01 * way);
      }
      for (String ref : new String[] {"C86", "C87"}) {
        bench.scale(ref, 1 + 0.01 * way);
      }
      bench.scale("C83", 1 + 0.01 * way).scale("C84", 1 + 0.01 * way);
      bench.scale("R94", 1 + 0.001 * way).scale("R95", 1 - 0.001 * way);
      for (String ref : new String[] {"R125", "R126", "C121", "C123", "C124"}) {
        bench.scale(ref, 1 - 0.01 * way);
      }
      bench.scale("R127", 1 - 0.001 * way).scale("R129", 1 + 0.001 * way);
      Map<String, Double> r = bench.run(folder.resolve("way" + way));
      double at400 = r.get("h400") - r.get("m400");
      for (int hz : new int[] {30, 50, 100, 200, 700, 1000}) {
        double here = r.get("h" + hz) - r.get("m" + hz);
        assertThat(here - at400).as("H against M at %d Hz", hz).isCloseTo(0, within(0.1));
      }
    }
  }

  @Test
  void biasIsSixtyDecibelsDownFromThirtyEightKilohertz() throws Exception {
    Map<String, Double> r = new Bench("signal").run(folder);
    assertThat(r.get("h400") - r.get("h38k")).isGreaterThan(60);
    assertThat(r.get("h400") - r.get("h80k")).isGreaterThan(60);
    assertThat(r.get("h400") - r.get("h1600")).isLessThan(1);
  }

  @Test
  void lessThanAFifthOfADecibelIsLostAtRippleFrequency() throws Exception {
    Map<String, Double> r = new Bench("signal").run(folder);
    for (String input : new String[] {"r", "v", "j", "i"}) {
      assertThat(r.get(input + "_1") - r.get(input + "_120")).as(input).isBetween(-0.01, 0.2);
    }
  }

  @Test
  void coarseCurrentIsFastEnoughForTheTrip() throws Exception {
    // 1 / (2 pi 14 kHz) = 11 us, of the 170 us that 830 us leave to the millisecond
    assertThat(new Bench("signal").run(folder).get("i_corner")).isGreaterThan(10_000);
  }

  @Test
  void rangesEndWhereTheContractSays() throws Exception {
    Map<String, Double> r = new Bench("ranges").run(folder);
    // I and J: 12.5 A and 400 mA make 4.096 V, within 1 %
    assertThat((r.get("i_12a") - r.get("i_0")) / 12 * 12.5).isCloseTo(4.096, within(0.041));
    assertThat((r.get("j_200ma") - r.get("j_0")) * 2).isCloseTo(4.096, within(0.041));
    // 61.594 V make 4.096 V, so that 60 V fit above the pedestal
    assertThat((r.get("v_57") - r.get("v_0")) / 57 * 61.594).isCloseTo(4.096, within(0.041));
    assertThat((r.get("r_high") - r.get("r_low")) / 0.98).isCloseTo(4.096, within(0.041));
    assertThat(r.get("r_0")).isCloseTo(2.048, within(0.041));
    assertThat((r.get("m_high") - r.get("m_low")) / 0.98).isCloseTo(4.096, within(0.041));
    assertThat(r.get("m_0")).isCloseTo(2.048, within(0.041));
    assertThat(r.get("h_0")).isCloseTo(2.048, within(0.041));
    assertThat(r.get("i_0") / COUNT).isBetween(19.0, 21.0);
    assertThat(r.get("j_0") / COUNT).isBetween(19.0, 22.0);
    assertThat(r.get("v_0") / COUNT).isBetween(9.0, 11.0);
  }

  @Test
  void aNeighbourAtFullScaleMovesNoInputByHalfACount() throws Exception {
    Map<String, Double> r = new Bench("neighbour").run(folder);
    for (String input : new String[] {"i", "j", "v", "r", "h", "m"}) {
      double moved = (r.get(input + "_held") - r.get(input + "_rest")) / COUNT;
      // rails, head and meter are driven by an amplifier, which takes no notice
      boolean filtered = "ijv".contains(input);
      assertThat(moved).as("%s, counts", input).isBetween(filtered ? 0.001 : -0.01, 0.5);
    }
  }

  @Test
  void theBiasClipTellsBiasFromAudio() throws Exception {
    double at38 = new Bench("bias-clip").with("hz", "38k").run(folder.resolve("a")).get("reading");
    double at80 = new Bench("bias-clip").with("hz", "80k").run(folder.resolve("b")).get("reading");
    double audio =
        new Bench("bias-clip")
            .with("hz", "1k")
            .with("amplitude", "1.414")
            .run(folder.resolve("c"))
            .get("reading");
    assertThat(at38).isGreaterThan(15);
    assertThat(at80).isGreaterThan(15);
    assertThat(audio).isLessThan(0.3);
  }
}
