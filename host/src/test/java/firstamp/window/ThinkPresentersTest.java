package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.locate.Examples;
import firstamp.locate.signal.JointKind;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.signal.SignalGraph;
import firstamp.study.SearchState;
import firstamp.window.search.SearchPresenter;
import firstamp.window.search.SearchView;
import firstamp.window.search.WirePresenter;
import firstamp.window.search.WireView;
import firstamp.window.widgets.ChainLayout;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What the two views say, without a display. */
class ThinkPresentersTest {
  private final Words words = new Words(Locale.ENGLISH);
  private final Numbers numbers = new Numbers(Locale.ENGLISH);

  private SearchView search(int steps) {
    return new SearchPresenter(words, numbers).view(ThinkViews.search(steps), null);
  }

  private WireView wires(String name, int steps, int index) {
    return new WirePresenter(words, numbers).view(ThinkViews.wires(name, steps), index);
  }

  private static SearchView.Box box(SearchView view, String name) {
    return view.boxes().stream().filter(one -> one.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void oneSentenceSaysWhereToMeasureNext() {
    SearchView view = search(2);
    assertThat(view.headline()).isEqualTo("Measure here next: driver out");
    assertThat(view.action())
        .contains("Switched to record")
        .contains("meter input")
        .contains("\u22124.0 dBV when all is well");
    assertThat(box(view, "driver out").tone()).isEqualTo(Tone.ASK);
    assertThat(box(view, "meter").level()).isEqualTo("there");
    assertThat(box(view, "meter").tone()).isEqualTo(Tone.CALM);
    assertThat(box(view, "head").tone()).isEqualTo(Tone.ALARM);
    assertThat(box(view, "microphone").found()).isFalse();
    assertThat(view.likely()).hasSize(3);
  }

  @Test
  void theChainShowsTheLevelsAndWhereItIsLost() {
    SearchView view = search(5);
    assertThat(view.tone()).isEqualTo(Tone.CAUTION);
    assertThat(view.headline())
        .isEqualTo("The signal is lost at muting contact of the earphone jack");
    assertThat(box(view, "behind the jack").level()).contains("42.0 dBV");
    assertThat(box(view, "behind the jack").tone()).isEqualTo(Tone.ALARM);
    assertThat(box(view, "driver out").tone()).isEqualTo(Tone.CALM);
    assertThat(view.lines()).filteredOn(SearchView.Line::suspect).hasSize(1);
    assertThat(view.done().get(0)).contains("Dirty contact");
    assertThat(view.spoken()).contains("driver out \u22124.0 dBV");
  }

  @Test
  void theMeterHangsBelowTheChain() {
    SearchView view = search(0);
    assertThat(box(view, "meter").row()).isEqualTo(1);
    assertThat(box(view, "meter").column()).isEqualTo(box(view, "driver in").column());
    for (String main : List.of("microphone", "preamp out", "driver in", "driver out", "head")) {
      assertThat(box(view, main).row()).as(main).isZero();
    }
    // Nothing of the play chain is drawn while the set records.
    assertThat(view.boxes()).noneMatch(one -> one.name().equals("loudspeaker"));
  }

  @Test
  void aLongPathGoesOnInAnotherBandAndNoTwoBoxesShareAPlace() {
    for (String name : List.of("record-chain", "play-chain", "receiver", "amplifier")) {
      LocateSession chain = Examples.search(name);
      SearchView view =
          new SearchPresenter(words, numbers)
              .view(new SearchState(chain, null, null, List.of(), 0), null);
      Set<List<Integer>> places = new java.util.HashSet<>();
      for (SearchView.Box one : view.boxes()) {
        assertThat(places.add(List.of(one.column(), one.row()))).as(name + " " + one).isTrue();
        assertThat(one.column()).isBetween(0, ChainLayout.MOST_COLUMNS - 1);
      }
    }
  }

  @Test
  void aWayBackEndsTheLayoutToo() {
    List<SignalGraph.PathPoint> points = new ArrayList<>();
    List<SignalGraph.PathJoint> joints = new ArrayList<>();
    for (int at = 0; at < 4; at++) {
      points.add(new SignalGraph.PathPoint("P" + at, -20.0));
    }
    for (int at = 1; at < 4; at++) {
      joints.add(new SignalGraph.PathJoint("J" + at, "P" + (at - 1), "P" + at, JointKind.STAGE));
    }
    joints.add(new SignalGraph.PathJoint("back", "P3", "P1", JointKind.WIRE));
    SignalGraph graph =
        new SignalGraph("loop", List.of(new SignalGraph.Mode("usual", "P0")), points, joints);
    assertThat(ChainLayout.of(graph, "usual").places()).hasSize(4);
  }

  @Test
  void aRailAlarmStandsInTheWay() {
    SearchState state = ThinkViews.search(2);
    LocateSession refused = state.search().withRailAlarms(List.of("B1 is too low"));
    SearchView view =
        new SearchPresenter(words, numbers)
            .view(new SearchState(refused, null, null, List.of(), 0), null);
    assertThat(view.tone()).isEqualTo(Tone.ALARM);
    assertThat(view.headline()).contains("supplies first");
    assertThat(view.action()).contains("B1 is too low");
  }

  @Test
  void oneWireWithItsThreeSafestPlacesColourLast() {
    WireView view = wires("screened-lead", 7, 0);
    assertThat(view.headline()).isEqualTo("Try it at preamp input");
    assertThat(view.places()).hasSize(3);
    assertThat(view.places().get(0).name()).isEqualTo("preamp input");
    assertThat(view.places().get(0).likely()).isEqualTo("most likely");
    assertThat(view.places().get(0).tone()).isEqualTo(Tone.ASK);
    assertThat(view.about()).startsWith("screened").endsWith("colour grey (says little)");
    assertThat(view.table()).hasSize(5);
    assertThat(view.table().get(4)).contains("record head tag").contains("head");
  }

  @Test
  void aPlaceThatIsRuledOutSaysWhy() {
    WireView view = wires("cotton-leads", 6, 0);
    WireView.PlaceView base = view.places().get(2);
    assertThat(base.name()).isEqualTo("driver base tag");
    assertThat(base.likely()).isEqualTo("ruled out");
    assertThat(base.reason()).contains("holds the volts of a rail");
    assertThat(view.warnings()).anyMatch(text -> text.contains("colour charts"));
  }

  @Test
  void whatFitsIsNotProvenUntilTwoFiguresAgree() {
    assertThat(wires("screened-lead", 8, 0).tone()).isEqualTo(Tone.CAUTION);
    assertThat(wires("screened-lead", 8, 0).headline()).contains("not proven yet");
    assertThat(wires("screened-lead", 9, 0).tone()).isEqualTo(Tone.CALM);
    assertThat(wires("screened-lead", 10, 0).done().get(0)).startsWith("Moved W3 to preamp input");
  }

  @Test
  void noPercentagesAnywhere() {
    for (int steps = 0; steps <= 5; steps++) {
      assertThat(search(steps).toString()).doesNotContain("%");
    }
    for (int steps = 0; steps <= 10; steps++) {
      assertThat(wires("screened-lead", steps, 0).toString()).doesNotContain("%");
    }
  }
}
