package firstamp.locate;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.locate.odds.OddsWord;
import firstamp.locate.wire.LandingPlace;
import firstamp.locate.wire.LooseWire;
import firstamp.locate.wire.PlaceKind;
import firstamp.locate.wire.SetFacts;
import firstamp.locate.wire.ShortReading;
import firstamp.locate.wire.WireAnswer;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireFile;
import firstamp.locate.wire.WireStep;
import firstamp.locate.wire.WireWords;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** "Do not power" is never followed by "power it": a short is a step of its own. */
class ShortFirstTest {
  /** 12 V, limit 0.8 A: under 15 ohm the limit is passed. */
  private static final WireCase SET =
      new WireCase(
          new SetFacts("Set", "negative", 12, 0.8, null),
          List.of(new LooseWire("W1", null, null, null, null, List.of())),
          List.of(
              new LandingPlace("frame", PlaceKind.CHASSIS, null),
              new LandingPlace("B1 tag", PlaceKind.RAIL, null),
              new LandingPlace("input", PlaceKind.SIGNAL, null)),
          List.of());

  private static void asksForNoPower(WireAnswer answer) {
    assertThat(answer.state()).isEqualTo(WireAnswer.State.FIND_SHORT);
    assertThat(answer.next()).isNull();
    assertThat(answer.sentence()).contains("Do not power the set.").doesNotContain("switch on");
    assertThat(answer.sentence()).doesNotContain("power the set with");
  }

  @Test
  void aShortedRailIsFoundFirst() {
    WireAnswer answer = SET.with(new WireStep.PlaceOhms("B1 tag", 8)).answer("W1");
    asksForNoPower(answer);
    // 12 V over 8 ohm is 1.5 A; 12 V over 0.8 A is 15 ohm.
    assertThat(answer.sentence())
        .startsWith("Find the short first: B1 tag reads 8 ohm to the chassis.")
        .contains("1.5 A")
        .contains("the limit is 800 mA")
        .contains("more than 15 ohm");
    assertThat(answer.found()).isEqualTo(new ShortReading("B1 tag", 8, 15));
  }

  @Test
  void theColdCheckAlreadyMadeDoesNotHideIt() {
    WireCase wires =
        SET.with(new WireStep.WireOhms("W1", "input", 4700, null))
            .with(new WireStep.PlaceOhms("B1 tag", 8));
    asksForNoPower(wires.answer("W1"));
    WireCase found = wires.with(new WireStep.PlaceOhms("B1 tag", 2400));
    assertThat(found.answer("W1").state()).isEqualTo(WireAnswer.State.SOURCE_TEST);
  }

  @Test
  void fewOhmsOnTheWireAreExplainedOrFound() {
    WireCase wires = SET.with(new WireStep.WireOhms("W1", "frame", 8, 8.1));
    asksForNoPower(wires.answer("W1"));
    assertThat(wires.answer("W1").found()).isEqualTo(new ShortReading(null, 8, 15));
    WireCase known = wires.with(new WireStep.Known("W1", "the loudspeaker's coil"));
    assertThat(known.answer("W1").state()).isEqualTo(WireAnswer.State.SOURCE_TEST);
    // 12 V over 8 ohm on a rail is 1.5 A.
    assertThat(known.answer("W1").places())
        .filteredOn(place -> place.place().equals("B1 tag"))
        .allMatch(place -> place.word() == OddsWord.STRUCK_OUT)
        .allMatch(place -> place.reason().contains("on a rail that is 1.5 A"));
    // Read again, it must be explained again.
    asksForNoPower(known.with(new WireStep.WireOhms("W1", "frame", 6, null)).answer("W1"));
    assertThat(WireFile.read(WireFile.write(known))).isEqualTo(known);
  }

  /** Such a wire may be a chassis lead: it is kept off the rails instead. */
  @Test
  void aWireOnTheChassisIsNoShort() {
    WireAnswer answer = SET.with(new WireStep.WireOhms("W1", "frame", 0.2, null)).answer("W1");
    assertThat(answer.state()).isEqualTo(WireAnswer.State.TRY);
    assertThat(answer.warnings().get(0)).contains("on a rail it is a short");
  }

  @ParameterizedTest
  @ValueSource(strings = {"screened-lead", "cotton-leads"})
  void noStepOfAnExampleForbidsPowerAndAsksForIt(String name) {
    WireCase whole = Examples.wires(name);
    for (int count = 0; count <= whole.steps().size(); count++) {
      for (LooseWire wire : whole.wires()) {
        WireAnswer answer = whole.upTo(count).answer(wire.name());
        String all = answer.warnings() + answer.sentence();
        assertThat(all.contains("Do not power") && all.contains("for 10 s")).as(all).isFalse();
      }
    }
  }

  @Test
  void saysItInGermanToo() {
    WireCase wires = SET.with(new WireStep.PlaceOhms("B1 tag", 8.5));
    assertThat(wires.answer("W1", new WireWords(Locale.GERMAN)).sentence())
        .startsWith("Suchen Sie zuerst den Kurzschluss: B1 tag misst 8,5 ohm zum Chassis.")
        .contains("1,41 A");
  }
}
