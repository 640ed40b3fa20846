package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ToolConditionTest {
  @TempDir Path empty;

  @Test
  void aMissingToolSkipsAndSaysWhatToInstall() {
    var result = ToolCondition.decide("ngspice", empty.toString(), false);
    assertThat(result.isDisabled()).isTrue();
    assertThat(result.getReason().orElseThrow()).contains("apt-get install ngspice");
  }

  @Test
  void aMissingToolFailsWhereToolsAreRequired() {
    assertThatThrownBy(() -> ToolCondition.decide("ngspice", empty.toString(), true))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("requireTools");
  }
}
