package firstamp.window.watch;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.window.HandTime;
import org.junit.jupiter.api.Test;

class RefusalTest {
  private final HandTime time = new HandTime();
  private final Refusal refusal = new Refusal(time);

  @Test
  void goesAfterAWhile() {
    refusal.say("not now");
    time.pass(9_900);
    assertThat(refusal.now()).isEqualTo("not now");
    time.pass(200);
    assertThat(refusal.now()).isNull();
    time.pass(-5_000);
    assertThat(refusal.now()).as("and stays away").isNull();
  }

  @Test
  void goesWithTheNextKeyThatDoesSomething() {
    refusal.say("not now");
    refusal.say(null);
    assertThat(refusal.now()).isNull();
  }

  @Test
  void aSecondOneHasItsWholeTime() {
    refusal.say("not now");
    time.pass(9_000);
    refusal.say("nor this");
    time.pass(9_000);
    assertThat(refusal.now()).isEqualTo("nor this");
  }
}
