package firstamp.conformance;

import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.provider.Arguments;

/** Seven more boxes, calibrated and new. */
@Tag("chip")
@Tag("full")
@Timeout(value = 60, unit = TimeUnit.SECONDS)
final class ChipManyBoxesConformanceTest extends ChipDrawnBoxConformance {
  @Override
  Stream<Arguments> boxes() {
    return both(2, 8);
  }
}
