package firstamp.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.offset;

import firstamp.analysis.calibrate.CalibrationLine;
import firstamp.emulate.CalibrationDemo;
import firstamp.model.samples.Channel;
import firstamp.window.TestBench;
import firstamp.window.present.ProbePresenter;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The guided steps on the emulated box, whose inputs are off by shares that the test knows. */
class ProbeFlowTest {
  @TempDir Path folder;
  private Desk desk;
  private ProbeFlow flow;
  private final ProbePresenter presenter =
      new ProbePresenter(new Words(Locale.ENGLISH), new Numbers(Locale.ENGLISH));

  @BeforeEach
  void desk() {
    desk = TestBench.empty(folder);
    flow = desk.probeFlow();
  }

  private void upTo(ProbeStep step) throws Exception {
    flow.begin(null, ProbeStep.ZERO);
    while (flow.step() != step) {
      flow.go(flow.demoReading());
    }
  }

  @Test
  void findsByHowMuchEachInputIsOff() throws Exception {
    upTo(ProbeStep.RESULT);
    for (CalibrationLine line : flow.lines()) {
      if (line.points().size() < 2) {
        continue;
      }
      double change =
          100 * (line.scale().perCount() / flow.before().scale(line.channel()).perCount() - 1);
      double truth = CalibrationDemo.GAIN_ERROR_PERCENT.get(line.channel().ordinal());
      assertThat(change)
          .as(line.channel().name())
          .isCloseTo(truth, offset(200 * line.budget().gainShare()));
    }
    assertThat(presenter.result(flow.before(), flow.lines()))
        .hasSize(8)
        .anyMatch(line -> line.contains("supply volts") && line.contains("+1."))
        .anyMatch(line -> line.contains("head: \u22121.99 %") && line.contains("to 1.88 %"))
        .anyMatch(line -> line.contains("meter: +0.80 %") && line.contains("to 0.92 %"));
    flow.leave();
  }

  /**
   * Whoever has no recorder needs no cell: meter and head keep their gain, and the result shows it.
   */
  @Test
  void theLevelsCanBeSkippedAtAnyOfTheirSteps() throws Exception {
    assertThatThrownBy(flow::skip).isInstanceOf(IllegalStateException.class);
    for (ProbeStep at : List.of(ProbeStep.LARGE, ProbeStep.SMALL, ProbeStep.LEVELS)) {
      flow = desk.probeFlow();
      upTo(at);
      flow.skip();
      assertThat(flow.step()).isEqualTo(ProbeStep.RESULT);
      assertThat(presenter.result(flow.before(), flow.lines()))
          .hasSize(8)
          .anyMatch(line -> line.contains("head") && line.contains("zero measured"))
          .anyMatch(line -> line.contains("supply volts") && line.contains("+1."));
      flow.leave();
      flow.back();
    }
  }

  /** A number typed wrong: one step back, the right one, and the first is forgotten. */
  @Test
  void aStepTakenAgainReplacesWhatItTookBefore() throws Exception {
    upTo(ProbeStep.VOLTS);
    flow.go(8.0);
    flow.back();
    flow.back();
    flow.go(null);
    while (flow.step() != ProbeStep.RESULT) {
      flow.go(flow.demoReading());
    }
    assertThat(flow.lines())
        .allSatisfy(line -> assertThat(line.points()).hasSize(2 + current(line)));
    assertThat(presenter.result(flow.before(), flow.lines()))
        .anyMatch(line -> line.contains("supply volts: +1.1"));
    flow.leave();
  }

  /** Supply current has its zero and two points, the fine range one of them. */
  private static int current(CalibrationLine line) {
    return line.channel() == Channel.I ? 1 : 0;
  }

  @Test
  void resistorsThatCannotBeAreRefused() throws Exception {
    upTo(ProbeStep.LARGE);
    flow.go(22.0);
    assertThatThrownBy(() -> flow.go(100.0))
        .hasMessageContaining("resistors of 22.000 and 100.00 ohm")
        .hasMessageContaining("22 kohm is 22000");
    assertThat(flow.step()).isEqualTo(ProbeStep.SMALL);
    flow.back();
    flow.go(22_000.0);
    assertThatThrownBy(() -> flow.go(0.0)).hasMessageContaining("both over 0");
    flow.leave();
  }

  @Test
  void writesIntoTheBoxAndIntoTheLogAndThenLetsItCut() throws Exception {
    upTo(ProbeStep.WRITTEN);
    assertThat(desk.emulatedLog()).exists();
    assertThat(desk.log()).doesNotExist();
    flow.go(null);
    assertThat(flow.step()).isEqualTo(ProbeStep.CUT);
    flow.go(null);
    assertThat(flow.cut().works()).isTrue();
    assertThat(presenter.cut(flow.cut()))
        .isEqualTo("It switched 1.2 A off in 0.5 ms. Not tried: the 10 A path.");
    flow.leave();
  }

  @Test
  void canBeLeftBetweenTwoStepsAndTakenUpAgain() throws Exception {
    upTo(ProbeStep.LOW);
    desk.leaveProbe();
    ProbeFlow again = desk.probeFlow();
    assertThat(again).isSameAs(flow);
    assertThat(again.step()).isEqualTo(ProbeStep.LOW);
    while (again.step() != ProbeStep.RESULT) {
      again.go(again.demoReading());
    }
    assertThat(again.lines()).hasSize(Channel.values().length);
    desk.leaveProbe();
  }

  @Test
  void isForgottenOnceItIsFinished() throws Exception {
    upTo(ProbeStep.WRITTEN);
    desk.leaveProbe();
    assertThat(desk.probeFlow()).isNotSameAs(flow);
    assertThat(desk.probeFlow().step()).isEqualTo(ProbeStep.START);
  }

  @Test
  void saysWhyABoxCannotBeReached() {
    assertThatThrownBy(() -> flow.begin("/dev/none", ProbeStep.ZERO))
        .hasMessageContaining("/dev/none");
    assertThat(flow.step()).isEqualTo(ProbeStep.START);
  }

  @Test
  void remembersARealTrialOnly() throws Exception {
    flow.begin(null, ProbeStep.CUT);
    flow.go(null);
    assertThat(flow.cut().works()).isTrue();
    assertThat(desk.settings().cutTriedEpochMs()).isNull();
    flow.leave();
  }

  @Test
  void aReadingBesideTheLineIsRefusedAndNothingIsWritten() throws Exception {
    flow.begin(null, ProbeStep.ZERO);
    while (flow.step() != ProbeStep.HIGH_READ) {
      flow.go(flow.step() == ProbeStep.VOLTS ? Double.valueOf(-9) : flow.demoReading());
    }
    assertThatThrownBy(() -> flow.go(flow.demoReading())).isNotNull();
    assertThat(flow.step()).isNotEqualTo(ProbeStep.RESULT);
    flow.leave();
  }
}
