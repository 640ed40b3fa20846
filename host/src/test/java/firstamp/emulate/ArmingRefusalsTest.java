package firstamp.emulate;

import static firstamp.emulate.Decisions.NO_LOOK;
import static firstamp.emulate.Decisions.PLAIN;
import static firstamp.emulate.Decisions.SILENT;
import static firstamp.emulate.Decisions.host;
import static firstamp.emulate.Decisions.refusal;
import static firstamp.emulate.Decisions.run;
import static firstamp.emulate.Decisions.step;
import static firstamp.emulate.Decisions.trip;
import static org.junit.jupiter.api.Assertions.assertEquals;

import firstamp.emulate.line.Faults;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.Resend;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.LookParameters;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the emulated probe refuses to arm on or to change, and what it keeps over a reset. */
final class ArmingRefusalsTest {
  @Test
  void lostChassisClipIsATripAndRefusesArming() throws Exception {
    String frontEnd = "{\"at\":[{\"ms\":1500,\"chassisClip\":false}]}";
    TestHost host = run(step("supply_A", 5, 0.1, 0.1), frontEnd, TestHost.limits().build());
    assertEquals(TripCause.CHASSIS_CLIP, trip(host).cause());
    // Off at the sixth look in a row, 2 ms apart.
    assertEquals(1_511_000, host.tickOf(ProbeState.TRIPPED), 1_100);

    host.send(new HostMessage.Restore(trip(host).number(), NO_LOOK));
    host.runFor(0.1);
    assertEquals(RefusalReason.NO_CHASSIS_CLIP, refusal(host).reason());
  }

  @Test
  void latchNeedsItsNumberAndSurvivesAReset() throws Exception {
    TestHost host =
        host(step("supply_A", 0.5, 0.1, 1.5), PLAIN, SILENT.withFaults(Faults.NONE.withResetAt(2)));
    host.switchOn(TestHost.limits().build(), NO_LOOK);
    host.runUntil(1.5);
    int number = trip(host).number();
    assertEquals(1, number);

    host.send(new HostMessage.SwitchOn(NO_LOOK));
    host.runFor(0.1);
    assertEquals(RefusalReason.TRIP_LATCHED, refusal(host).reason());
    host.send(new HostMessage.Restore(number + 1, NO_LOOK));
    host.runFor(0.1);
    assertEquals(RefusalReason.WRONG_NUMBER, refusal(host).reason());
    host.send(new HostMessage.SendAgain(Resend.CAPTURE, number));
    host.runFor(0.1);
    assertEquals(32, host.all(ProbeMessage.Capture.class).size());

    host.runUntil(2.2);
    ProbeMessage.Hello hello = host.last(ProbeMessage.Hello.class).orElseThrow();
    assertEquals(2, hello.bootId());
    assertEquals(number, hello.latchedTrip());
    assertEquals(ProbeState.TRIPPED, hello.state());

    host.send(new HostMessage.Restore(number, NO_LOOK));
    host.runFor(0.1);
    assertEquals(RefusalReason.NO_LIMITS, refusal(host).reason());
    host.send(new HostMessage.SetLimits(TestHost.limits().build()));
    host.send(new HostMessage.Restore(number, NO_LOOK));
    host.runFor(0.6);
    assertEquals(ProbeState.ON, host.last(ProbeMessage.SwitchChanged.class).orElseThrow().state());
  }

  @Test
  void stuckSwitchIsFoundBeforeTheNextArming() throws Exception {
    TestHost host =
        host(
            step("supply_A", 9, 0.1, 0.1), PLAIN, SILENT.withFaults(Faults.NONE.withStuckSwitch()));
    host.switchOn(TestHost.limits().build(), NO_LOOK);
    host.send(new HostMessage.SwitchOff(SwitchCause.USER));
    host.runFor(0.1);
    host.send(new HostMessage.SwitchOn(NO_LOOK));
    host.runFor(1);

    ProbeMessage.LookResult result = host.last(ProbeMessage.LookResult.class).orElseThrow();
    assertEquals(firstamp.protocol.codes.LookOutcome.CURRENT_WHILE_OFF, result.outcome());
    assertEquals(false, result.closes());
  }

  /** The switch comes on with its gate volts: nothing is joined, and the box says what is wrong. */
  @Test
  void limiterThatDoesNotHoldIsFoundBeforeAnythingIsJoined() throws Exception {
    for (LookParameters look : List.of(NO_LOOK, TestHost.look(12, false))) {
      TestHost host =
          host(
              step("supply_A", 9, 0.1, 0.1),
              PLAIN,
              SILENT.withFaults(Faults.NONE.withFailedLimiter(1)));
      host.open(StreamKind.RAW);
      host.send(new HostMessage.SetLimits(TestHost.limits().build()));
      host.send(new HostMessage.SwitchOn(look));
      host.runFor(4);

      ProbeMessage.LookResult result = host.last(ProbeMessage.LookResult.class).orElseThrow();
      assertEquals(firstamp.protocol.codes.LookOutcome.LIMITER, result.outcome());
      assertEquals(false, result.closes());
      assertEquals(0, result.pairs());
      for (ProbeMessage.SwitchChanged change : host.all(ProbeMessage.SwitchChanged.class)) {
        assertEquals(true, change.state() != ProbeState.ON && change.state() != ProbeState.LOOK);
      }
      host.send(new HostMessage.StatusRequest());
      host.runFor(0.2);
      assertEquals(
          0,
          host.last(ProbeMessage.Status.class).orElseThrow().inputs().bits()
              & firstamp.protocol.values.Inputs.LIMITER_TESTED);
    }
  }

  /**
   * It held before the look and does not behind it: the set gets no more than the look's current.
   */
  @Test
  void limiterThatFailsBehindTheLookIsFoundBeforeTheSwitchCloses() throws Exception {
    TestHost host =
        host(
            step("supply_A", 9, 0.1, 0.1),
            PLAIN,
            SILENT.withFaults(Faults.NONE.withFailedLimiter(2)));
    host.open(StreamKind.RAW);
    host.send(new HostMessage.SetLimits(TestHost.limits().build()));
    host.send(new HostMessage.SwitchOn(TestHost.look(12, false)));
    host.runFor(4);

    ProbeMessage.LookResult result = host.last(ProbeMessage.LookResult.class).orElseThrow();
    assertEquals(firstamp.protocol.codes.LookOutcome.LIMITER, result.outcome());
    assertEquals(false, result.closes());
    assertEquals(true, result.pairs() > 0);
    List<ProbeState> states =
        host.all(ProbeMessage.SwitchChanged.class).stream()
            .map(ProbeMessage.SwitchChanged::state)
            .toList();
    assertEquals(List.of(ProbeState.CHECK, ProbeState.LOOK, ProbeState.OFF), states);
  }

  @Test
  void currentAfterOpeningIsAFailedSelfTest() throws Exception {
    TestHost host =
        host(
            step("supply_A", 9, 0.1, 0.1), PLAIN, SILENT.withFaults(Faults.NONE.withStuckSwitch()));
    host.switchOn(TestHost.limits().build(), NO_LOOK);
    host.send(new HostMessage.SwitchOff(SwitchCause.USER));
    host.runFor(1);
    host.send(new HostMessage.SwitchOn(NO_LOOK));
    host.runFor(0.1);

    assertEquals(RefusalReason.SELF_TEST, refusal(host).reason());
    assertEquals(1 << 7, refusal(host).detail());
  }

  @Test
  void damagedCalibrationRefusesArming() throws Exception {
    TestHost host =
        host(
            step("supply_A", 9, 0.1, 0.1),
            PLAIN,
            SILENT.withFaults(Faults.NONE.withDamagedCalibration()));
    host.open(StreamKind.RAW);
    host.send(new HostMessage.SetLimits(TestHost.limits().build()));
    host.send(new HostMessage.SwitchOn(NO_LOOK));
    host.runFor(0.1);

    assertEquals(RefusalReason.CALIBRATION_DAMAGED, refusal(host).reason());
  }

  @Test
  void limitsNeverGetWiderWhileOn() throws Exception {
    TestHost host = host(step("supply_A", 9, 0.1, 0.1), PLAIN, SILENT);
    host.switchOn(TestHost.limits().build(), NO_LOOK);
    host.send(new HostMessage.SetLimits(TestHost.limits().running(83, 0).build()));
    host.runFor(0.1);

    assertEquals(RefusalReason.LIMIT_GETS_WIDER, refusal(host).reason());
    assertEquals(3, refusal(host).detail());
  }
}
