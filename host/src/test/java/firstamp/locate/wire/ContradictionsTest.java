package firstamp.locate.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Which readings cannot all be true, in a set of 12 V with a limit of 0.5 A. The figures follow
 * from Ohm's law, written out beside each row.
 */
class ContradictionsTest {
  private static final WireCase SET =
      new WireCase(
          new SetFacts("Set", "negative", 12, 0.5, null),
          List.of(new LooseWire("W1", null, null, null, null, List.of())),
          List.of(
              new LandingPlace("frame", PlaceKind.CHASSIS, null),
              new LandingPlace("B1 tag", PlaceKind.RAIL, null),
              new LandingPlace("input", PlaceKind.SIGNAL, null)),
          List.of());

  private static WireStep ohms(String place, double ohm) {
    return new WireStep.WireOhms("W1", place, ohm, null);
  }

  private static WireStep volts(double alone, double loaded) {
    return new WireStep.SourceTest("W1", alone, loaded);
  }

  private static Arguments row(String why, WireStep... steps) {
    return Arguments.of(why, List.of(steps));
  }

  static Stream<Arguments> cannotBe() {
    return Stream.of(
        // 8.1 V over 0.2 ohm would be 40.5 A.
        row("8.1 V on 0.2 ohm would draw 40.5 A.", ohms("frame", 0.2), volts(8.1, 8.0)),
        row("8.1 V on 0.2 ohm would draw 40.5 A.", volts(8.1, 8.0), ohms("frame", 0.2)),
        // 8.1 V over 10 ohm would be 0.81 A, the limit is 0.5 A.
        row("8.1 V on 10 ohm would draw 810 mA.", ohms("frame", 10), volts(8.1, 8.0)),
        row("cannot raise the volts", volts(1.4, 2.2)),
        row("cannot reverse the volts", volts(1.4, -0.4)),
        row("15 V is more than the 12 V of the supply", volts(15, 14.9)),
        row("24 V is more than the 12 V", new WireStep.PlaceVolts("B1 tag", -24)),
        row("both ways round", new WireStep.WireOhms("W1", "B1 tag", 0.3, 4700.0)),
        row("No capacitor", ohms("frame", 0.3), new WireStep.Swing("W1", 2000, 60_000, 4)),
        row("No junction", new WireStep.Diode("W1", 0.6, null), ohms("frame", 0.3)),
        // Wire to chassis and to the rail joined, but 820 ohm between the two.
        row(
            "the third must be too",
            new WireStep.PlaceOhms("B1 tag", 820),
            ohms("frame", 0.2),
            ohms("B1 tag", 0.3)),
        row("same volts", ohms("B1 tag", 0.3), volts(8.1, 8), new WireStep.PlaceVolts("B1 tag", 0)),
        // 8.2 V over 8 ohm would be 1.02 A.
        row(
            "8.2 V on 8 ohm would draw 1.02 A",
            new WireStep.PlaceOhms("B1 tag", 8),
            new WireStep.PlaceVolts("B1 tag", 8.2)));
  }

  @ParameterizedTest
  @MethodSource("cannotBe")
  void aReadingThatCannotBeIsRefusedWithTheOthers(String why, List<WireStep> steps) {
    WireCase before = SET;
    for (WireStep step : steps.subList(0, steps.size() - 1)) {
      before = before.with(step);
    }
    WireCase until = before;
    WireStep last = steps.get(steps.size() - 1);
    assertThatThrownBy(() -> until.with(last))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining(why)
        .hasMessageContaining(new WireWords().step(last))
        .hasMessageMatching("(?s).*Measure (both |all three )?again\\.");
    // A file that holds it already says so before anything else, and asks for no power.
    WireAnswer answer = until.withStored(last).answer("W1");
    assertThat(answer.state()).isEqualTo(WireAnswer.State.MEASURE_AGAIN);
    assertThat(answer.sentence()).contains(why);
    assertThat(answer.next()).isNull();
  }

  static Stream<Arguments> canBe() {
    return Stream.of(
        row("a source", ohms("frame", 5000), volts(8.1, 8.0)),
        row("a signal point", ohms("frame", 47_000), volts(1.4, 0.2)),
        row("a wire on the chassis", ohms("frame", 0.3), volts(0.02, 0)),
        row("a meter's last digit", volts(8.10, 8.12)),
        // 8.1 V over 17 ohm is 0.476 A, under the limit.
        row("just under the limit", ohms("frame", 17), volts(8.1, 8.0)),
        row("a fresh battery", volts(12.4, 12.3)),
        row(
            "a joined wire",
            ohms("B1 tag", 0.3),
            volts(8.1, 8.0),
            new WireStep.PlaceVolts("B1 tag", 8.3)),
        row(
            "all three joined",
            ohms("frame", 0.2),
            ohms("input", 0.4),
            new WireStep.PlaceOhms("input", 0.5)));
  }

  @ParameterizedTest
  @MethodSource("canBe")
  void whatCanBeTrueIsTaken(String what, List<WireStep> steps) {
    WireCase wires = SET;
    for (WireStep step : steps) {
      wires = wires.with(step);
    }
    assertThat(wires.answer("W1").state()).isNotEqualTo(WireAnswer.State.MEASURE_AGAIN);
  }

  @Test
  void measuringAgainMendsIt() {
    WireCase wires = SET.with(ohms("frame", 0.2)).with(ohms("frame", 5000)).with(volts(8.1, 8.0));
    assertThat(wires.answer("W1").state()).isEqualTo(WireAnswer.State.TRY);
  }
}
