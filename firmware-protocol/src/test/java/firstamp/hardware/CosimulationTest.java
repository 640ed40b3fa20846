package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import firstamp.hardware.Cosimulation.Result;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.message.ProbeMessage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The flashed program and the drawn circuit together. What is expected comes from Ohm's law and
 * from how the box has to behave.
 */
@ToolCondition.Needs(Cosimulation.PROGRAM)
class CosimulationTest {
  private static final double VOLTS = 12;
  private static final double OHM = 210;
  private static final String SWITCH = "PB0";

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"0", "1"})
  void lightSetStaysOnAndIsMeasuredAsOhmsLawSays(String chassis) throws Exception {
    Result result =
        powerUp()
            .with("cset", "1u")
            .with("chassis", chassis)
            .calibrated(Cosimulation.CALIBRATED)
            .run(780);
    assertThat(result.firstMs(SWITCH, "high")).isBetween(630.0, 720.0);
    assertThat(result.of(ProbeMessage.Trip.class)).isEmpty();
    double amperes = VOLTS / OHM;
    assertThat(result.courses().get("amps").last()).isCloseTo(amperes, within(0.01 * amperes));
    // One count of J is 0.39 mA, one of V 60 mV; parts are nominal here.
    assertThat(lastMean(result, 19) * 0.4 / 1024 - 0.00852).isCloseTo(amperes, within(0.001));
    assertThat(lastMean(result, 3) * 61.594 / 1024 - 0.605).isCloseTo(VOLTS, within(0.15));
  }

  @Test
  void shortWhileOnIsHeldByTheLimiterAndCutWithinAMillisecond() throws Exception {
    Result result =
        powerUp()
            .with("cset", "1u")
            .with("ilim", "1000")
            .with("shortat", "0.76")
            .with("shortohm", "0.05")
            .calibrated(Cosimulation.CALIBRATED)
            .option("--fine-at-ms", "760")
            .run(790);
    assertThat(result.of(ProbeMessage.Trip.class)).isNotEmpty();
    assertThat(lastMs(result, "low")).isBetween(760.0, 761.1);
    assertThat(result.courses().get("amps").highest()).isBetween(10.0, 30.0);
    assertThat(result.courses().get("amps").last()).isCloseTo(0, within(0.005));
  }

  @Test
  void newBoxArmsWithItsOwnPedestal() throws Exception {
    Result result = powerUp().with("cset", "1u").run(740);
    List<ProbeMessage.LookResult> looks = result.of(ProbeMessage.LookResult.class);
    assertThat(looks).isNotEmpty();
    assertThat(looks.get(0).outcome()).isEqualTo(LookOutcome.CLEAR);
    assertThat(result.firstMs(SWITCH, "high")).isBetween(630.0, 720.0);
  }

  @Test
  void surgeIntoAHealthyReservoirIsHeldAndIsNoTrip() throws Exception {
    Result result = powerUp().with("ilim", "1000").calibrated(Cosimulation.CALIBRATED).run(800);
    assertThat(result.of(ProbeMessage.Trip.class)).isEmpty();
    assertThat(result.firstMs(SWITCH, "high")).isBetween(630.0, 720.0);
    assertThat(result.courses().get("amps").highest()).isBetween(10.0, 16.0);
  }

  @Test
  void stoppedClockLetsTheGateDieWithinTwoMilliseconds() throws Exception {
    Result result =
        powerUp()
            .with("cset", "1u")
            .calibrated(Cosimulation.CALIBRATED)
            .option("--stop-clock-at-ms", "760")
            .run(762);
    assertThat(result.firstMs(SWITCH, "high")).isBetween(630.0, 720.0);
    assertThat(lastMs(result, "low")).as("the pin itself stands still").isLessThan(700);
    assertThat(result.courses().get("amps").last()).isCloseTo(0, within(0.005));
  }

  @Test
  void jawOffTheChassisIsRefused() throws Exception {
    Result result =
        powerUp()
            .with("cset", "1u")
            .with("jaw", "1e9")
            .calibrated(Cosimulation.CALIBRATED)
            .run(700);
    assertThat(result.firstMs(SWITCH, "high")).isNaN();
    assertThat(result.courses().get("amps").highest()).isLessThan(0.02);
  }

  @Test
  void nodeThatTheCircuitLacksIsNamed() throws Exception {
    Cosimulation unknown = powerUp().option("--watch", "nowhere");
    assertThatThrownBy(() -> unknown.run(10))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("exit 70")
        .hasMessageContaining("no node \"nowhere\"");
  }

  @Test
  void badPinsScriptAndCircuitAreRefusedWithTheirLine() throws Exception {
    Path pins = Files.writeString(folder.resolve("pins"), "PD2 PUMPA\nPD2 PUMPB\n");
    Path host = Files.writeString(folder.resolve("script"), "10 00ff\n5 00\n");
    Path good = Cosimulation.BENCH.resolve("pins.txt");
    assertThatThrownBy(() -> tried(pins, host)).hasMessageContaining("PD2 is joined twice");
    Files.writeString(pins, "PX1 SWP\n");
    assertThatThrownBy(() -> tried(pins, host))
        .hasMessageContaining("exit 65")
        .hasMessageContaining("line 1: expected a pin");
    assertThatThrownBy(() -> tried(good, host)).hasMessageContaining("line 2: expected rising");
    Files.writeString(host, "10 0g\n");
    assertThatThrownBy(() -> tried(good, host)).hasMessageContaining("no bytes in hexadecimal");
    Files.writeString(host, "");
    assertThatThrownBy(() -> tried(good, host)).hasMessageContaining("cannot be simulated");
  }

  /** A circuit that is none, with these two files. */
  private void tried(Path pins, Path host) throws IOException, InterruptedException {
    Path circuit = Files.writeString(folder.resolve("bad.cir"), "Rnothing a b nonsense\n");
    Cosimulation.output(
        List.of(
            Cosimulation.PROGRAM,
            "--elf",
            "firmware/build/probe.elf",
            "--circuit",
            circuit.toString(),
            "--pins",
            pins.toString(),
            "--for-ms",
            "10",
            "--host",
            host.toString()));
  }

  private Cosimulation powerUp() {
    return Cosimulation.powerUp(folder);
  }

  private static double lastMs(Result result, String level) {
    return result.pins().stream()
        .filter(change -> change.pin().equals(SWITCH) && change.level().equals(level))
        .mapToDouble(Cosimulation.PinChange::ms)
        .max()
        .orElseThrow();
  }

  /** Mean counts of one slot of the plan over the last conversions of a run. */
  private static double lastMean(Result result, int slot) {
    List<ProbeMessage.Raw> blocks = result.of(ProbeMessage.Raw.class);
    long sum = 0;
    long count = 0;
    for (ProbeMessage.Raw block : blocks.subList(blocks.size() - 5, blocks.size())) {
      for (int i = 0; i < block.counts().length; i++) {
        if ((block.firstSlot() + i) % 32 == slot) {
          sum += block.counts()[i];
          count++;
        }
      }
    }
    return (double) sum / count;
  }
}
