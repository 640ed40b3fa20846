package firstamp.conformance;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A few cells of the same table on the firmware in the simulated chip, in real time. */
@Tag("chip")
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class ChipSilentHostTest {
  private final ChipConformanceTest chip = new ChipConformanceTest();
  @TempDir private Path folder;

  @BeforeEach
  void tools() {
    chip.tools();
  }

  @ParameterizedTest
  @CsvSource({"FUSE, 1.2, 1", "FUSE, 8, 10", "RADIO, 2, 10", "NOTHING, 4, 900"})
  void everyFaultIsCutByTheProbeAlone(SilentHost.Known set, double factor, double atMs)
      throws Exception {
    SilentHost.Cut cut = SilentHost.cell(chip.target(), folder, set, factor, atMs);
    System.out.printf(
        java.util.Locale.ROOT,
        "chip: %s, %.1f x at %.0f ms: %.3g J, %.3g ms, %s%n",
        set.words,
        factor,
        atMs,
        cut.joule(),
        cut.ms(),
        cut.cause());
  }
}
