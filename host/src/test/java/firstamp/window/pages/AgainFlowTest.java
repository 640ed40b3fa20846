package firstamp.window.pages;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.Difference;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.run.TripsInARow;
import firstamp.window.FakeSession;
import org.junit.jupiter.api.Test;

/** What is asked before a set that switched itself off is switched on again. */
class AgainFlowTest {
  private final JobSheet sheet = new FakeSession(FakeSession.Scene.SHORT).snapshot().sheet();

  private AgainFlow after(int trips) {
    return new AgainFlow(sheet, 7, new TripsInARow(trips, "running", null));
  }

  @Test
  void aPartThatWasChangedGoesOnAtOnce() {
    assertThat(after(1).different(Difference.PART))
        .isEqualTo(new ProbeEvent.SwitchedOnAgain(0, 7, Difference.PART, 0, null, null));
  }

  @Test
  void nothingDifferentWantsOhmsOrHalfTheVolts() {
    AgainFlow flow = after(1);
    assertThat(flow.different(Difference.NOTHING)).isNull();
    assertThat(flow.stage()).isEqualTo(AgainFlow.Stage.PROOF);
    assertThat(flow.half().halfV()).isEqualTo(6.0);
    flow.ohms();
    assertThat(flow.ohm(1, 820).ohm()).isEqualTo(820.0);
  }

  @Test
  void theSameCauseTwiceWantsThemWhateverIsDifferent() {
    assertThat(after(2).different(Difference.WIRE)).isNull();
  }

  @Test
  void ohmsOfAShortForbid() {
    AgainFlow flow = after(1);
    flow.different(Difference.NOTHING);
    flow.ohms();
    assertThat(flow.ohm(0, 1)).isNull();
    assertThat(flow.forbids()).as("12 V over 1 ohm").isEqualTo(12.0);
    assertThat(flow.stage()).as("another reading can be typed").isEqualTo(AgainFlow.Stage.OHM);
  }

  @Test
  void goesBackStageByStage() {
    AgainFlow flow = after(1);
    flow.different(Difference.NOTHING);
    flow.ohms();
    assertThat(flow.back()).isTrue();
    assertThat(flow.stage()).isEqualTo(AgainFlow.Stage.PROOF);
    assertThat(flow.back()).isTrue();
    assertThat(flow.back()).isFalse();
  }
}
