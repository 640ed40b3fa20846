package firstamp.locate.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import firstamp.locate.odds.OddsWord;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Order of trials, resistors and the rule of two figures: common practice, no source. */
class WireCaseTest {
  private static WireCase example(String name) {
    try (InputStream in =
        WireFile.class.getResourceAsStream("/firstamp/locate/" + name + ".json")) {
      return WireFile.read(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException broken) {
      throw new UncheckedIOException(name, broken);
    }
  }

  private static WireCase start(String name) {
    WireCase whole = example(name);
    return new WireCase(whole.set(), whole.wires(), whole.places(), List.of());
  }

  private static WireCase upTo(String name, int steps) {
    WireCase wires = start(name);
    for (WireStep step : example(name).steps().subList(0, steps)) {
      wires = wires.with(step);
    }
    return wires;
  }

  private static WireAnswer.PlaceOdds place(WireAnswer answer, String name) {
    return answer.places().stream()
        .filter(one -> one.place().equals(name))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void leadsTheScreenedLeadToItsPlace() {
    assertThat(start("screened-lead").answer("W3").state()).isEqualTo(WireAnswer.State.CHECK_COLD);
    assertThat(upTo("screened-lead", 6).answer("W3").state())
        .isEqualTo(WireAnswer.State.SOURCE_TEST);
    WireAnswer toTry = upTo("screened-lead", 7).answer("W3");
    assertThat(toTry.state()).isEqualTo(WireAnswer.State.TRY);
    assertThat(toTry.next().place()).isEqualTo("preamp input");
    assertThat(upTo("screened-lead", 8).answer("W3").state()).isEqualTo(WireAnswer.State.FITS);
    WireAnswer done = example("screened-lead").answer("W3");
    assertThat(done.state()).isEqualTo(WireAnswer.State.BELONGS);
    assertThat(done.sentence()).contains("preamp input").contains("hum and level");
  }

  /** Ohm's law: 12 V over 1 kohm is 12 mA and 0.144 W; 1.2 times 0.12 A is 0.144 A. */
  @Test
  void saysWhatFlowsAtWorst() {
    WireAnswer.Trial next = upTo("screened-lead", 7).answer("W3").next();
    assertThat(next.throughOhm()).isEqualTo(1000);
    assertThat(next.worstA()).isCloseTo(0.012, within(1e-12));
    assertThat(next.worstW()).isCloseTo(0.144, within(1e-12));
    // 1.2 times the 0.09 A of the last good power-up.
    assertThat(next.limitA()).isCloseTo(0.108, within(1e-12));
  }

  /** 12 V over 100 ohm is 120 mA; the limit is 1.2 times the idle current. */
  @Test
  void tellsTheLimitOfTheTrialFromWhatFlowsAtWorst() {
    String under = upTo("screened-lead", 7).answer("W3").sentence();
    assertThat(under)
        .contains("the resistor limits the current to 12 mA (0.144 W). That is below the 108 mA");
    String over = radio(new WireStep.WireOhms("lead 1", "frame", 900, null)).sentence();
    assertThat(over)
        .contains("switches the supply off above 10.8 mA once the rails have settled")
        .contains("Until then the resistor limits the current to 90 mA (0.81 W) if");
  }

  /** Two places with a resistor of 100 ohm, in a set of 9 V that draws 9 mA. */
  private static WireAnswer radio(WireStep step) {
    SetFacts set = start("cotton-leads").set();
    return new WireCase(
            set,
            List.of(new LooseWire("lead 1", null, null, null, null, List.of())),
            List.of(
                new LandingPlace("frame", PlaceKind.CHASSIS, null),
                new LandingPlace("feed", PlaceKind.RAIL, null)),
            List.of())
        .with(step)
        .with(new WireStep.SourceTest("lead 1", 0, 0))
        .answer("lead 1");
  }

  /** 9 V over 22 ohm is 0.41 A; the limit is 0.05 A. */
  @Test
  void warnsBeforePowerWithTheExpectedCurrent() {
    WireAnswer answer = upTo("cotton-leads", 3).answer("lead 1");
    assertThat(answer.state()).isEqualTo(WireAnswer.State.FIND_SHORT);
    assertThat(answer.sentence())
        .contains("22 ohm")
        .contains("409 mA")
        .contains("50 mA")
        .contains("Do not power");
  }

  @Test
  void aSuspectResistanceIsSaidWithoutForbidding() {
    WireCase wires = start("cotton-leads").with(new WireStep.PlaceOhms("IF feed tag", 450));
    assertThat(wires.answer("lead 1").warnings().get(0)).contains("suspect").contains("20 mA");
    WireCase well = start("cotton-leads").with(new WireStep.PlaceOhms("IF feed tag", 1200));
    assertThat(well.answer("lead 1").warnings()).noneMatch(text -> text.contains("suspect"));
  }

  /** The lead is on a rail already, so it feeds something: a base is ruled out. */
  @Test
  void continuityAndOldSolderLeadTheCottonLeadToItsPlace() {
    WireAnswer before = upTo("cotton-leads", 2).answer("lead 1");
    assertThat(place(before, "IF feed tag").share())
        .isGreaterThan(place(before, "empty tag").share());
    assertThat(place(before, "driver base tag").word()).isNotEqualTo(OddsWord.STRUCK_OUT);
    WireAnswer after = upTo("cotton-leads", 6).answer("lead 1");
    assertThat(place(after, "driver base tag").word()).isEqualTo(OddsWord.STRUCK_OUT);
    assertThat(place(after, "driver base tag").reason()).contains("holds the volts of a rail");
    assertThat(after.next().place()).isEqualTo("empty tag");
    assertThat(upTo("cotton-leads", 7).answer("lead 1").next().place()).isEqualTo("IF feed tag");
    assertThat(upTo("cotton-leads", 8).answer("lead 1").state())
        .isEqualTo(WireAnswer.State.BELONGS);
  }

  @Test
  void aWireOnTheChassisIsKeptOffARail() {
    WireAnswer answer = radio(new WireStep.WireOhms("lead 1", "frame", 0.3, null));
    assertThat(place(answer, "feed").word()).isEqualTo(OddsWord.STRUCK_OUT);
    assertThat(place(answer, "feed").reason()).contains("short the rail");
  }

  @Test
  void neverSendsARailIntoAHead() {
    WireCase wires =
        start("screened-lead")
            .with(new WireStep.WireOhms("W3", "screen tag", 5000, null))
            .with(new WireStep.SourceTest("W3", 8.2, 8.1));
    WireAnswer answer = wires.answer("W3");
    assertThat(place(answer, "record head tag").word()).isEqualTo(OddsWord.STRUCK_OUT);
    assertThat(place(answer, "screen tag").word()).isEqualTo(OddsWord.STRUCK_OUT);
    WireCase apart = wires.with(new WireStep.PlaceVolts("B1 tag", 12));
    assertThat(place(apart.answer("W3"), "B1 tag").reason()).contains("do not join");
  }

  @Test
  void triesWhereItHarmsLeastFirstWhateverTheOdds() {
    WireCase wires = upTo("screened-lead", 7);
    for (int again = 0; again < 4; again++) {
      wires = wires.with(new WireStep.Hunch("W3", "record head tag", "surely"));
    }
    WireAnswer answer = wires.answer("W3");
    assertThat(place(answer, "record head tag").share())
        .isGreaterThan(place(answer, "preamp input").share());
    assertThat(answer.next().place()).isNotEqualTo("record head tag");
  }

  @Test
  void aShortStrikesAPlaceOutAndUndoBringsItBack() {
    WireCase wires = upTo("screened-lead", 7);
    WireCase shorted =
        wires.with(new WireStep.Trial("W3", "preamp input", 9, TrialVerdict.SHORT, List.of()));
    assertThat(place(shorted.answer("W3"), "preamp input").word()).isEqualTo(OddsWord.STRUCK_OUT);
    assertThat(shorted.answer("W3").next().place()).isNotEqualTo("preamp input");
    assertThat(shorted.undo().answer("W3")).isEqualTo(wires.answer("W3"));
  }

  @Test
  void theSameFigureTwiceDoesNotConfirm() {
    WireCase wires = upTo("screened-lead", 8);
    WireCase again =
        wires.with(
            new WireStep.Trial("W3", "preamp input", 9, TrialVerdict.BETTER, List.of("level")));
    assertThat(again.answer("W3").state()).isEqualTo(WireAnswer.State.FITS);
  }

  @Test
  void staysOffAboveSixtyVolts() {
    WireCase whole = start("screened-lead");
    WireCase high =
        new WireCase(
            new SetFacts("high", "negative", 90, 0.5, null),
            whole.wires(),
            whole.places(),
            List.of(new WireStep.WireOhms("W3", "screen tag", 5000, null)));
    assertThat(high.answer("W3").sentence()).contains("stays off");
    assertThat(high.answer("W3").next()).isNull();
  }

  @Test
  void comparesATrialWithTheLastGoodPowerUp() {
    TrialVerdict.Figure level = new TrialVerdict.Figure("level", -96, -58, -58, 2);
    TrialVerdict.Figure still = new TrialVerdict.Figure("rail 1", 8.2, 8.21, 8.2, 0.05);
    TrialVerdict.Figure worse = new TrialVerdict.Figure("hum", -80, -50, -80, 2);
    assertThat(TrialVerdict.judge(true, true, null, 0.12, List.of(level)).verdict())
        .isEqualTo(TrialVerdict.SHORT);
    assertThat(TrialVerdict.judge(false, false, 0.145, 0.12, List.of(level)).verdict())
        .isEqualTo(TrialVerdict.OVER_DRAW);
    assertThat(TrialVerdict.judge(false, false, 0.143, 0.12, List.of(level, still)))
        .isEqualTo(new TrialVerdict.Judged(TrialVerdict.BETTER, List.of("level")));
    assertThat(TrialVerdict.judge(false, false, 0.12, 0.12, List.of(still)).verdict())
        .isEqualTo(TrialVerdict.NO_CHANGE);
    assertThat(TrialVerdict.judge(false, false, 0.12, 0.12, List.of(level, worse)).verdict())
        .isEqualTo(TrialVerdict.WORSE);
  }

  @ParameterizedTest
  @ValueSource(strings = {"screened-lead", "cotton-leads"})
  void examplesComeBackFromTheirFile(String name) {
    WireCase wires = example(name);
    WireCase again = WireFile.read(WireFile.write(wires));
    assertThat(again).isEqualTo(wires);
    for (LooseWire wire : wires.wires()) {
      assertThat(again.answer(wire.name())).isEqualTo(wires.answer(wire.name()));
      assertThat(wires.answer(wire.name()).sentence()).doesNotContain("%");
    }
  }

  @Test
  void badFilesNameTheField() {
    assertThatThrownBy(
            () ->
                WireFile.read(WireFile.write(example("screened-lead")).replace("reachMm", "reach")))
        .hasMessageContaining("unknown key reach");
    assertThatThrownBy(() -> WireFile.read("{\"trial\":2}")).hasMessageContaining("format 1");
  }
}
