package firstamp.conformance;

import firstamp.emulate.box.BoxKind;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;

/** On the firmware in the simulated chip, in real time, with drawn boxes before it. */
abstract class ChipDrawnBoxConformance extends DrawnBoxConformance {
  @BeforeEach
  void tools() {
    ChipProcess.assumeTools();
  }

  @Override
  Target.Started start(String waveform, BoxKind kind, long seed, Path folder) throws IOException {
    List<String> more = new ArrayList<>(List.of("--seed", Long.toString(seed)));
    if (kind == BoxKind.NEW) {
      more.add("--new-box");
    }
    return ChipProcess.start(waveform, folder, more);
  }
}
