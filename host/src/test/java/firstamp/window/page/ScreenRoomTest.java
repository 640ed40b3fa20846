package firstamp.window.page;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The largest size for usual screens. */
class ScreenRoomTest {
  @ParameterizedTest
  @CsvSource({
    "640, 400, 1",
    "1024, 600, 1",
    "1280, 800, 1",
    "1920, 1080, 2",
    "2560, 1440, 2",
    "3840, 2160, 3"
  })
  void isInWholeStepsAndNeverTooLarge(int width, int height, int largest) {
    assertThat(ScreenRoom.largest(width, height)).isEqualTo(largest);
  }
}
