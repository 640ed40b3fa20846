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

  private void upTo(ProbeFlow.Step step) throws Exception {
    flow.begin(null, ProbeFlow.Step.ZERO);
    while (flow.step() != step) {
      flow.go(flow.demoReading());
    }
  }

  @Test
  void findsByHowMuchEachInputIsOff() throws Exception {
    upTo(ProbeFlow.Step.RESULT);
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
        .anyMatch(line -> line.contains("head") && line.contains("zero measured"));
    flow.leave();
  }

  @Test
  void writesIntoTheBoxAndIntoTheLogAndThenLetsItCut() throws Exception {
    upTo(ProbeFlow.Step.WRITTEN);
    assertThat(desk.emulatedLog()).exists();
    assertThat(desk.log()).doesNotExist();
    flow.go(null);
    assertThat(flow.step()).isEqualTo(ProbeFlow.Step.CUT);
    flow.go(null);
    assertThat(flow.cut().works()).isTrue();
    assertThat(presenter.cut(flow.cut()))
        .isEqualTo("It switched 1.2 A off in 0.5 ms. Not tried: the 10 A path.");
    flow.leave();
  }

  @Test
  void canBeLeftBetweenTwoStepsAndTakenUpAgain() throws Exception {
    upTo(ProbeFlow.Step.LOW);
    desk.leaveProbe();
    ProbeFlow again = desk.probeFlow();
    assertThat(again).isSameAs(flow);
    assertThat(again.step()).isEqualTo(ProbeFlow.Step.LOW);
    while (again.step() != ProbeFlow.Step.RESULT) {
      again.go(again.demoReading());
    }
    assertThat(again.lines()).hasSize(Channel.values().length);
    desk.leaveProbe();
  }

  @Test
  void isForgottenOnceItIsFinished() throws Exception {
    upTo(ProbeFlow.Step.WRITTEN);
    desk.leaveProbe();
    assertThat(desk.probeFlow()).isNotSameAs(flow);
    assertThat(desk.probeFlow().step()).isEqualTo(ProbeFlow.Step.START);
  }

  @Test
  void saysWhyABoxCannotBeReached() {
    assertThatThrownBy(() -> flow.begin("/dev/none", ProbeFlow.Step.ZERO))
        .hasMessageContaining("/dev/none");
    assertThat(flow.step()).isEqualTo(ProbeFlow.Step.START);
  }

  @Test
  void remembersARealTrialOnly() throws Exception {
    flow.begin(null, ProbeFlow.Step.CUT);
    flow.go(null);
    assertThat(flow.cut().works()).isTrue();
    assertThat(desk.settings().cutTriedEpochMs()).isNull();
    flow.leave();
  }

  @Test
  void aReadingBesideTheLineIsRefusedAndNothingIsWritten() throws Exception {
    flow.begin(null, ProbeFlow.Step.ZERO);
    while (flow.step() != ProbeFlow.Step.HIGH_READ) {
      flow.go(flow.step() == ProbeFlow.Step.VOLTS ? Double.valueOf(-9) : flow.demoReading());
    }
    assertThatThrownBy(() -> flow.go(flow.demoReading())).isNotNull();
    assertThat(flow.step()).isNotEqualTo(ProbeFlow.Step.RESULT);
    flow.leave();
  }
}
