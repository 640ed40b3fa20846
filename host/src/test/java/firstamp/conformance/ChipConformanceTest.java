package firstamp.conformance;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** On the firmware in the simulated chip, in real time. */
@Tag("chip")
@Timeout(value = 60, unit = TimeUnit.SECONDS)
final class ChipConformanceTest extends ProbeConformance {
  @BeforeEach
  void tools() {
    ChipProcess.assumeTools();
  }

  @Override
  Target target() {
    return (waveform, frontEnd, folder) -> {
      Path front = Files.writeString(folder.resolve("f.json"), frontEnd);
      return ChipProcess.start(
          waveform, folder, List.of("--front-end", front.toString(), "--noise-counts", "0"));
    };
  }
}
