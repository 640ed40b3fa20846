package firstamp.window.present;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.bench.Snapshot;
import firstamp.model.text.Worded;
import firstamp.window.ChangedSnapshot;
import firstamp.window.FakeSession;
import firstamp.window.Scenes;
import firstamp.window.widgets.Tone;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What the window says, scene by scene, without a display. */
class BenchPresenterTest {
  private final BenchPresenter presenter = new BenchPresenter(Locale.ENGLISH);

  private BenchView view(FakeSession.Scene scene) {
    return presenter.view(new FakeSession(scene).snapshot(), null);
  }

  @Test
  void saysOnAndWhatIsNotWatched() {
    BenchView view = view(FakeSession.Scene.HEALTHY);
    assertThat(view.sentence().tone()).isEqualTo(Tone.CALM);
    assertThat(view.sentence().headline()).isEqualTo("On. No alarm so far");
    assertThat(view.sentence().action())
        .isEqualTo("Not watched: rail 3 (no clip); ripple of B2 bias (not on the job sheet).");
    assertThat(view.elapsed()).isEqualTo("0:07");
    assertThat(view.figures())
        .extracting(BenchView.FigureView::word)
        .containsExactly(
            "steady", "in range, steady", "in range, steady", "in range, steady", "expected 38 dB");
    assertThat(view.controls().off()).isTrue();
    assertThat(view.controls().seen()).isFalse();
    assertThat(view.controls().restore()).isNull();
  }

  @Test
  void putsATripFirstInSentenceAndTitle() {
    BenchView view = view(FakeSession.Scene.SHORT);
    assertThat(view.sentence().tone()).isEqualTo(Tone.ALARM);
    assertThat(view.sentence().headline()).isEqualTo("A short: 0.51 \u03a9");
    assertThat(view.sentence().action())
        .startsWith("After 3.10 s: At that moment the set was a short: 0.51")
        .contains("Since W3 went to P7");
    assertThat(view.title()).startsWith("A short: 0.51 \u03a9");
    assertThat(view.folded()).hasSize(1);
    assertThat(view.folded().get(0)).contains("A short: 0.51 \u03a9");
    assertThat(view.controls().off()).isFalse();
    assertThat(view.controls().seen()).isTrue();
    assertThat(view.controls().restore()).isEqualTo(4);
    assertThat(view.trip().sentence())
        .isEqualTo(
            "From \"limit crossed\" to \"switch open\" it took 0.71 ms. Highest current 8.10 A.");
    assertThat(view.trip().limitA()).isEqualTo(1.0);
  }

  @Test
  void saysThatTheMainsSideIsStillLiveUnlessThePlugIsOut() {
    for (String sits : new String[] {"before-reservoir", "after-reservoir", "not-connected"}) {
      Snapshot plugged = Scenes.withSupply("mains-transformer", sits, FakeSession.Scene.SHORT);
      assertThat(presenter.view(plugged, null).sentence().action())
          .endsWith(
              "The mains side is still live. Pull the plug."
                  + (sits.endsWith("reservoir") ? " The reservoir is still charged." : ""))
          .containsOnlyOnce("Pull the plug");
    }
    Snapshot out = Scenes.withSupply("mains-transformer", "reservoir-fed", FakeSession.Scene.SHORT);
    assertThat(presenter.view(out, null).sentence().action()).doesNotContain("mains");
  }

  @Test
  void marksTheRailThatLeftItsWindow() {
    BenchView view = view(FakeSession.Scene.RAIL_LOW);
    assertThat(view.figures().get(2).word()).isEqualTo("LOW");
    assertThat(view.figures().get(2).tone()).isEqualTo(Tone.ALARM);
    assertThat(view.figures().get(3).tone()).isEqualTo(Tone.PLAIN);
    assertThat(view.sentence().headline()).isEqualTo("B1 out of range: 7.10 V");
    assertThat(view.links())
        .extracting(BenchView.LinkView::text)
        .containsExactly("cable: 320 lost", "not logging");
    assertThat(view.links().get(1).tone()).isEqualTo(Tone.ALARM);
  }

  @Test
  void callsALowNegativeRailLow() {
    Snapshot low = Scenes.withRail(2, -3.1, -4.4, -3.6, FakeSession.Scene.HEALTHY);
    assertThat(presenter.view(low, null).figures().get(3).word()).isEqualTo("LOW");
    Snapshot high = Scenes.withRail(2, -4.9, -4.4, -3.6, FakeSession.Scene.HEALTHY);
    assertThat(presenter.view(high, null).figures().get(3).word()).isEqualTo("HIGH");
    Snapshot wrong = Scenes.withRail(2, 2.0, -4.4, -3.6, FakeSession.Scene.HEALTHY);
    assertThat(presenter.view(wrong, null).figures().get(3).word()).isEqualTo("WRONG WAY ROUND");
  }

  @Test
  void tellsTheHeadThatIsTooFarBelowTheMeter() {
    BenchView view = view(FakeSession.Scene.LOST_HEAD);
    assertThat(view.sentence().tone()).isEqualTo(Tone.CAUTION);
    assertThat(view.figures().get(4).word()).isEqualTo("LOW, expect 38 dB");
    assertThat(view.figures().get(4).tone()).isEqualTo(Tone.CAUTION);
  }

  /** Both count from the meter: the bar as it was when it was raised, the figure as it is now. */
  @Test
  void barAndFigureOfALostHeadAgree() {
    BenchView view = view(FakeSession.Scene.LOST_HEAD);
    assertThat(view.figures().get(4).name()).isEqualTo("head below meter");
    assertThat(view.figures().get(4).number()).isEqualTo("70.0");
    assertThat(view.sentence().headline()).isEqualTo("Head low: 70.2 dB below the meter");
  }

  /** Nothing was measured: no clip is reported off. */
  @Test
  void noClipIsCalledOffBeforeAnythingWasMeasured() throws Exception {
    Snapshot asking = new FakeSession(FakeSession.Scene.ASKING).snapshot();
    List<Snapshot.Rail> unmeasured = List.of(new Snapshot.Rail(1, "B1", null, 7.79, 8.61, false));
    Map<String, Object> changes = new HashMap<>();
    changes.put("supplyA", null);
    changes.put("supplyV", null);
    changes.put("rails", unmeasured);
    BenchView.FigureView nothing =
        presenter.view(ChangedSnapshot.of(asking, changes), null).figures().get(2);
    assertThat(nothing.word()).isEqualTo("not measured yet");
    assertThat(nothing.tone()).isEqualTo(Tone.PLAIN);
    changes.put("supplyV", 0.0);
    BenchView.FigureView open =
        presenter.view(ChangedSnapshot.of(asking, changes), null).figures().get(2);
    assertThat(open.word()).isEqualTo("clip is off");
    assertThat(open.tone()).isEqualTo(Tone.CAUTION);
  }

  @Test
  void showsRailsUntilTheyAreDownAndNeverCallsThemSafe() {
    BenchView falling = view(FakeSession.Scene.FALLING);
    assertThat(falling.figures().get(2).word()).isEqualTo("still up");
    assertThat(falling.figures().get(2).more()).isEqualTo("until 0.82 V");
    assertThat(falling.figures().get(2).tone()).isEqualTo(Tone.CAUTION);
    BenchView over = view(FakeSession.Scene.OVER);
    assertThat(over.figures().get(2).word()).isEqualTo("down");
    assertThat(over.sentence().headline()).isEqualTo("Ran 0:06, no alarm");
    assertThat(over.sentence().action()).contains("Not watched: rail 3 (no clip)");
    assertThat(over.controls().off()).isFalse();
    assertThat(over.controls().mark()).isTrue();
  }

  @Test
  void asksWhatCanBeSeenBeforeTheSetGetsCurrent() {
    BenchView view = view(FakeSession.Scene.ASKING);
    assertThat(view.sentence().tone()).isEqualTo(Tone.ASK);
    assertThat(view.questions()).hasSize(1);
    assertThat(view.questions().get(0).lines()).hasSize(2);
    assertThat(view.questions().get(0).tick()).isTrue();
    assertThat(view.controls().off()).isTrue();
    BenchView cautions = view(FakeSession.Scene.CAUTIONS);
    assertThat(cautions.questions().get(0).lines()).hasSize(7);
  }

  @Test
  void saysWhatTheProbeBoxRemembersAndLeadsToSwitchingOnAgain() {
    Snapshot now = new FakeSession(FakeSession.Scene.REMEMBERED).snapshot();
    BenchView view = presenter.view(now, null);
    assertThat(view.sentence().headline()).isEqualTo("The probe box stays off");
    assertThat(view.sentence().action())
        .contains("number 7, supply current")
        .contains("\"On again\"")
        .doesNotContain("--");
    assertThat(view.controls().restore()).isEqualTo(7);
    assertThat(view.controls().off()).isFalse();
  }

  @Test
  void offersNoSwitchInAReplay() {
    BenchView view = view(FakeSession.Scene.REPLAY);
    assertThat(view.controls().off()).isFalse();
    assertThat(view.controls().restore()).isNull();
    assertThat(view.replay().position()).isEqualTo("4.60 s of 6.60 s");
    assertThat(ReplayPresenter.neighbour(view.replay(), true)).isNull();
    assertThat(ReplayPresenter.neighbour(view.replay(), false))
        .isEqualTo(FakeSession.CLOSED_MS + 3100);
  }

  @Test
  void showsWhyTheComputerMaySleep() {
    BenchView view =
        presenter.view(
            new FakeSession(FakeSession.Scene.HEALTHY).snapshot(), Worded.asIs("no tool"));
    assertThat(view.links()).extracting(BenchView.LinkView::text).contains("computer may sleep");
  }

  @Test
  void fallingRailsGoBeforeAnAlarmOfBefore() throws Exception {
    Snapshot low = new FakeSession(FakeSession.Scene.RAIL_LOW).snapshot();
    Snapshot falling =
        ChangedSnapshot.of(low, java.util.Map.of("phase", Snapshot.Phase.RAILS_FALLING));
    BenchView.Sentence said = presenter.view(falling, null).sentence();
    assertThat(said.headline()).isEqualTo("Off. Rails are coming down");
    assertThat(said.action()).startsWith("Keep your hands out").contains("B1 out of range");
    assertThat(presenter.view(low, null).sentence().headline()).startsWith("B1 out of range");
  }

  @Test
  void aTripSaysThatHandsStayOutUntilItIsOver() {
    assertThat(view(FakeSession.Scene.SHORT).sentence().action()).contains("keep your hands out");
    assertThat(view(FakeSession.Scene.SHORT_OVER).sentence().action())
        .doesNotContain("keep your hands out");
  }
}
