package firstamp.locate;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.locate.wire.ClueKind;
import firstamp.locate.wire.LandingPlace;
import firstamp.locate.wire.LooseWire;
import firstamp.locate.wire.PlaceKind;
import firstamp.locate.wire.SetFacts;
import firstamp.locate.wire.TrialVerdict;
import firstamp.locate.wire.WireAnswer;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Risky trials until a wire is found, against trying its places in random order. */
class WireSimulationTest {
  private static int risky(WireCase wires, String right) {
    int risky = 0;
    WireAnswer answer = wires.answer("W");
    while (answer.state() == WireAnswer.State.TRY) {
      String at = answer.next().place();
      if (at.equals(right)) {
        return risky;
      }
      PlaceKind kind = wires.place(at).kind();
      risky += kind.harm() >= PlaceKind.RISKY ? 1 : 0;
      TrialVerdict verdict =
          kind.harm() >= PlaceKind.RISKY ? TrialVerdict.OVER_DRAW : TrialVerdict.NO_CHANGE;
      wires = wires.with(new WireStep.Trial("W", at, null, verdict, List.of()));
      answer = wires.answer("W");
    }
    return risky;
  }

  private static int riskyAtRandom(List<LandingPlace> places, String right, Random random) {
    List<LandingPlace> order = new ArrayList<>(places);
    Collections.shuffle(order, random);
    int risky = 0;
    for (LandingPlace place : order) {
      if (place.name().equals(right)) {
        return risky;
      }
      risky += place.kind().harm() >= PlaceKind.RISKY ? 1 : 0;
    }
    return risky;
  }

  private static void check(int runs) {
    PlaceKind[] kinds = PlaceKind.values();
    for (int candidates = 2; candidates <= 6; candidates++) {
      Random random = new Random(77 + candidates);
      int ours = 0;
      int chance = 0;
      for (int run = 0; run < runs; run++) {
        List<LandingPlace> places = new ArrayList<>();
        for (int at = 0; at < candidates; at++) {
          places.add(new LandingPlace("P" + at, kinds[random.nextInt(kinds.length)], null));
        }
        String right = "P" + random.nextInt(candidates);
        WireCase wires =
            new WireCase(
                    new SetFacts("simulated", "negative", 12, 0.5, 0.1),
                    List.of(new LooseWire("W", null, null, null, null, List.of())),
                    places,
                    List.of())
                .with(new WireStep.SourceTest("W", 0, 0))
                .with(new WireStep.Diode("W", 0.6, null));
        for (LandingPlace place : places) {
          // A clue of factor 8 is right in eight cases of nine.
          boolean honest = random.nextInt(9) > 0;
          if (place.name().equals(right) == honest) {
            wires = wires.with(new WireStep.Clue("W", place.name(), ClueKind.REACH, true));
          }
        }
        ours += risky(wires, right);
        chance += riskyAtRandom(places, right, random);
      }
      System.out.printf(
          "| %d | %d | %.3f | %.3f |%n",
          candidates, runs, ours / (double) runs, chance / (double) runs);
      assertThat(ours).as("%d candidates", candidates).isLessThan(chance);
    }
  }

  @Test
  void makesFewerRiskyTrialsThanChance() {
    check(300);
  }

  @Test
  @Tag("full")
  void makesFewerRiskyTrialsThanChanceInTenThousandCases() {
    check(10_000);
  }
}
