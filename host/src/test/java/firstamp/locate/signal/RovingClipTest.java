package firstamp.locate.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.locate.Chains;
import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.model.samples.LevelWindow;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A clip moved along a chain. Expected levels are by definition 20 log10 of the volts; 1 V is 0
 * dBV, 0.1 V is -20 dBV.
 */
class RovingClipTest {
  private static final SignalGraph GRAPH = Chains.even(4);
  private final RovingClip clip = new RovingClip(GRAPH, 0.05, 0.04);

  private static LevelWindow window(double headV, double meterV, boolean clipped) {
    return new LevelWindow(
        0, 3200, headV, meterV, null, null, 0, 0, 0, 0, 50, 1e-5, 3e-3, clipped, clipped);
  }

  private void look(double... meterV) {
    for (double volts : meterV) {
      clip.levels(window(volts / 100, volts, false));
    }
  }

  private void move(ClipMove.Act act, String name, ClipInput input) {
    clip.move(ClipMove.at(act, name, null, input));
  }

  @Test
  void takesTheSettledLevelWithItsUncertainty() {
    look(1, 1, 1);
    move(ClipMove.Act.HELD, "P2", ClipInput.METER);
    // The first window began before the clip was on, the second caught it going on.
    look(0.9, 0.01, 0.1, 0.1, 0.1, 0.1);
    move(ClipMove.Act.OFF, "", null);
    Observation.Level level = (Observation.Level) clip.taken().get(0);
    assertThat(level.point()).isEqualTo("P2");
    assertThat(level.levelDbv()).isCloseTo(-20, within(1e-9));
    // 0.25 dB of putting it on again and 0.04 dB of calibration.
    assertThat(level.uncertaintyDb()).isCloseTo(Math.hypot(0.25, 0.04), within(1e-9));
    assertThat(level.atMost()).isFalse();
    assertThat(clip.held()).isNull();
  }

  @Test
  void theHeadInputIsReadWhereItWasAskedFor() {
    move(ClipMove.Act.HELD, "P1", ClipInput.HEAD);
    look(0, 0.1, 0.1, 0.1);
    move(ClipMove.Act.OFF, "", null);
    assertThat(((Observation.Level) clip.taken().get(0)).levelDbv()).isCloseTo(-60, within(1e-9));
  }

  @Test
  void anInputThatShowsOnlyItsOwnNoiseSaysAtMost() {
    move(ClipMove.Act.HELD, "P3", ClipInput.METER);
    look(0, 0.003, 0.0031, 0.003);
    move(ClipMove.Act.OFF, "", null);
    Observation.Level level = (Observation.Level) clip.taken().get(0);
    assertThat(level.atMost()).isTrue();
    // 6 dB over 3 mV.
    assertThat(level.levelDbv()).isCloseTo(-50.4576 + 6, within(1e-3));
  }

  @Test
  void nothingIsTakenThatDidNotHoldStillOrWasTooShortOrTooHigh() {
    move(ClipMove.Act.HELD, "P3", ClipInput.METER);
    look(0, 0.1, 0.3, 0.1, 0.3);
    assertThat(clip.last().state()).isEqualTo(SettledLevel.State.NOT_STILL);
    move(ClipMove.Act.HELD, "P2", ClipInput.METER);
    look(0, 0.1, 0.1);
    assertThat(clip.last().state()).isEqualTo(SettledLevel.State.TOO_SHORT);
    move(ClipMove.Act.HELD, "P1", ClipInput.METER);
    for (int window = 0; window < 5; window++) {
      clip.levels(window(1, 1, true));
    }
    assertThat(clip.last().state()).isEqualTo(SettledLevel.State.TOO_HIGH);
    move(ClipMove.Act.OFF, "", null);
    assertThat(clip.taken()).isEmpty();
  }

  @Test
  void strokesGiveOneLevelEach() {
    for (double volts : new double[] {0.1, 0.01, 0.1, 0.03}) {
      move(ClipMove.Act.STROKE, "J2", ClipInput.METER);
      look(5, volts, volts);
    }
    assertThat(clip.strokes()).isEqualTo(3);
    move(ClipMove.Act.OFF, "", null);
    Observation.Strokes run = (Observation.Strokes) clip.taken().get(0);
    assertThat(run.joint()).isEqualTo("J2");
    assertThat(run.levelsDb()).hasSize(4);
    assertThat(run.levelsDb().get(1)).isCloseTo(-40, within(1e-9));
    assertThat(ContactRun.strokes("J2", run.levelsDb()).unsteady()).isTrue();
  }

  @Test
  void tapsHoldTheTouchedLevelsAgainstTheQuietOnes() {
    move(ClipMove.Act.RESTING, "J3", ClipInput.METER);
    look(5, 0.1, 0.1);
    move(ClipMove.Act.TOUCHED, "", null);
    look(5, 0.01, 0.1);
    move(ClipMove.Act.LEFT, "", null);
    look(5, 0.1);
    move(ClipMove.Act.OFF, "", null);
    Observation.Taps taps = (Observation.Taps) clip.taken().get(0);
    assertThat(taps.quietDb()).hasSize(3);
    assertThat(taps.touchedDb()).hasSize(2);
    assertThat(ContactRun.taps("J3", taps.quietDb(), taps.touchedDb()).unsteady()).isTrue();
  }

  @Test
  void movesAboutOtherPathsChangeNothing() {
    move(ClipMove.Act.HELD, "P2", ClipInput.METER);
    look(0, 0.1, 0.1);
    move(ClipMove.Act.THERE, "nowhere", null);
    look(0.1);
    move(ClipMove.Act.OFF, "", null);
    assertThat(clip.taken()).hasSize(1);
    move(ClipMove.Act.HELD, "nowhere", ClipInput.METER);
    assertThat(clip.held()).isNull();
  }

  @Test
  void heardAndMendedAreMovesToo() {
    move(ClipMove.Act.GONE, "P4", null);
    move(ClipMove.Act.MENDED, "J1", null);
    assertThat(clip.taken())
        .isEqualTo(
            List.of(new Observation.Heard("P4", null, null, false), new Observation.Mended("J1")));
  }

  /**
   * Two points behind the fault, one of them at the input's floor: a level that is only known to be
   * below something must not look like a second loss.
   */
  @Test
  void aFloorIsNoSecondFault() {
    LocateSession session =
        Chains.session(Chains.even(4), FaultSettings.usual())
            .with(new Observation.Level("P1", null, null, -20, 0.5))
            .with(new Observation.Level("P2", null, null, -44, 0.5, true))
            .with(new Observation.Level("P4", null, null, -75, 0.5));
    LocateAnswer answer = session.answer();
    assertThat(answer.state()).isEqualTo(LocateAnswer.State.FOUND);
    assertThat(answer.odds().get(0).joint()).isEqualTo("J2");
    assertThat(answer.twoLikely()).isFalse();
    assertThat(LocateFile.read(LocateFile.write(session))).isEqualTo(session);
  }
}
