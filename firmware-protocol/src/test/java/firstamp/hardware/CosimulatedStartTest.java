package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.hardware.Cosimulation.Result;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.TripLimits;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The start allowance with the flashed program in the loop and the host silent: it says nothing
 * after the command that closes the switch. A motor of 10 ohm starts beside a set of 57 mA; its
 * current falls to 0.15 A with a time constant of 80 ms. Running limit 0.49 A, start limit 1.59 A
 * for 300 ms (40 and 130 counts of 12.2 mA).
 */
@Tag("full")
@ToolCondition.Needs(Cosimulation.PROGRAM)
class CosimulatedStartTest {
  private static final String SWITCH = "PB0";
  private static final double STARTS_MS = 800;

  @TempDir Path folder;

  private Cosimulation motor(String current) {
    TripLimits limits =
        TripLimits.builder().running(40, 0).start(130, 300).silenceMillis(10_000).build();
    return Cosimulation.powerUp(folder)
        .calibrated(Cosimulation.CALIBRATED)
        .at(92, new HostMessage.SetLimits(limits))
        .with("cset", "10u")
        .with("ilim", "1000")
        .joined("BMOTOR setp setm I=V(setp,setm)/12*(" + current + ")");
  }

  private static String startAt(double seconds, String stalled) {
    return String.format(
        "(time > %1$s ? 0.15 + (%2$s - 0.15) * exp(-(time - %1$s) / 0.08) : 0)", seconds, stalled);
  }

  private static double offMs(Result result) {
    return result.pins().stream()
        .filter(change -> change.pin().equals(SWITCH) && change.level().equals("low"))
        .mapToDouble(Cosimulation.PinChange::ms)
        .max()
        .orElse(Double.NaN);
  }

  private static void assertTripped(Result result, TripCause cause, double fromMs, double toMs) {
    assertThat(result.of(ProbeMessage.Trip.class))
        .extracting(ProbeMessage.Trip::cause)
        .isNotEmpty()
        .containsOnly(cause);
    assertThat(offMs(result)).isBetween(fromMs, toMs);
    assertThat(result.courses().get("amps").last()).isCloseTo(0, within(0.005));
  }

  @Test
  void aMotorMayStart() throws Exception {
    Result result = motor(startAt(STARTS_MS / 1000, "1.2")).run(1200);
    assertThat(result.of(ProbeMessage.Trip.class)).isEmpty();
    assertThat(result.courses().get("amps").highest()).isGreaterThan(1.1);
    assertThat(result.courses().get("amps").last()).isCloseTo(0.057 + 0.157, within(0.02));
  }

  @Test
  void aMotorThatStandsIsSwitchedOffWhenTheTimeIsOver() throws Exception {
    Result result = motor("(time > 0.8 ? 1.2 : 0)").run(1120);
    assertTripped(result, TripCause.RUNNING, STARTS_MS + 300, STARTS_MS + 304);
  }

  @Test
  void aStartAboveItsLimitIsCutAtOnce() throws Exception {
    Result result = motor("(time > 0.8 ? 2.4 : 0)").run(810);
    assertTripped(result, TripCause.START, STARTS_MS, STARTS_MS + 3);
  }

  @Test
  void aSecondStartWithinFiveSecondsIsNone() throws Exception {
    Result result = motor(startAt(0.8, "1.2") + " + " + startAt(1.3, "1.2")).run(1310);
    assertTripped(result, TripCause.RUNNING, 1300, 1303);
  }
}
