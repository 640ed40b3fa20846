package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PedalTest {
  private final List<String> done = new ArrayList<>();
  private final Pedal pedal =
      new Pedal(
          (BenchActions)
              Proxy.newProxyInstance(
                  PedalTest.class.getClassLoader(),
                  new Class<?>[] {BenchActions.class},
                  (proxy, method, arguments) -> {
                    done.add(method.getName());
                    return method.getReturnType() == boolean.class ? (Object) false : null;
                  }));

  @Test
  void aTapIsATap() {
    pedal.pressed(0);
    pedal.released(120);
    pedal.tick(140);
    assertThat(done).as("a repeat may still come").isEmpty();
    pedal.tick(200);
    assertThat(done).containsExactly("tap");
  }

  @Test
  void heldItSwitchesOffOnceAndWithoutBeingLetGo() {
    pedal.pressed(0);
    pedal.tick(590);
    assertThat(done).isEmpty();
    pedal.tick(610);
    pedal.tick(2000);
    pedal.released(2100);
    pedal.tick(2200);
    assertThat(done).containsExactly("offOrHold");
  }

  @Test
  void aKeyThatRepeatsAsPressesIsHeld() {
    for (long at = 0; at <= 900; at += 30) {
      pedal.pressed(at);
    }
    assertThat(done).containsExactly("offOrHold");
  }

  @Test
  void aKeyThatRepeatsAsReleasesAndPressesIsHeldToo() {
    for (long at = 0; at <= 900; at += 30) {
      pedal.pressed(at);
      pedal.released(at + 28);
      pedal.tick(at + 29);
    }
    assertThat(done).containsExactly("offOrHold");
  }

  @Test
  void twoTapsAreTwo() {
    pedal.pressed(0);
    pedal.released(100);
    pedal.tick(200);
    pedal.pressed(300);
    pedal.released(380);
    pedal.tick(500);
    assertThat(done).containsExactly("tap", "tap");
  }
}
