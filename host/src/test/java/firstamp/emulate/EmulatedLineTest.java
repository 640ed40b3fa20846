package firstamp.emulate;

import static firstamp.emulate.Decisions.host;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import firstamp.emulate.line.Faults;
import firstamp.emulate.line.Pace;
import firstamp.protocol.codes.StreamKind;
import java.io.IOException;
import org.junit.jupiter.api.Test;

/** The line to the emulated probe: same seed, damaged frames, another version, a pulled cable. */
final class EmulatedLineTest {
  @Test
  void sameSeedSameBytes() throws Exception {
    byte[][] runs = new byte[2][];
    for (int i = 0; i < 2; i++) {
      TestHost host = new TestHost(Scenarios.open("wire-short", 7, Pace.MAX));
      host.switchOn(TestHost.limits().build(), TestHost.LOOK);
      host.runFor(1.5);
      runs[i] = host.bytes.toByteArray();
    }
    org.junit.jupiter.api.Assertions.assertArrayEquals(runs[0], runs[1]);
    assertTrue(runs[0].length > 50_000, "bytes of the run");
  }

  @Test
  void badLineLosesFramesButInventsNone() throws Exception {
    TestHost host =
        new TestHost(
            Scenarios.open(
                "healthy",
                ProbeOptions.of(3, Pace.MAX).withFaults(Faults.NONE.withLine(1e-4, 1e-4, 1e-4))));
    host.open(StreamKind.RAW);
    host.runFor(3);

    assertTrue(host.rejected.size() > 3, host.rejected.size() + " rejected");
    assertTrue(host.lostFrames > 3, host.lostFrames + " lost");
  }

  @Test
  void foreignVersionIsSeenAsSuch() throws Exception {
    TestHost host =
        new TestHost(
            Scenarios.open(
                "healthy",
                ProbeOptions.of(3, Pace.MAX).withFaults(Faults.NONE.withProtocolVersion(1))));
    host.open(StreamKind.NONE);

    assertTrue(host.frames.isEmpty());
    assertTrue(
        host.rejected.stream()
            .allMatch(r -> r.reason() == firstamp.protocol.frame.RejectReason.WRONG_VERSION),
        host.rejected.toString());
    assertTrue(host.rejected.size() >= 2, "hello and answers");
  }

  @Test
  void pulledCableEndsTheLineWithinAFrame() throws Exception {
    TestHost host =
        new TestHost(
            Scenarios.open(
                "healthy",
                ProbeOptions.of(3, Pace.MAX).withFaults(Faults.NONE.withCableOutAt(0.5))));
    host.open(StreamKind.RAW);

    org.junit.jupiter.api.Assertions.assertThrows(IOException.class, () -> host.runFor(1));
    assertEquals(0.5, host.nowS(), 0.002);
  }
}
