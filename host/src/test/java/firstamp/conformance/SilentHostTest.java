package firstamp.conformance;

import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The probe's own limits with the host silent, on the emulated probe. */
class SilentHostTest {
  private final Target target = new EmulatedConformanceTest().target();
  @TempDir private Path folder;

  /** The corners of the table: the smallest and largest fault, right after closing and late. */
  @ParameterizedTest
  @EnumSource
  void everyFaultIsCutByTheProbeAlone(SilentHost.Known set) throws Exception {
    for (double factor : new double[] {1.2, 8}) {
      for (double at : new double[] {1, 100}) {
        SilentHost.cell(target, folder, set, factor, at);
      }
    }
  }

  @Tag("full")
  @Test
  void wholeTable() throws Exception {
    for (SilentHost.Known set : SilentHost.Known.values()) {
      for (double factor : SilentHost.FACTORS) {
        StringBuilder row =
            new StringBuilder("| ").append(set.words).append(" | ").append(factor).append(" |");
        for (double at : SilentHost.AT_MS) {
          SilentHost.Cut cut = SilentHost.cell(target, folder, set, factor, at);
          row.append(
              String.format(
                  Locale.ROOT,
                  " %.3g J, %.3g ms, %s |",
                  cut.joule(),
                  cut.ms(),
                  cut.cause().name().toLowerCase(Locale.ROOT).replace('_', '-')));
        }
        System.out.println(row);
      }
    }
  }
}
