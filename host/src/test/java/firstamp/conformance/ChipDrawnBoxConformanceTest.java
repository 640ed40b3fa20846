package firstamp.conformance;

import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.provider.Arguments;

/** One box, calibrated and new. */
@Tag("chip")
@Timeout(value = 60, unit = TimeUnit.SECONDS)
final class ChipDrawnBoxConformanceTest extends ChipDrawnBoxConformance {
  @Override
  Stream<Arguments> boxes() {
    return both(1, 1);
  }
}
