package firstamp.emulate;

import firstamp.emulate.line.Pace;
import firstamp.emulate.wave.FrontEndFile;
import firstamp.emulate.wave.WaveformFile;
import firstamp.model.samples.SamplePlan;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.TripLimits;
import java.io.IOException;

/** Drawn waveforms for the emulated probe, and what it decided on them. */
final class Decisions {
  static final LookParameters NO_LOOK = TestHost.look(12, true);
  static final String PLAIN = "{\"look\":{\"supplyV\":12,\"loadOhm\":200,\"loadUf\":500}}";
  static final ProbeOptions SILENT = ProbeOptions.of(1, Pace.MAX).withNoiseCounts(0);

  private Decisions() {}

  static TestHost host(String csv, String frontEnd, ProbeOptions options) throws IOException {
    return new TestHost(
        Waveforms.open(
            WaveformFile.parse(csv, "test.csv"),
            FrontEndFile.parse(frontEnd, "test.json", 12),
            "test",
            options));
  }

  static TestHost run(String csv, String frontEnd, TripLimits limits) throws IOException {
    TestHost host = host(csv, frontEnd, SILENT);
    host.switchOn(limits, NO_LOOK);
    host.runFor(2.5);
    return host;
  }

  static ProbeMessage.Trip trip(TestHost host) {
    return host.last(ProbeMessage.Trip.class).orElseThrow();
  }

  /** Conversions from closing to the deciding one. */
  static long decided(TestHost host) {
    return SamplePlan.indexAt(trip(host).decidedTickMicros())
        - SamplePlan.indexAt(host.tickOf(ProbeState.ON));
  }

  static String step(String column, double fromS, double low, double high) {
    return "t_s,supply_V,"
        + column
        + "\n0,12,"
        + low
        + "\n"
        + fromS
        + ",12,"
        + low
        + "\n"
        + (fromS + 1e-6)
        + ",12,"
        + high
        + "\n10,12,"
        + high
        + "\n";
  }

  static ProbeMessage.Refused refusal(TestHost host) {
    return host.last(ProbeMessage.Refused.class).orElseThrow();
  }
}
