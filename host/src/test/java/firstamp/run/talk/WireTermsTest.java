package firstamp.run.talk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import firstamp.model.Look;
import firstamp.model.OffCause;
import firstamp.model.PedalJob;
import firstamp.model.SelfTestWords;
import firstamp.model.SwitchState;
import firstamp.model.Trip;
import firstamp.model.TripCause;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.protocol.codes.CalibrationState;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.SelfTestFault;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.values.Check;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;

/** Every number on the wire in the host's terms, as the tables of wire-format.md list them. */
class WireTermsTest {
  private static <T> Map<Integer, T> of(int from, int to, IntFunction<T> term) {
    Map<Integer, T> found = new TreeMap<>();
    for (int code = from; code <= to; code++) {
      found.put(code, term.apply(code));
    }
    return found;
  }

  @Test
  void states() {
    assertThat(of(0, 4, code -> WireTerms.state(Check.code(1, ProbeState.class, code))))
        .isEqualTo(
            Map.of(
                0, SwitchState.OFF,
                1, SwitchState.CHECK,
                2, SwitchState.LOOK,
                3, SwitchState.ON,
                4, SwitchState.TRIPPED))
        .hasSize(SwitchState.values().length);
  }

  @Test
  void whoChangedTheSwitch() {
    assertThat(of(0, 10, code -> WireTerms.cause(Check.code(2, SwitchCause.class, code))))
        .isEqualTo(
            Map.ofEntries(
                Map.entry(0, OffCause.START),
                Map.entry(1, OffCause.USER),
                Map.entry(2, OffCause.RULE),
                Map.entry(3, OffCause.TIME),
                Map.entry(4, OffCause.SIGNAL),
                Map.entry(5, OffCause.BUTTON),
                Map.entry(6, OffCause.PEDAL),
                Map.entry(7, OffCause.TRIP),
                Map.entry(8, OffCause.LOOK),
                Map.entry(9, OffCause.CHASSIS),
                Map.entry(10, OffCause.SILENCE)))
        .hasSize(OffCause.values().length);
  }

  @Test
  void calibrations() {
    assertThat(of(0, 2, code -> WireTerms.calibration(Check.code(1, CalibrationState.class, code))))
        .isEqualTo(
            Map.of(
                0, Calibration.Kind.BLANK,
                1, Calibration.Kind.VALID,
                2, Calibration.Kind.DAMAGED))
        .hasSize(Calibration.Kind.values().length);
  }

  @Test
  void pedals() {
    assertThat(WireTerms.pedal(PedalJob.OFF).code()).isZero();
    assertThat(WireTerms.pedal(PedalJob.HOLD_TO_RUN).code()).isEqualTo(1);
    assertThat(WireTerms.pedal(PedalJob.MARK).code()).isEqualTo(2);
    assertThat(PedalJob.values()).hasSize(3);
  }

  @Test
  void faultsOfTheSelfTest() {
    for (SelfTestFault fault : SelfTestFault.values()) {
      List<String> said =
          fault == SelfTestFault.WATCHDOG_START
              ? List.of()
              : List.of(fault.name().toLowerCase(Locale.ROOT).replace('_', '-'));
      assertThat(SelfTestWords.ids(1 << fault.code())).isEqualTo(said);
    }
    Trip trip = new Trip(1, TripCause.SELF_TEST, 1, 100, 0, 0, 0, 1023, 0, 0, 0, 0, 200);
    assertThat(SelfTestWords.ids(trip.selfTestBits())).containsExactly("currents");
  }

  @Test
  void tripCauses() {
    assertThat(of(1, 11, TripCause::ofWire))
        .isEqualTo(
            Map.ofEntries(
                Map.entry(1, TripCause.INRUSH),
                Map.entry(2, TripCause.RUNNING),
                Map.entry(3, TripCause.I2T),
                Map.entry(4, TripCause.HARD_SHORT),
                Map.entry(5, TripCause.OVER_VOLTAGE),
                Map.entry(6, TripCause.HOST_SILENCE),
                Map.entry(7, TripCause.CHASSIS_CLIP),
                Map.entry(8, TripCause.SELF_TEST),
                Map.entry(9, TripCause.MEAN),
                Map.entry(10, TripCause.PEAK),
                Map.entry(11, TripCause.START)))
        .hasSize(TripCause.values().length);
    for (TripCause cause : TripCause.values()) {
      assertThat(TripCause.ofWire(cause.wireCode())).isEqualTo(cause);
    }
    assertThatThrownBy(() -> TripCause.ofWire(12)).hasMessageContaining("trip cause 12");
  }

  @Test
  void findingsOfTheLook() {
    Map<Integer, Look.Result> found = of(0, 9, Look.Result::ofWire);
    found.putAll(of(16, 19, Look.Result::ofWire));
    assertThat(found)
        .isEqualTo(
            Map.ofEntries(
                Map.entry(0, Look.Result.CLEAR),
                Map.entry(1, Look.Result.LOW),
                Map.entry(2, Look.Result.NOTHING_JOINED),
                Map.entry(3, Look.Result.SKIPPED),
                Map.entry(4, Look.Result.SHORT),
                Map.entry(5, Look.Result.REVERSED),
                Map.entry(6, Look.Result.TOO_HIGH),
                Map.entry(7, Look.Result.NO_SUPPLY),
                Map.entry(8, Look.Result.TOO_MUCH_CHARGE),
                Map.entry(9, Look.Result.SHUNT),
                Map.entry(16, Look.Result.CURRENT_WHILE_OFF),
                Map.entry(17, Look.Result.VOLTS_STAY),
                Map.entry(18, Look.Result.NO_ZERO),
                Map.entry(19, Look.Result.LIMITER)))
        .hasSize(Look.Result.values().length);
  }

  /** The channels' order is a table of the wire format too: I J V R1 R2 R3 H M. */
  @Test
  void channels() {
    assertThat(of(0, 7, Channel::of))
        .isEqualTo(
            Map.of(
                0, Channel.I,
                1, Channel.J,
                2, Channel.V,
                3, Channel.R1,
                4, Channel.R2,
                5, Channel.R3,
                6, Channel.H,
                7, Channel.M));
  }
}
