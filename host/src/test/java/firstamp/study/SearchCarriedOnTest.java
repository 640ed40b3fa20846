package firstamp.study;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.locate.signal.JointKind;
import firstamp.locate.signal.Observation;
import firstamp.locate.signal.SignalGraph;
import firstamp.model.ClipMove;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The clip is moved while the set is off: each point has a power-up of its own. */
class SearchCarriedOnTest {
  private static SignalGraph graph(String name) {
    return new SignalGraph(
        name,
        List.of(new SignalGraph.Mode("usual", "A")),
        List.of(
            new SignalGraph.PathPoint("A", null),
            new SignalGraph.PathPoint("B", null),
            new SignalGraph.PathPoint("C", null)),
        List.of(
            new SignalGraph.PathJoint("A to B", "A", "B", JointKind.STAGE),
            new SignalGraph.PathJoint("B to C", "B", "C", JointKind.STAGE)));
  }

  private static ClipMove at(ClipMove.Act act, String point) {
    return ClipMove.at(act, point, null, null);
  }

  @Test
  void theNextPowerUpKnowsWhatTheLastOneFound() {
    SignalSearch first = new SignalSearch(graph("Set"));
    first.happened(at(ClipMove.Act.GONE, "C"), 0);
    SignalSearch second = new SignalSearch(graph("Set"));
    second.carryOn(first.state());
    assertThat(second.state().search().observations()).hasSize(1);
    second.happened(at(ClipMove.Act.THERE, "B"), 0);
    assertThat(second.state().search().observations())
        .containsExactly(
            new Observation.Heard("C", null, null, false),
            new Observation.Heard("B", null, null, true));
    assertThat(second.state().search().answer().odds().get(0).joint()).isEqualTo("B to C");
  }

  @Test
  void anotherPathBeginsAfresh() {
    SignalSearch first = new SignalSearch(graph("Set"));
    first.happened(at(ClipMove.Act.GONE, "C"), 0);
    SignalSearch other = new SignalSearch(graph("Other"));
    other.carryOn(first.state());
    other.carryOn(null);
    assertThat(other.state().search().observations()).isEmpty();
  }
}
