package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.hardware.Cosimulation.Result;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.ProbeMessage;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Faults of the circuit and of its surroundings with the flashed program in the loop: refused
 * before the switch closes, or opened by the program.
 */
@Tag("full")
@ToolCondition.Needs(Cosimulation.PROGRAM)
class CosimulatedFaultsTest {
  private static final String SWITCH = "PB0";

  @TempDir Path folder;

  @ParameterizedTest(name = "{0}: {2}")
  @CsvSource({
    "channel for RUN stuck high,            RBRK RUNF 5F 1,            LIMITER",
    "amplifier of I dead,                   RBRK n_R31_1 CH 50m,       NO_ZERO",
    "amplifier of J dead,                   RBRK n_R43_2 FG 50m,       NO_ZERO",
    "switch leaks 20 mA,                    RBRK IN1 SH 600,           CURRENT_WHILE_OFF",
    "second supply across the set,          RBRK J1 J2 100,            VOLTS_STAY",
    "earth path from the chassis to plus,   RBRK sp0 0 0.2,            NO_SUPPLY",
    "set shorted,                           RBRK setp setm 0.5,        SHORT"
  })
  void isRefusedBeforeTheSwitchCloses(String what, String part, LookOutcome outcome)
      throws Exception {
    Result result =
        powerUp()
            .with("cset", "1u")
            .with("rset", "1000")
            .joined(part)
            .run(outcome == LookOutcome.VOLTS_STAY ? 2600 : 760);
    assertThat(result.firstMs(SWITCH, "high")).as(what).isNaN();
    assertThat(result.of(ProbeMessage.LookResult.class))
        .as(what)
        .extracting(ProbeMessage.LookResult::outcome)
        .containsExactly(outcome);
  }

  @Test
  void halfAPumpIsSeenAndOpensTheSwitchAfterTwentyMilliseconds() throws Exception {
    Result result = powerUp().with("cset", "1u").joined("RBRK PAF 5F 1").run(720);
    assertThat(result.of(ProbeMessage.Trip.class))
        .extracting(ProbeMessage.Trip::cause)
        .containsOnly(TripCause.SELF_TEST);
    assertThat(onForMs(result)).isBetween(18.0, 26.0);
    assertThat(result.courses().get("amps").last()).isCloseTo(0, within(0.005));
  }

  /**
   * The look's current flows through R1 too, but a set without a capacitor gives it nothing to
   * compare with: only the volts behind the closed switch do.
   */
  @ParameterizedTest(name = "{0} ohm, {1} joined")
  @CsvSource({"100, 50m", "300, 50m", "1000, 50m", "300, 1m", "1000, 1m"})
  void bridgedShuntIsRefusedOrOpensTheSwitch(String ohm, String bridge) throws Exception {
    Result result =
        powerUp().with("cset", "1u").with("rset", ohm).joined("RBRK SH FG " + bridge).run(760);
    boolean refused = Double.isNaN(result.firstMs(SWITCH, "high"));
    if (!refused) {
      assertThat(result.of(ProbeMessage.Trip.class))
          .extracting(ProbeMessage.Trip::cause)
          .containsOnly(TripCause.SELF_TEST);
      assertThat(onForMs(result)).isLessThan(12);
    }
  }

  @ParameterizedTest
  @CsvSource({"60", "1000"})
  void aWholeShuntStaysOn(String ohm) throws Exception {
    Result result = powerUp().with("cset", "1u").with("rset", ohm).run(760);
    assertThat(result.firstMs(SWITCH, "high")).isBetween(560.0, 715.0);
    assertThat(result.of(ProbeMessage.Trip.class)).isEmpty();
  }

  @Test
  void bouncingWireIsCutLikeAShort() throws Exception {
    Result result =
        powerUp()
            .with("cset", "1u")
            .with("ilim", "1000")
            .with("shortat", "0.72")
            .with("shortohm", "0.02")
            .with("bounce", "0.2m")
            .option("--fine-at-ms", "720")
            .run(740);
    assertThat(result.of(ProbeMessage.Trip.class)).isNotEmpty();
    assertThat(lastMs(result, "low")).isBetween(720.0, 724.0);
    assertThat(result.courses().get("amps").last()).isCloseTo(0, within(0.005));
  }

  @Test
  void lostFiveVoltsLetTheGateDie() throws Exception {
    Result result =
        powerUp()
            .with("cset", "1u")
            .joined("BPULL n_C31_1 n_C31_2 I=time > 0.72 ? V(n_C31_1,n_C31_2)/0.05 : 0")
            .run(724);
    assertThat(result.firstMs(SWITCH, "high")).isBetween(630.0, 715.0);
    assertThat(result.courses().get("amps").last()).isCloseTo(0, within(0.005));
  }

  @Test
  void largestReservoirOnAStiffSupplyIsHeldAndIsNoTrip() throws Exception {
    Result result =
        powerUp()
            .with("cset", "4700u")
            .with("esrset", "30m")
            .with("ilim", "1000")
            .with("chassis", "1")
            .run(760);
    assertThat(result.firstMs(SWITCH, "high")).isBetween(630.0, 720.0);
    assertThat(result.of(ProbeMessage.Trip.class)).isEmpty();
    assertThat(result.courses().get("amps").highest()).isBetween(10.0, 16.0);
  }

  private Cosimulation powerUp() {
    return Cosimulation.powerUp(folder).calibrated(Cosimulation.CALIBRATED);
  }

  private static double onForMs(Result result) {
    return lastMs(result, "low") - result.firstMs(SWITCH, "high");
  }

  private static double lastMs(Result result, String level) {
    return result.pins().stream()
        .filter(change -> change.pin().equals(SWITCH) && change.level().equals(level))
        .mapToDouble(Cosimulation.PinChange::ms)
        .max()
        .orElseThrow();
  }
}
