package firstamp.locate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import firstamp.locate.signal.JointKind;
import firstamp.locate.signal.SignalGraph;
import firstamp.locate.wire.LandingPlace;
import firstamp.locate.wire.PlaceKind;
import firstamp.locate.wire.WireCase;
import firstamp.model.JobSheet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SheetPathTest {
  private static JobSheet sheet(
      JobSheet.SignalPath path, JobSheet.Limits limits, JobSheet.UnknownWire... wires) {
    return new JobSheet(
        1,
        new JobSheet.SetInfo("Set", "recorder", "positive"),
        new JobSheet.Supply("bench", "supply-lead", 9.0, 8.0, 10.0, 0.15, null, true),
        limits,
        List.of(new JobSheet.Rail(1, "B1", -7.2, 10.0, 300.0, null, null, null, null)),
        null,
        null,
        path,
        List.of(wires));
  }

  private static JobSheet.SignalPath path() {
    return new JobSheet.SignalPath(
        List.of(
            new JobSheet.TestPoint("in", -60.0, null, null),
            new JobSheet.TestPoint(
                "out", -20.0, 3.0, List.of(new JobSheet.ModeLevel("play", -10.0)))),
        List.of(
            new JobSheet.Joint("amp", "in", "out", null, null, null),
            new JobSheet.Joint("bypass", "in", "out", "switch", List.of("play"), 9.0)),
        List.of(new JobSheet.Mode("record", "in"), new JobSheet.Mode("play", "in")));
  }

  @Test
  void readsThePathWithItsModes() {
    SignalGraph graph = SheetPath.graph(sheet(path(), null));
    assertThat(graph.modes()).extracting(SignalGraph.Mode::name).containsExactly("record", "play");
    assertThat(graph.points().get(1).expectedDbv("record")).isEqualTo(-20);
    assertThat(graph.points().get(1).expectedDbv("play")).isEqualTo(-10);
    assertThat(graph.points().get(1).effort()).isEqualTo(3);
    assertThat(graph.joints().get(0).kind()).isEqualTo(JointKind.STAGE);
    assertThat(graph.joints().get(0).weight()).isEqualTo(JointKind.STAGE.weight());
    assertThat(graph.joints().get(1).modes()).isEqualTo(Set.of("play"));
    assertThat(graph.joints().get(1).weight()).isEqualTo(9);
  }

  @Test
  void aSheetWithoutModesIsDrivenAtItsFirstPoint() {
    JobSheet.SignalPath plain =
        new JobSheet.SignalPath(path().points().subList(0, 1), path().joints(), null);
    assertThat(SheetPath.hasPath(sheet(plain, null))).isFalse();
    JobSheet.SignalPath one =
        new JobSheet.SignalPath(
            List.of(
                new JobSheet.TestPoint("in", null, null, null),
                new JobSheet.TestPoint("out", null, null, null)),
            List.of(new JobSheet.Joint("amp", "in", "out", "wire", null, null)),
            null);
    assertThat(SheetPath.graph(sheet(one, null)).modes().get(0).source()).isEqualTo("in");
    assertThatThrownBy(() -> SheetPath.graph(sheet(null, null))).hasMessageContaining("\"path\"");
  }

  @Test
  void readsTheWiresAndTakesUnknownPlacesForTheWorst() {
    JobSheet.UnknownWire wire =
        new JobSheet.UnknownWire(
            "W3",
            "grey",
            "screened",
            85.0,
            null,
            List.of(
                new JobSheet.Landing("out", null, null),
                new JobSheet.Landing("B1", null, null),
                new JobSheet.Landing("chassis", null, null),
                new JobSheet.Landing("tag 4", null, "not known"),
                new JobSheet.Landing("base", "base", null)));
    JobSheet.Limits limits = new JobSheet.Limits(null, null, 0.05, null, null);
    WireCase wires = SheetPath.wires(sheet(path(), limits, wire));
    assertThat(wires.places())
        .extracting(LandingPlace::kind)
        .containsExactly(
            PlaceKind.SIGNAL,
            PlaceKind.RAIL,
            PlaceKind.CHASSIS,
            PlaceKind.NOT_SAID,
            PlaceKind.BASE);
    assertThat(PlaceKind.NOT_SAID.harm()).isEqualTo(PlaceKind.HEAD.harm());
    assertThat(wires.set().runningA()).isEqualTo(0.05);
    assertThat(wires.set().chassis()).isEqualTo("positive");
    assertThat(wires.set().supplyV()).isEqualTo(9);
    assertThatThrownBy(() -> SheetPath.wires(sheet(path(), limits)))
        .hasMessageContaining("unknownWires");
  }
}
