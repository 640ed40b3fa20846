package firstamp.supply;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BenchSupplyTest {
  private final StrictResponder responder = new StrictResponder();
  private final ResponderLine line = new ResponderLine(responder);
  private final BenchSupply supply = new BenchSupply(line);

  @AfterEach
  void close() {
    supply.close();
  }

  private SupplyState await(SupplyState.Phase phase) {
    for (int k = 0; k < 20_000; k++) {
      SupplyState state = supply.state();
      if (state.phase() == phase) {
        return state;
      }
      LockSupport.parkNanos(1_000_000);
    }
    throw new AssertionError("expected " + phase + ", is " + supply.state());
  }

  /** What it heard; the last of it may still be on the line when the caller knows already. */
  private List<String> toldToSwitchOff() {
    for (int k = 0; k < 5000 && !responder.heard().contains("OUTP OFF"); k++) {
      LockSupport.parkNanos(1_000_000);
    }
    return responder.heard();
  }

  private void on() {
    supply.start();
    supply.give(12, 0.5);
    await(SupplyState.Phase.ON);
  }

  @Test
  void setsLimitThenVoltsThenOutputAndReadsBack() {
    on();
    assertThat(supply.state().name()).isEqualTo("TARNWELL (INVENTED),BS-30,0,1.0");
    assertThat(responder.on()).isTrue();
    assertThat(responder.volts()).isEqualTo(12);
    assertThat(responder.ampere()).isEqualTo(0.5);
    List<String> heard = responder.heard();
    assertThat(heard.indexOf("CURR 0.5000"))
        .isGreaterThan(-1)
        .isLessThan(heard.indexOf("VOLT 12.0000"));
    assertThat(heard.indexOf("VOLT 12.0000")).isLessThan(heard.indexOf("OUTP ON"));
  }

  @Test
  void onlyStandardCommandsAreSent() {
    on();
    supply.give(15, 1);
    await(SupplyState.Phase.ON);
    supply.off();
    await(SupplyState.Phase.OFF);
    assertThat(responder.line("SYST:ERR?")).containsExactly("0,\"No error\"");
    assertThat(responder.line("BLINK")).isEmpty();
    assertThat(responder.line("SYST:ERR?").get(0)).as("the responder is strict").startsWith("-113");
  }

  @Test
  void offIsWrittenAtOnceAndConfirmed() {
    on();
    supply.off();
    assertThat(responder.on()).as("written by the caller itself").isFalse();
    await(SupplyState.Phase.OFF);
    assertThat(supply.confirmedOff()).isTrue();
  }

  @Test
  void aStepChangesVoltsWithTheOutputOn() {
    on();
    supply.give(15, 0.8);
    for (int k = 0; k < 5000 && !Double.valueOf(15).equals(supply.state().volts()); k++) {
      LockSupport.parkNanos(1_000_000);
    }
    assertThat(responder.volts()).isEqualTo(15);
    assertThat(responder.heard().stream().filter("OUTP ON"::equals)).hasSize(1);
  }

  @Test
  void whatItCannotDoIsRefusedAndItIsSwitchedOff() {
    supply.start();
    supply.give(40, 0.5);
    SupplyState state = await(SupplyState.Phase.FAILED);
    assertThat(state.problem().english()).contains("-222").contains("VOLT 40.0000");
    assertThat(responder.on()).isFalse();
    assertThat(toldToSwitchOff()).contains("OUTP OFF").doesNotContain("OUTP ON");
  }

  @ParameterizedTest
  @ValueSource(strings = {"VOLT?", "CURR?", "OUTP?", "SYST:ERR?", "*IDN?"})
  void aWrongAnswerEndsInOff(String question) {
    responder.fault(question, StrictResponder.Fault.WRONG);
    supply.start();
    supply.give(12, 0.5);
    assertThat(await(SupplyState.Phase.FAILED).problem().english())
        .contains(question)
        .contains("QB");
    assertThat(responder.on()).isFalse();
    assertThat(toldToSwitchOff()).contains("OUTP OFF");
  }

  @ParameterizedTest
  @ValueSource(strings = {"VOLT?", "CURR?", "OUTP?", "SYST:ERR?", "*IDN?"})
  void aMissingAnswerEndsInOff(String question) {
    responder.fault(question, StrictResponder.Fault.MISSING);
    supply.start();
    supply.give(12, 0.5);
    assertThat(await(SupplyState.Phase.FAILED).problem().english())
        .contains("does not answer " + question);
    assertThat(responder.on()).isFalse();
    assertThat(toldToSwitchOff()).contains("OUTP OFF");
  }

  /** A late answer must not be taken for the answer to the next question. */
  @ParameterizedTest
  @CsvSource({"VOLT?", "CURR?", "SYST:ERR?", "OUTP?"})
  void aLateAnswerIsThrownAwayAndAskedForAgain(String question) {
    responder.fault(question, StrictResponder.Fault.LATE);
    on();
    assertThat(supply.state().volts()).isEqualTo(12);
    assertThat(responder.heard().stream().filter("*IDN?"::equals).count()).isGreaterThan(1);
  }

  @Test
  void aSupplyThatFallsSilentWhileOnIsToldToSwitchOff() {
    on();
    responder.fallsSilent();
    assertThat(await(SupplyState.Phase.FAILED).problem().english()).contains("does not answer");
    assertThat(responder.on()).as("it still listens").isFalse();
  }

  @Test
  void aSupplyThatHearsNothingIsSaidToBeSwitchedOffByHand() {
    on();
    responder.hearsNothing();
    supply.off();
    for (int k = 0; k < 20_000 && supply.state().phase() != SupplyState.Phase.FAILED; k++) {
      LockSupport.parkNanos(1_000_000);
    }
    assertThat(supply.state().problem().english()).contains("Switch it off by hand");
    assertThat(supply.confirmedOff()).isFalse();
  }

  @Test
  void anOutputThatStaysOnIsSaid() {
    on();
    responder.stuckOn();
    supply.off();
    assertThat(await(SupplyState.Phase.FAILED).problem().english())
        .contains("still on")
        .contains("Switch it off by hand");
  }

  @Test
  void anOutputThatGoesOffByItselfIsNoticed() {
    on();
    responder.switchesItselfOff();
    assertThat(await(SupplyState.Phase.FAILED).problem().english()).contains("by itself");
  }

  @Test
  void anOutputThatIsOnBeforehandIsRefused() {
    responder.switchedOnAtItsFront();
    supply.start();
    assertThat(await(SupplyState.Phase.FAILED).problem().english()).contains("output on already");
  }

  @Test
  void aPulledPlugFails() {
    on();
    line.pull();
    assertThat(await(SupplyState.Phase.FAILED).problem().english()).contains("unplugged");
    assertThat(supply.state().problem().in(Locale.GERMAN))
        .isEqualTo("ist nicht mehr zu erreichen (unplugged)");
  }

  @Test
  void closingSwitchesOffAndClosesTheLine() {
    on();
    supply.close();
    assertThat(responder.on()).isFalse();
    assertThat(line.closed()).isTrue();
    supply.give(12, 0.5);
    assertThat(responder.on()).isFalse();
  }
}
