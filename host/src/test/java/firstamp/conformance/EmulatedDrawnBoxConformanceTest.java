package firstamp.conformance;

import firstamp.emulate.EmulatedProbe;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Waveforms;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.line.Pace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.params.provider.Arguments;

/** On the emulated probe. */
final class EmulatedDrawnBoxConformanceTest extends DrawnBoxConformance {
  @Override
  Target.Started start(String waveform, BoxKind kind, long seed, Path folder) throws IOException {
    Path csv = Files.writeString(folder.resolve("w.csv"), waveform);
    ProbeOptions options = ProbeOptions.of(seed, Pace.MAX).withBox(kind);
    EmulatedProbe probe = Waveforms.open(csv, null, 12, options);
    return new Target.Started(probe, () -> {});
  }

  @Override
  Stream<Arguments> boxes() {
    return both(1, 8);
  }
}
