package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Hearing;
import firstamp.bench.Snapshot;
import firstamp.model.LimitKind;
import firstamp.model.text.Worded;
import firstamp.run.BenchMode;
import firstamp.run.LimitMove;
import firstamp.run.questions.OpenQuestion;
import firstamp.study.EarlierPowerUp;
import firstamp.window.present.BenchPresenter;
import firstamp.window.present.BenchView;
import firstamp.window.present.HeaderStates;
import firstamp.window.present.LimitPresenter;
import firstamp.window.present.LookPresenter;
import firstamp.window.present.ModePresenter;
import firstamp.window.present.SaidLine;
import firstamp.window.present.WhatIfPresenter;
import firstamp.window.strips.StripMaker;
import firstamp.window.strips.StripsPicture;
import firstamp.window.strips.TimeView;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** What watching, replay and moved limits say, without a display. */
class WatchPresentersTest {
  private final BenchPresenter presenter = new BenchPresenter(Locale.ENGLISH);
  private final Words words = presenter.words();
  private final Numbers numbers = presenter.numbers();

  private static Snapshot scene(FakeSession.Scene scene) {
    return new FakeSession(scene).snapshot();
  }

  @Test
  void saysWhenTheComputerSleptAndThatTheSetIsOff() {
    long at =
        LocalDateTime.of(2026, 3, 1, 21, 42).atZone(ZoneId.systemDefault()).toEpochSecond() * 1000;
    Snapshot slept =
        scene(FakeSession.Scene.FALLING).with(new Snapshot.Beside(null, at, null, null, false));
    BenchView view = presenter.view(slept, null);
    assertThat(view.sentence().headline()).isEqualTo("The computer slept or hung at 21:42");
    assertThat(view.sentence().action()).startsWith("The set has been off since. ");
    assertThat(view.sentence().tone()).isEqualTo(Tone.ALARM);
    assertThat(view.title()).startsWith("The computer slept or hung at 21:42");
  }

  /** A busy computer that hung for some seconds looks the same: a trip has its own cause. */
  @Test
  void aTripIsNotHiddenByASleep() {
    Snapshot shorted = scene(FakeSession.Scene.SHORT);
    String cause = presenter.view(shorted, null).sentence().headline();
    Snapshot slept = shorted.with(new Snapshot.Beside(null, 1_790_000_000_000L, null, null, false));
    assertThat(cause).startsWith("A short");
    assertThat(presenter.view(slept, null).sentence().headline()).isEqualTo(cause);
  }

  @Test
  void neverSaysThatTheSetIsOffWhileItIsOn() {
    Snapshot on =
        scene(FakeSession.Scene.HEALTHY)
            .with(new Snapshot.Beside(null, 1_790_000_000_000L, null, null, false));
    assertThat(presenter.view(on, null).sentence().headline()).doesNotContain("slept");
  }

  @Test
  void saysWhatBecameOfAMovedLimit() {
    LimitPresenter limits = new LimitPresenter(words, numbers);
    Snapshot now = scene(FakeSession.Scene.HEALTHY);
    LimitMove move = new LimitMove(LimitKind.RUNNING_A, 0, 0.8);
    assertThat(limits.became(now, new Snapshot.Moved(move, Snapshot.MoveState.TAKEN, null)))
        .isEqualTo("The probe box has accepted it: running limit 800 mA.");
    assertThat(
            limits.became(
                now,
                new Snapshot.Moved(move, Snapshot.MoveState.REFUSED, Worded.asIs("too fine."))))
        .isEqualTo("running limit 800 mA was not accepted, the old limit stays: too fine.");
    LimitMove rail = new LimitMove(LimitKind.RAIL_OVER_V, 1, 9);
    assertThat(limits.say(now, rail)).isEqualTo("B1 off beyond 9.00 V");
  }

  @Test
  void asksToPointAtStripsOnlyWhereThereAreSome() {
    SaidLine said = new SaidLine(words, new LimitPresenter(words, numbers));
    for (FakeSession.Scene each :
        List.of(FakeSession.Scene.HEALTHY, FakeSession.Scene.REPLAY, FakeSession.Scene.OVER)) {
      Snapshot now = scene(each);
      BenchView view = presenter.view(now, null);
      said.follow(now, BenchMode.State.BEGIN);
      assertThat(said.line(now, view, false)).as("%s", each).doesNotContain("strip");
    }
    Snapshot replay = scene(FakeSession.Scene.REPLAY);
    assertThat(said.line(replay, presenter.view(replay, null), true))
        .startsWith("Point at a strip");
  }

  @Test
  void setsWhatWouldHaveHappenedBesideWhatHappened() {
    WhatIfPresenter presents = new WhatIfPresenter(words, numbers);
    assertThat(presents.sides(scene(FakeSession.Scene.REPLAY))).isNull();
    WhatIfPresenter.Sides sides = presents.sides(scene(FakeSession.Scene.WHAT_IF));
    assertThat(sides.title()).isEqualTo("What if: running limit 250 mA");
    assertThat(sides.left()).contains("Switched itself off after 3.10 s.");
    assertThat(sides.right()).contains("Off after 352 ms: supply current 0.27 A, limit 0.25 A");
  }

  @Test
  void saysWhatChangedBetweenTwoPowerUps() {
    Snapshot replay = scene(FakeSession.Scene.REPLAY);
    EarlierPowerUp behind = scene(FakeSession.Scene.BEHIND).beside().earlier();
    EarlierPowerUp compared =
        new EarlierPowerUp(
            11,
            true,
            behind.course(),
            behind.closedMs(),
            locale -> List.of("B1: 8.35 V then, 8.21 V now"));
    WhatIfPresenter presents = new WhatIfPresenter(words, numbers);
    WhatIfPresenter.Sides sides =
        presents.sides(replay.with(new Snapshot.Beside(compared, null, null, null, false)));
    assertThat(sides.title()).isEqualTo("From power-up 11 to power-up 13");
    assertThat(sides.left()).containsExactly("What changed", "B1: 8.35 V then, 8.21 V now");
    assertThat(
            presents
                .sides(replay.with(new Snapshot.Beside(behind, null, null, null, false)))
                .left())
        .contains("Working it out ...");
  }

  @Test
  void saysTheModeBesideTheStatesWhileOn() {
    ModePresenter modes = new ModePresenter(words, numbers);
    Snapshot on = scene(FakeSession.Scene.HEALTHY);
    assertThat(modes.state(on, BenchMode.State.BEGIN)).isNull();
    assertThat(
            modes
                .state(
                    on, new BenchMode.State(BenchMode.HANDS_IN, Worded.asIs("careful"), 0.3, null))
                .text())
        .isEqualTo("hands in, off above 300 mA");
    assertThat(modes.state(on, new BenchMode.State(BenchMode.SOAK, null, null, 3_725_000.0)).text())
        .isEqualTo("soak, 1:02:05 left");
    assertThat(
            modes.state(
                scene(FakeSession.Scene.OVER),
                new BenchMode.State(BenchMode.SOAK, null, null, 1.0)))
        .isNull();
  }

  @Test
  void saysWhatTheFirstLookFoundAndHowFineItSees() {
    LookPresenter looks = new LookPresenter(words, numbers);
    assertThat(looks.view(scene(FakeSession.Scene.ASKING))).isNull();
    LookPresenter.LookView clear = looks.view(scene(FakeSession.Scene.HEALTHY));
    assertThat(clear.tone()).isEqualTo(Tone.CALM);
    assertThat(clear.figures())
        .containsExactly(
            new LookPresenter.Named("across the supply leads", "210 \u03a9"),
            new LookPresenter.Named("capacitors together", "about 3180 \u00b5F"));
    // 60 V / 1024 = 58.6 mV; 12.02 V / (330 + 210) ohm = 22.3 mA; 58.6 mV / 22.3 mA = 2.6 ohm.
    assertThat(clear.lines())
        .contains(
            "One step of the volts input is 59 mV; at the 22.3 mA of this look that is 2.63 \u03a9."
                + " Anything less cannot be told from zero.",
            "The supply gave 12.0 V behind the resistor.");
  }

  @Test
  void aResistanceOfLessThanAStepIsOnlyKnownToBeNoLarger() {
    LookPresenter looks = new LookPresenter(words, numbers);
    LookPresenter.LookView shorted = looks.view(scene(FakeSession.Scene.LOOK_SHORT));
    assertThat(shorted.tone()).isEqualTo(Tone.ALARM);
    // 58.6 mV / (12.02 V / 331.6 ohm) = 1.6 ohm: the look's figures say that this is a bound.
    assertThat(shorted.figures())
        .containsExactly(new LookPresenter.Named("across the supply leads", "at most 1.61 \u03a9"));
    assertThat(shorted.lines()).contains("The voltage rose too fast to work out a capacitance.");
  }

  @Test
  void nobodyWatchingIsAskedAboutLineByLineAlsoBeforeSwitchingOn() {
    Snapshot asking =
        Scenes.withQuestion(scene(FakeSession.Scene.ASKING), new OpenQuestion("soak", null));
    BenchView.QuestionView question = presenter.view(asking, null).questions().get(0);
    assertThat(question.id()).isEqualTo("soak");
    assertThat(question.tick()).isTrue();
    assertThat(question.lines()).hasSize(3);
  }

  @Test
  void saysWhyNothingIsHeard() {
    HeaderStates states = new HeaderStates(words, new ModePresenter(words, numbers));
    for (Hearing.State heard : Hearing.State.values()) {
      Snapshot on = scene(FakeSession.Scene.HEALTHY);
      java.util.List<String> said =
          states
              .with(presenter.view(on, null), on, BenchMode.State.BEGIN, heard, true)
              .links()
              .stream()
              .map(BenchView.LinkView::text)
              .toList();
      switch (heard) {
        case NOTHING, HEARD -> assertThat(said).containsExactly("cable good", "logging");
        case MUTED -> assertThat(said).startsWith("sound off");
        case NOT_WANTED -> assertThat(said).startsWith("no sound");
        case NO_DEVICE -> assertThat(said).startsWith("no sound device");
      }
    }
  }

  @Test
  void anEarlierPowerUpStandsBehindAlignedAtSwitchOn() {
    Snapshot now = scene(FakeSession.Scene.BEHIND);
    TimeView time = new TimeView();
    time.advance(now.times().nowMs(), now.times().closedMs());
    StripsPicture picture = new StripMaker(words, numbers).picture(now, time, 1000);
    assertThat(picture.strips().get(0).name())
        .isEqualTo("supply current   (dotted: power-up 11, known good)");
    float[] behind = picture.strips().get(1).behind().get(0);
    int first = 0;
    while (behind[first] < behind[behind.length / 2] - 0.01f) {
      first++;
    }
    assertThat(picture.middleMs(first))
        .isBetween(now.times().closedMs() - 20, now.times().closedMs() + 20);
  }

  @Test
  void everyLimitOfTheProbeThatIsWatchedCanBeTakenHoldOf() {
    Snapshot now = scene(FakeSession.Scene.HEALTHY);
    TimeView time = new TimeView();
    time.advance(now.times().nowMs(), now.times().closedMs());
    StripsPicture picture = new StripMaker(words, numbers).picture(now, time, 1000);
    assertThat(picture.limits())
        .extracting(limit -> limit.kind() + " " + limit.rail() + " " + limit.value())
        .contains(
            "RUNNING_A 0 1.0", "SUPPLY_MAX_V 0 13.0", "RAIL_OVER_V 1 9.8", "RAIL_OVER_V 2 6.0");
  }

  @Test
  void columnsTakenOverFromThePictureBeforeAreThoseReadAnew() {
    FakeSession session = new FakeSession(FakeSession.Scene.HEALTHY);
    Snapshot whole = session.snapshot();
    StripMaker goingOn = new StripMaker(words, numbers);
    TimeView time = new TimeView();
    for (double now = 3000; now <= whole.times().nowMs(); now += 130) {
      Snapshot then = WatchScenes.at(whole, now);
      time.advance(now, whole.times().closedMs());
      StripsPicture grown = goingOn.picture(then, time, 900);
      StripsPicture fresh = new StripMaker(words, numbers).picture(then, time, 900);
      for (int strip = 1; strip < fresh.strips().size(); strip++) {
        assertThat(grown.strips().get(strip).traces().get(0).mean())
            .isEqualTo(fresh.strips().get(strip).traces().get(0).mean());
        assertThat(grown.strips().get(strip).traces().get(0).high())
            .isEqualTo(fresh.strips().get(strip).traces().get(0).high());
      }
    }
  }
}
