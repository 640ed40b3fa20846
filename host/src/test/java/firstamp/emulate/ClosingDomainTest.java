package firstamp.emulate;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.emulate.box.Box;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.circuit.CircuitBench;
import firstamp.emulate.circuit.Script;
import firstamp.emulate.circuit.SetValues;
import firstamp.emulate.line.Pace;
import firstamp.model.JobSheet;
import firstamp.model.ProbeHello;
import firstamp.model.SwitchState;
import firstamp.model.samples.Calibration;
import firstamp.pipeline.PlannedSettings;
import firstamp.pipeline.ProbeSettings;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.message.ProbeMessage;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Where the switch may close: half C times (volts less what the look charged) squared up to 2 J.
 * The capacitance is what the set really has; nothing of it is on the sheet, so the look alone
 * decides. The corners of the domain are those of the circuit's proof: 24 V 4700 uF, 40 V 2200 uF,
 * 52 V 1500 uF. The load is such that the look charges next to nothing of it: with R in the set and
 * 330 ohm before it (V - V R / (R + 330)) is left.
 */
class ClosingDomainTest {
  private static TestHost closed(double volts, double farad, double ohm, String more)
      throws Exception {
    JobSheet sheet =
        Defaults.fill(
            SheetReader.parse(
                    "s",
                    String.format(
                        Locale.ROOT,
                        "{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":%s%s},"
                            + "\"limits\":{\"runningA\":4,\"i2tA2s\":20}}",
                        volts,
                        more))
                .sheet());
    ProbeHello hello =
        new ProbeHello(
            1, 0, 1, 7, 1, SwitchState.OFF, 3, 0, 0, null, Calibration.nominal(), 10, 330, "made");
    PlannedSettings plan = new ProbeSettings(sheet).plan(hello, Set.of(1, 2, 3));
    SetValues set = new SetValues();
    set.emfV = volts;
    set.supplyLimitA = 20;
    set.idleOhm = ohm;
    set.filterOhm = 0.05;
    set.filterFarad = farad;
    set.dropperOhm = 1e9;
    set.motor = false;
    set.toneFromS = Double.POSITIVE_INFINITY;
    TestHost host =
        new TestHost(
            new EmulatedProbe(
                new CircuitBench(set, Script.NONE, 1),
                "domain",
                ProbeOptions.of(1, Pace.MAX),
                Box.of(BoxKind.SOLDERED, 1)));
    host.switchOn(plan.limits(), plan.look());
    host.runFor(5);
    return host;
  }

  private static boolean on(TestHost host) {
    return host.all(ProbeMessage.SwitchChanged.class).stream()
        .anyMatch(change -> change.state() == ProbeState.ON);
  }

  @ParameterizedTest
  @CsvSource({"24, 4700, 40", "40, 2200, 40", "52, 1500, 45", "12, 4700, 20", "5, 10000, 20"})
  void insideItTheSwitchClosesAndStaysClosed(double volts, double uF, double ohm) throws Exception {
    TestHost host = closed(volts, uF * 1e-6, ohm, "");
    assertThat(host.last(ProbeMessage.LookResult.class).orElseThrow().outcome())
        .isIn(LookOutcome.CLEAR, LookOutcome.LOW);
    assertThat(host.last(ProbeMessage.Trip.class)).isEmpty();
    assertThat(on(host)).isTrue();
  }

  /** 24 V: 21.4 V left of 24, 3.0 J of 13 mF; 40 V: 3.4 J; 52 V: 3.4 J. */
  @ParameterizedTest
  @CsvSource({"24, 13000, 40", "40, 5400, 40", "52, 3300, 45"})
  void outsideItTheLookRefuses(double volts, double uF, double ohm) throws Exception {
    TestHost host = closed(volts, uF * 1e-6, ohm, "");
    assertThat(host.last(ProbeMessage.LookResult.class).orElseThrow().outcome())
        .isEqualTo(LookOutcome.TOO_MUCH_CHARGE);
    assertThat(on(host)).isFalse();
  }

  /** A lamp in the lead holds it: what was told to be done must then be let. */
  @ParameterizedTest
  @CsvSource({"24, 13000, 40"})
  void throughALampItIsLet(double volts, double uF, double ohm) throws Exception {
    TestHost host = closed(volts, uF * 1e-6, ohm, ",\"through\":\"lamp\"");
    assertThat(on(host)).isTrue();
  }
}
