package firstamp.study;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.Conditions;
import firstamp.model.Difference;
import firstamp.model.OffReason;
import firstamp.model.ProbeEvent;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class ToldWordsTest {
  private static final List<ProbeEvent.Told> TOLD =
      List.of(
          new ProbeEvent.ConditionsSaid(
              1,
              new Conditions(
                  Conditions.Load.NO_TAPE, Conditions.Volume.DOWN, Conditions.Function.STOP)),
          new ProbeEvent.Answered(1, "floating-supply", 1_790_000_000_000L),
          new ProbeEvent.Answered(1, "hands-out", 1_790_000_060_000L),
          new ProbeEvent.SwitchedOnAgain(1, 7, Difference.NOTHING, 1, 820.0, null),
          new ProbeEvent.OffExplained(2, OffReason.DONE),
          new ProbeEvent.OffExplained(3, OffReason.SMELL));

  @Test
  void saysEachThingInASentenceAndTheLastReason() {
    assertThat(new ToldWords(Locale.ROOT, ZoneOffset.UTC).lines(TOLD))
        .containsExactly(
            "Before switching on: no tape in, volume down, function switch on stop.",
            "Switched on again after number 7. Different: nothing. Measured first: rail 1 to the chassis 820 \u03a9.",
            "Answered before switching on: no path round the switch (14:13), hands out (14:14).",
            "Why it was switched off: smell.");
  }

  @Test
  void saysTheSameInGerman() {
    List<String> lines = new ToldWords(Locale.GERMAN, ZoneOffset.UTC).lines(TOLD);
    assertThat(lines.get(0))
        .isEqualTo(
            "Vor dem Einschalten: kein Band eingelegt, Lautst\u00e4rke zu, Funktionsschalter auf Halt.");
    assertThat(lines.get(3)).isEqualTo("Warum ausgeschaltet: Geruch.");
  }

  @Test
  void everyWordIsThere() {
    for (OffReason reason : OffReason.values()) {
      assertThat(new ToldWords().line(new ProbeEvent.OffExplained(1, reason))).isNotBlank();
    }
    for (Difference difference : Difference.values()) {
      assertThat(
              new ToldWords().line(new ProbeEvent.SwitchedOnAgain(1, 2, difference, 0, null, 6.0)))
          .endsWith("Supply turned down to 6 V.");
    }
    for (Conditions.Function function : Conditions.Function.values()) {
      for (Conditions.Load load : Conditions.Load.values()) {
        assertThat(
                new ToldWords()
                    .line(
                        new ProbeEvent.ConditionsSaid(
                            1, new Conditions(load, Conditions.Volume.MIDDLE, function))))
            .contains("function switch on");
      }
    }
  }
}
