package firstamp.emulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import firstamp.emulate.box.Box;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.line.Pace;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.ProbeMessage;
import org.junit.jupiter.api.Test;

/** What the probe itself does with the faulty sets. */
final class ScenarioTripTest {
  @Test
  void wireShortTripsWithinAMillisecondOfTheTouch() throws Exception {
    TestHost host = new TestHost(Scenarios.open("wire-short", 3, Pace.MAX));
    host.switchOn(TestHost.limits().build(), TestHost.LOOK);
    double closed = host.tickOf(ProbeState.ON) / 1e6;
    host.runUntil(closed + 2);

    ProbeMessage.Trip trip = host.last(ProbeMessage.Trip.class).orElseThrow();
    // The probe counts its own clock.
    double rate = 1 + Box.of(BoxKind.SOLDERED, 3).clockShare();
    double openS = (host.tickOf(ProbeState.TRIPPED) / 1e6 - closed) / rate;
    assertEquals(1.2, openS, 0.001);
    assertTrue(openS > 1.2 - 1e-6, "tripped before the touch");
    assertTrue(
        trip.cause() == TripCause.RUNNING || trip.cause() == TripCause.HARD_SHORT, trip.toString());
    assertEquals(16, host.all(ProbeMessage.Capture.class).size());
    assertEquals(3, host.all(ProbeMessage.Trip.class).size(), "sent at once, after 50 and 200 ms");
  }

  @Test
  void lookShortNeverCloses() throws Exception {
    TestHost host = new TestHost(Scenarios.open("look-short", 3, Pace.MAX));
    host.switchOn(TestHost.limits().build(), TestHost.LOOK);

    ProbeMessage.LookResult look = host.last(ProbeMessage.LookResult.class).orElseThrow();
    assertEquals(LookOutcome.SHORT, look.outcome());
    assertTrue(
        host.all(ProbeMessage.SwitchChanged.class).stream()
            .noneMatch(change -> change.state() == ProbeState.ON),
        "the switch closed");
  }

  @Test
  void nothingJoinedIsSeenByTheLook() throws Exception {
    TestHost host = new TestHost(Scenarios.open("no-draw", 3, Pace.MAX));
    host.switchOn(TestHost.limits().build(), TestHost.LOOK);

    assertEquals(
        LookOutcome.NOTHING_JOINED,
        host.last(ProbeMessage.LookResult.class).orElseThrow().outcome());
    assertEquals(ProbeState.ON, host.last(ProbeMessage.SwitchChanged.class).orElseThrow().state());
  }
}
