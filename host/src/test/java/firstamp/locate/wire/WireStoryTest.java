package firstamp.locate.wire;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.locate.Examples;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

class WireStoryTest {
  private static final LandingPlace TAG = new LandingPlace("tag 4", PlaceKind.SIGNAL, null);
  private static final LandingPlace RAIL = new LandingPlace("B1", PlaceKind.RAIL, null);

  private static WireCase wires() {
    return new WireCase(
        new SetFacts("Set", "negative", 12, 0.5, 0.1),
        List.of(new LooseWire("W3", "grey", null, null, null, List.of())),
        List.of(TAG, RAIL),
        List.of());
  }

  @Test
  void readsLikeAStoryMonthsLater() {
    // 1 700 000 000 s after 1970 is 2023-11-14 22:13:20 UTC (any epoch converter).
    WireCase wires =
        wires()
            .with(
                new WireStep.Dated(
                    new WireStep.WireOhms("W3", "tag 4", 47_000, null), 1_700_000_000_000L))
            .with(new WireStep.SourceTest("W3", 1.4, 0.2))
            .with(new WireStep.Moved("W3", "tag 4", "laid beside it"));
    assertThat(WireStory.of(wires, ZoneOffset.UTC, new WireWords()))
        .startsWith(
            "2023-11-14 22:13  W3 to tag 4: 47 kohm",
            "W3, end insulated: 1.4 V alone, 0.2 V with 10 kohm to the chassis",
            "Moved W3 to tag 4: laid beside it")
        .last()
        .asString()
        .startsWith("W3 now: Try W3 at tag 4 next");
  }

  @Test
  void aDatedStepCountsAndComesBackFromItsFile() {
    WireStep.Trial trial = new WireStep.Trial("W3", "B1", 4, TrialVerdict.SHORT, List.of());
    WireCase dated = wires().with(new WireStep.Dated(trial, 1_700_000_000_000L));
    assertThat(dated.answer("W3")).isEqualTo(wires().with(trial).answer("W3"));
    assertThat(WireFile.read(WireFile.write(dated))).isEqualTo(dated);
    assertThat(dated.undo()).isEqualTo(wires());
    assertThat(new WireWords().step(trial)).isEqualTo("Tried W3 at B1 (power-up 4): short");
  }

  @Test
  void everyStepHasWords() {
    for (String name : List.of("screened-lead", "cotton-leads")) {
      WireCase wires = Examples.wires(name);
      assertThat(wires.steps()).allMatch(step -> !new WireWords().step(step).isBlank());
    }
    assertThat(new WireWords().step(new WireStep.Diode("W3", 0.6, null))).contains("0.6 V forward");
    assertThat(new WireWords().step(new WireStep.Photograph("W3", "a.jpg", "00")))
        .contains("a.jpg");
    assertThat(new WireWords().step(new WireStep.PlaceVolts("B1", 8.2))).contains("8.2 V");
  }
}
