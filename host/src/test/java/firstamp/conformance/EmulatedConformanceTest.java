package firstamp.conformance;

import firstamp.emulate.EmulatedProbe;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Waveforms;
import firstamp.emulate.line.Pace;
import java.nio.file.Files;
import java.nio.file.Path;

/** On the emulated probe. */
final class EmulatedConformanceTest extends ProbeConformance {
  @Override
  Target target() {
    return (waveform, frontEnd, folder) -> {
      Path csv = Files.writeString(folder.resolve("w.csv"), waveform);
      Path front = Files.writeString(folder.resolve("f.json"), frontEnd);
      ProbeOptions options = ProbeOptions.of(1, Pace.MAX).withNoiseCounts(0);
      EmulatedProbe probe = Waveforms.open(csv, front, 12, options);
      return new Target.Started(probe, () -> {});
    };
  }
}
