package firstamp.locate.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import firstamp.locate.Chains;
import firstamp.locate.signal.Observation.Heard;
import firstamp.locate.signal.Observation.Level;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LocateSessionTest {
  private static LocateSession template(String name) {
    try (InputStream in =
        LocateFile.class.getResourceAsStream("/firstamp/locate/" + name + ".json")) {
      return LocateFile.read(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException broken) {
      throw new java.io.UncheckedIOException(name, broken);
    }
  }

  private static Level level(String point, double dbv) {
    return new Level(point, null, null, dbv, 0.5);
  }

  private static double share(LocateAnswer answer, String joint) {
    return answer.odds().stream()
        .filter(one -> one.joint().equals(joint))
        .findFirst()
        .orElseThrow()
        .share();
  }

  /**
   * Half-split rule (US Army subcourse IT0338 edition A, 1996, frame 10): with equal odds the
   * middle comes first, and N blocks need ceil(log2 N) checks at most.
   */
  @ParameterizedTest
  @CsvSource({"2,1", "4,2", "8,3", "10,4", "16,4", "100,7"})
  void halvesAChainOfEqualOdds(int joints, int checks) {
    SignalGraph graph = Chains.even(joints);
    int most = 0;
    for (int fault = 1; fault <= joints; fault++) {
      LocateSession session = Chains.session(graph, Chains.ONE_FAULT);
      LocateAnswer answer = session.answer();
      int asked = 0;
      while (answer.state() == LocateAnswer.State.MEASURE) {
        int point = Integer.parseInt(answer.next().point().substring(1));
        if (asked == 0) {
          assertThat(point).isBetween(joints / 2, (joints + 1) / 2);
        }
        session = session.with(new Level("P" + point, null, null, point >= fault ? -50 : -20, 0.1));
        answer = session.answer();
        asked++;
      }
      assertThat(answer.state()).isEqualTo(LocateAnswer.State.FOUND);
      assertThat(answer.odds().get(0).joint()).isEqualTo("J" + fault);
      most = Math.max(most, asked);
    }
    assertThat(most).isEqualTo(checks);
  }

  /**
   * An uneven chain by arithmetic: the cut nearest half of the odds, 0.65 to 0.35, not the middle.
   */
  @Test
  void cutsAnUnevenChainWhereTheOddsHalve() {
    SignalGraph graph = Chains.of(.05, .10, .10, .40, .20, .10, .05);
    FaultOdds odds =
        FaultOdds.of(
            new double[] {.05, .10, .10, .40, .20, .10, .05},
            new Readings(new LossGrid()),
            Chains.ONE_FAULT);
    NextPoint next =
        new NextPoint(graph, Map.of("usual", Reach.of(graph, "usual", "P0")), new LossGrid());
    double[] expected = {0.2864, 0.6098, 0.8113, 0.9341, 0.6098, 0.2864};
    for (int point = 1; point <= 6; point++) {
      assertThat(next.bits(odds, "usual", point, 0.1)).isCloseTo(expected[point - 1], within(5e-5));
    }
    LocateAnswer answer = Chains.session(graph, Chains.ONE_FAULT).answer();
    assertThat(answer.next().point()).isEqualTo("P4");
    assertThat(answer.next().bits()).isCloseTo(0.9341, within(5e-5));
  }

  @Test
  void aMovingMeterClearsNothingBehindItsBranch() {
    LocateSession session = template("record-chain").with(new Heard("head", null, null, false));
    LocateAnswer before = session.answer();
    LocateAnswer after = session.with(level("meter", -18.5)).answer();
    assertThat(share(after, "preamp")).isLessThan(0.1 * share(before, "preamp"));
    assertThat(share(after, "microphone socket"))
        .isLessThan(0.1 * share(before, "microphone socket"));
    assertThat(share(after, "head contact, record"))
        .isGreaterThan(share(before, "head contact, record"));
    assertThat(after.next().point()).isNotEqualTo("meter").isNotEqualTo("preamp out");
  }

  @Test
  void theOtherModeClearsWhatBothShare() {
    LocateSession session = template("record-chain").with(new Heard("meter", null, null, false));
    double before = share(session.answer(), "preamp");
    LocateSession played = session.with(new Heard("loudspeaker", "play", null, true));
    assertThat(share(played.answer(), "preamp")).isLessThan(0.2 * before);
    assertThat(share(played.answer(), "microphone socket")).isGreaterThan(0.4);
  }

  @Test
  void refusesAPointThatNothingReachesInThisMode() {
    LocateSession session = template("record-chain");
    assertThatThrownBy(() -> session.with(new Heard("driver out", "play", null, true)))
        .hasMessageContaining("driver out")
        .hasMessageContaining("play");
  }

  @Test
  void oneGoodWayIsEnough() {
    SignalGraph graph =
        new SignalGraph(
            "two ways",
            List.of(new SignalGraph.Mode("usual", "in")),
            List.of(
                new SignalGraph.PathPoint("in", -20.0),
                new SignalGraph.PathPoint("left", -20.0),
                new SignalGraph.PathPoint("out", -20.0)),
            List.of(
                new SignalGraph.PathJoint("a", "in", "left", JointKind.WIRE),
                new SignalGraph.PathJoint("b", "left", "out", JointKind.WIRE),
                new SignalGraph.PathJoint("c", "in", "out", JointKind.WIRE)));
    Reach reach = Reach.of(graph, "usual", "in");
    assertThat(reach.needed(graph.pointIndex("left")).cardinality()).isEqualTo(1);
    assertThat(reach.needed(graph.pointIndex("out")).isEmpty()).isTrue();
  }

  @Test
  void endsOnAPathWithAWayBack() {
    SignalGraph chain = Chains.even(4);
    List<SignalGraph.PathJoint> joints = new java.util.ArrayList<>(chain.joints());
    joints.add(new SignalGraph.PathJoint("feedback", "P3", "P1", JointKind.LOOP));
    SignalGraph graph = new SignalGraph("loop", chain.modes(), chain.points(), joints);
    assertThat(Reach.of(graph, "usual", "P0").needed(4).cardinality()).isEqualTo(4);
  }

  @Test
  void namesBothOfTwoFaultsByTheirSteps() {
    LocateSession session = Chains.session(Chains.even(8), FaultSettings.usual());
    for (int point = 1; point <= 8; point++) {
      double lost = (point >= 3 ? 12 : 0) + (point >= 6 ? 20 : 0);
      session = session.with(level("P" + point, -20 - lost));
    }
    LocateAnswer answer = session.answer();
    assertThat(answer.state()).isEqualTo(LocateAnswer.State.FOUND);
    assertThat(answer.twoLikely()).isTrue();
    assertThat(answer.odds().subList(0, 2))
        .extracting(LocateAnswer.JointOdds::joint)
        .containsExactlyInAnyOrder("J3", "J6");
    assertThat(answer.sentence()).contains("second").contains("again where the signal was missed");
  }

  @Test
  void oneSlippedClipDoesNotNameAWrongJoint() {
    LocateSession session = Chains.session(Chains.even(8), FaultSettings.usual());
    session = session.with(level("P8", -50)).with(level("P4", -50)).with(level("P2", -20));
    session = session.with(level("P3", -20)).with(level("P5", -50));
    assertThat(session.answer().odds().get(0).joint()).isEqualTo("J4");
    // P6 read as if all were well although P4, P5 and P8 have lost the signal: the clip had
    // slipped.
    assertThat(session.with(level("P6", -20)).answer().odds().get(0).joint()).isEqualTo("J4");
  }

  @Test
  void prefersAPointInReachToOneUnderTheBoard() {
    SignalGraph chain = Chains.even(8);
    List<SignalGraph.PathPoint> points = new java.util.ArrayList<>(chain.points());
    points.set(4, new SignalGraph.PathPoint("P4", -20.0, Map.of(), 3));
    SignalGraph graph = new SignalGraph("board", chain.modes(), points, chain.joints());
    assertThat(Chains.session(graph, Chains.ONE_FAULT).answer().next().point()).isIn("P3", "P5");
  }

  @Test
  void refusesWhileARailAlarmStands() {
    LocateAnswer answer =
        template("play-chain").withRailAlarms(List.of("B1 is at 5.1 V, not at 8.2 V")).answer();
    assertThat(answer.state()).isEqualTo(LocateAnswer.State.REFUSED);
    assertThat(answer.next()).isNull();
    assertThat(answer.sentence()).contains("B1").contains("Supplies first");
  }

  @Test
  void aDirtyContactComesForward() {
    LocateSession session =
        template("play-chain").with(new Heard("loudspeaker", null, null, false));
    double before = share(session.answer(), "jack contact");
    LocateSession worked =
        session.with(new Observation.Strokes("jack contact", List.of(-30.0, -12.0, -6.0, -25.0)));
    assertThat(share(worked.answer(), "jack contact")).isGreaterThan(2 * before);
    assertThat(worked.answer().remarks().get(0).english()).contains("Dirty contact");
  }

  @Test
  void measuresAgainWhereItWasMissedAfterMending() {
    LocateSession session =
        template("play-chain")
            .with(new Heard("loudspeaker", null, null, false))
            .with(new Observation.Mended("jack contact"));
    assertThat(session.answer().state()).isEqualTo(LocateAnswer.State.MEASURE);
    assertThat(session.answer().next().point()).isEqualTo("loudspeaker");
    LocateSession good = session.with(level("loudspeaker", -6));
    assertThat(good.answer().sentence()).isEqualTo("The signal reaches the loudspeaker.");
    assertThat(good.answer().odds().get(0).share()).isLessThan(0.5);
  }

  @Test
  void takesBackTheLastStep() {
    LocateSession session =
        template("play-chain").with(new Heard("loudspeaker", null, null, false));
    assertThat(session.with(level("preamp out", -32)).undo()).isEqualTo(session);
    assertThatThrownBy(() -> template("play-chain").undo()).hasMessageContaining("nothing");
  }

  @ParameterizedTest
  @ValueSource(strings = {"record-chain", "play-chain", "receiver", "amplifier"})
  void templatesStartAndComeBackFromTheirFile(String name) {
    LocateSession session = template(name);
    assertThat(session.answer().next()).isNotNull();
    assertThat(session.answer().sentence()).startsWith("Measure here next: ");
    LocateSession again = LocateFile.read(LocateFile.write(session));
    assertThat(again).isEqualTo(session);
    assertThat(again.answer()).isEqualTo(session.answer());
  }

  @Test
  void neverSaysAPercentage() {
    LocateSession session =
        template("play-chain").with(new Heard("loudspeaker", null, null, false));
    assertThat(session.answer().sentence()).doesNotContain("%").doesNotContain("0.");
  }
}
