package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class NeedsDisplayTest {
  @Test
  void skipsWithoutAScreenUnlessItIsRequired() {
    assertThat(NeedsDisplay.Condition.decide(true, true).isDisabled()).isFalse();
    assertThat(NeedsDisplay.Condition.decide(false, false).isDisabled()).isTrue();
    assertThatThrownBy(() -> NeedsDisplay.Condition.decide(false, true))
        .hasMessageContaining("no screen");
  }
}
