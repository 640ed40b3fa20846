package firstamp.conformance;

import firstamp.link.SerialProbePort;
import firstamp.model.TimeSource;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/** On a board, {@code -Dprobe.port=PORT}: what needs nothing on its clips. */
@EnabledIfSystemProperty(
    named = "probe.port",
    matches = ".+",
    disabledReason = "no board: -Dprobe.port=PORT is not given")
@Tag("board")
final class BoardConformanceTest extends QuietConformance {
  @Override
  Target target() {
    return (waveform, frontEnd, folder) ->
        new Target.Started(
            SerialProbePort.open(
                System.getProperty("probe.port"),
                SerialProbePort.BAUD_RAW,
                folder.resolve("lock"),
                TimeSource.system()),
            () -> {});
  }

  @Override
  boolean startsFresh() {
    return false;
  }
}
