package firstamp.window.page;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What switches on is held for half a second, on every kind of keyboard. */
class HeldKeyTest {
  private final HeldKey key = new HeldKey();

  @Test
  void halfASecondSwitchesOnOnce() {
    key.pressed(1000, true);
    assertThat(key.tick(1499)).isFalse();
    assertThat(key.tick(1500)).isTrue();
    assertThat(key.tick(1520)).as("once").isFalse();
  }

  @Test
  void lettingGoEarlyDoesNothing() {
    key.pressed(1000, true);
    key.released(1480);
    assertThat(key.tick(1500)).isFalse();
    assertThat(key.tick(1600)).isFalse();
    key.pressed(2000, true);
    assertThat(key.tick(2400)).as("restarts").isFalse();
    assertThat(key.tick(2500)).isTrue();
  }

  @Test
  void aKeyThatRepeatsItselfAsReleaseAndPressIsHeld() {
    // As the X server repeats: 30 times a second, release and press at the same time.
    key.pressed(1000, true);
    for (long at = 1250; at < 1500; at += 33) {
      key.released(at);
      assertThat(key.tick(at)).isFalse();
      key.pressed(at, true);
    }
    assertThat(key.tick(1500)).isTrue();
  }

  @Test
  void tappingFastIsNotHolding() {
    boolean fired = false;
    for (long at = 1000; at < 5000; at += 200) {
      key.pressed(at, true);
      fired |= key.tick(at + 50);
      key.released(at + 60);
      fired |= key.tick(at + 100) | key.tick(at + 160);
    }
    assertThat(fired).isFalse();
  }

  @Test
  void whatIsNotAskedAnyMoreHasToBePressedAgain() {
    key.pressed(1000, true);
    key.unask();
    assertThat(key.tick(1600)).isFalse();
    assertThat(key.isUp()).isFalse();
    key.released(1700);
    key.tick(1800);
    assertThat(key.isUp()).isTrue();
  }

  @Test
  void aKeyThatWasDownBeforeItWasAskedForMeansSomethingElse() {
    key.pressed(1000, false);
    key.pressed(1300, true);
    assertThat(key.tick(2000)).isFalse();
    key.released(2100);
    key.tick(2200);
    key.pressed(2300, true);
    assertThat(key.tick(2800)).isTrue();
  }
}
