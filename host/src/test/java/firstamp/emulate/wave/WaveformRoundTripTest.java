package firstamp.emulate.wave;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import firstamp.emulate.EmulatedProbe;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.TestHost;
import firstamp.emulate.Waveforms;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.line.Pace;
import firstamp.model.samples.Channel;
import firstamp.model.samples.SamplePlan;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.message.ProbeMessage;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a scenario wrote as a waveform file gives the same conversions when it is run again. */
final class WaveformRoundTripTest {
  private static final double UNTIL_S = 2;

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"healthy", "wire-short", "lost-head", "no-draw"})
  void conversionsOfTheFileAreThoseOfTheScenario(String name) throws Exception {
    Path csv = folder.resolve("run.csv");
    ProbeOptions silent = ProbeOptions.of(5, Pace.MAX).withNoiseCounts(0).withBox(BoxKind.IDEAL);
    TestHost first = run(Scenarios.open(name, silent.withRecording()));
    first.probe.saveWaveform(csv);
    TestHost second = run(Waveforms.open(csv, folder.resolve("run.front-end.json"), 12, silent));

    long firstClosed = SamplePlan.indexAt(first.tickOf(ProbeState.ON));
    long secondClosed = SamplePlan.indexAt(second.tickOf(ProbeState.ON));
    int length = name.equals("wire-short") ? (int) (1.2 * 16_000) : (int) (UNTIL_S * 16_000);
    int differing = 0;
    for (int n = 0; n < length; n++) {
      int a = first.counts[(int) (firstClosed - first.firstConversion) + n];
      int b = second.counts[(int) (secondClosed - second.firstConversion) + n];
      Channel channel = SamplePlan.channelAt(n);
      assertTrue(
          Math.abs(a - b) <= 1, name + " " + channel + " at " + n / 16.0 + " ms: " + a + ", " + b);
      differing += a == b ? 0 : 1;
    }
    // A tenth of a count of thinning moves about a tenth of the roundings where the value moves.
    assertTrue(differing < length / 10, differing + " of " + length + " differ by a count");
    assertEquals(
        first.all(ProbeMessage.Trip.class).isEmpty(),
        second.all(ProbeMessage.Trip.class).isEmpty());
    System.out.printf(
        "%s: %d kB, %d of %d conversions differ by one count%n",
        name, Files.size(csv) / 1000, differing, length);
  }

  @Test
  void theTripOfAWireShortFallsOnTheSameConversion() throws Exception {
    Path csv = folder.resolve("short.csv");
    ProbeOptions silent = ProbeOptions.of(5, Pace.MAX).withNoiseCounts(0).withBox(BoxKind.IDEAL);
    TestHost first = run(Scenarios.open("wire-short", silent.withRecording()));
    first.probe.saveWaveform(csv);
    TestHost second = run(Waveforms.open(csv, folder.resolve("short.front-end.json"), 12, silent));

    ProbeMessage.Trip a = first.last(ProbeMessage.Trip.class).orElseThrow();
    ProbeMessage.Trip b = second.last(ProbeMessage.Trip.class).orElseThrow();
    assertEquals(a.cause(), b.cause());
    assertEquals(
        a.decidedTickMicros() - first.tickOf(ProbeState.ON),
        b.decidedTickMicros() - second.tickOf(ProbeState.ON),
        1);
  }

  private static TestHost run(EmulatedProbe probe) throws Exception {
    TestHost host = new TestHost(probe);
    host.switchOn(TestHost.limits().build(), TestHost.LOOK);
    host.runUntil(host.tickOf(ProbeState.ON) / 1e6 + UNTIL_S + 0.1);
    assertEquals(0, host.rejected.size(), "frames rejected");
    return host;
  }
}
