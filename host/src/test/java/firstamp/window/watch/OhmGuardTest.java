package firstamp.window.watch;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.bench.Snapshot;
import firstamp.window.ChangedSnapshot;
import firstamp.window.FakeSession;
import firstamp.window.Scenes;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** When ohms may be measured, and the reason shown when not. */
class OhmGuardTest {
  private final OhmGuard guard =
      new OhmGuard(new Words(Locale.ENGLISH), new Numbers(Locale.ENGLISH));

  private static Snapshot scene(FakeSession.Scene scene) {
    return new FakeSession(scene).snapshot();
  }

  private static Snapshot rails(Snapshot from, Double volts) throws Exception {
    return ChangedSnapshot.of(
        from,
        Map.of(
            "supplyV", 0.2, "rails", List.of(new Snapshot.Rail(1, "B1", volts, 7.8, 8.6, true))));
  }

  @Test
  void noneWhileItIsOn() {
    assertThat(guard.refusal(scene(FakeSession.Scene.HEALTHY)))
        .startsWith("Switched on: no ohms now. Press OFF");
  }

  @Test
  void noneWhileARailIsAboveOneVoltAfterAnOff() throws Exception {
    Snapshot falling = scene(FakeSession.Scene.FALLING);
    assertThat(guard.refusal(rails(falling, 1.2))).startsWith("B1 still has 1.20 V");
    assertThat(guard.refusal(rails(falling, -1.2))).startsWith("B1 still has");
    assertThat(guard.refusal(rails(falling, 0.9))).isNull();
  }

  @Test
  void aRailThatWasStillUpAtTheEndIsNamed() throws Exception {
    assertThat(guard.refusal(rails(scene(FakeSession.Scene.OVER), 3.2)))
        .startsWith("B1 still had 3.20 V when it was last seen");
    assertThat(guard.refusal(rails(scene(FakeSession.Scene.OVER), 0.2))).isNull();
  }

  @Test
  void voltsWithTheSwitchOpenAreAnotherFeed() throws Exception {
    assertThat(guard.refusal(rails(scene(FakeSession.Scene.ASKING), 6.1)))
        .contains("a battery or another feed is in");
    assertThat(guard.refusal(rails(scene(FakeSession.Scene.ASKING), 0.1)))
        .contains("may close at any moment");
  }

  @Test
  void noneWithABatteryThatFeedsTheSet() throws Exception {
    Snapshot battery = Scenes.withSupply("battery", "supply-lead", FakeSession.Scene.FALLING);
    assertThat(guard.refusal(rails(battery, 0.1))).contains("battery");
  }

  @Test
  void aReplaySaysNothingAboutTheSetOnTheBench() {
    assertThat(guard.refusal(scene(FakeSession.Scene.REPLAY))).isNull();
    assertThat(guard.refusal(null)).isNull();
  }
}
