package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.TrialKeeping;
import firstamp.app.WindowOptions;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.wire.TrialVerdict;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.run.BenchMode;
import firstamp.study.SearchState;
import firstamp.window.search.LocatePage;
import firstamp.window.search.TrialPage;
import firstamp.window.widgets.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import javax.swing.JLabel;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import org.junit.jupiter.api.Test;

/** What the two pages do with keys and fields. */
@NeedsDisplay
class ThinkPagesTest {
  private static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);

  private static <T> T on(Callable<T> task) throws Exception {
    return Components.onSwing(task);
  }

  private static void press(Runnable task) throws Exception {
    on(
        () -> {
          task.run();
          return null;
        });
  }

  @Test
  void theHeldKeyPutsTheClipOnTheAskedPointAndTakesItOff() throws Exception {
    SearchingSession session = new SearchingSession(ThinkViews.search(2));
    LocatePage page = on(() -> new LocatePage(Views.tools(OPTIONS, null), session, null, null));
    press(() -> page.hold(true));
    ClipMove held = ClipMove.at(ClipMove.Act.HELD, "driver out", "record", ClipInput.METER);
    assertThat(session.said).containsExactly(held);
    session.state = new SearchState(session.state.search(), held, null, List.of(), 0);
    press(page::refresh);
    assertThat(page.view().hold()).contains("driver out");
    press(() -> page.hold(false));
    assertThat(session.said).last().isEqualTo(ClipMove.of(ClipMove.Act.OFF));
  }

  @Test
  void typedHeardAndTakenBackAreEventsToo() throws Exception {
    SearchingSession session = new SearchingSession(ThinkViews.search(2));
    LocatePage page = on(() -> new LocatePage(Views.tools(OPTIONS, null), session, null, null));
    press(() -> page.choose(1));
    assertThat(session.said).as("one stroke keeps nothing").isEmpty();
    press(() -> page.choose(2));
    press(() -> page.choose(1));
    assertThat(session.said).as("two different strokes keep nothing").isEmpty();
    press(() -> page.choose(1));
    press(() -> page.choose(5));
    press(() -> page.choose(5));
    press(
        () -> {
          ((JTextField) Components.named(page.component(), "search.typed")).setText("-4,2");
          page.goOn();
        });
    assertThat(session.said)
        .containsExactly(
            ClipMove.at(ClipMove.Act.THERE, "driver out", "record", null),
            ClipMove.of(ClipMove.Act.BACK),
            ClipMove.typed("driver out", "record", -4.2));
    press(
        () -> {
          ((JTextField) Components.named(page.component(), "search.typed")).setText("much");
          page.goOn();
        });
    assertThat(session.said).hasSize(3);
  }

  @Test
  void aContactThatWasFoundIsWorkedWithTheSameKey() throws Exception {
    SearchingSession session = new SearchingSession(ThinkViews.search(4));
    LocatePage page = on(() -> new LocatePage(Views.tools(OPTIONS, null), session, null, null));
    press(() -> page.choose(3));
    assertThat(session.said.get(0))
        .isEqualTo(
            ClipMove.at(
                ClipMove.Act.STROKE, "muting contact of the earphone jack", null, ClipInput.METER));
  }

  @Test
  void oneKeyThreeTimesRestsTheClipTapsTheJointAndLeavesIt() throws Exception {
    SearchingSession session = new SearchingSession(ThinkViews.search(4));
    LocatePage page = on(() -> new LocatePage(Views.tools(OPTIONS, null), session, null, null));
    press(() -> page.choose(6));
    String joint = "muting contact of the earphone jack";
    ClipMove resting = ClipMove.at(ClipMove.Act.RESTING, joint, null, ClipInput.METER);
    assertThat(session.said).containsExactly(resting);
    tapping(session, page, resting, List.of(-4.0), false);
    assertThat(page.view().hold()).contains(joint).contains("leave it alone");
    press(() -> page.choose(6));
    assertThat(session.said).as("one window says nothing about rest").hasSize(1);
    tapping(session, page, resting, List.of(-4.0, -4.1), false);
    assertThat(page.view().hold()).startsWith("Key 6").contains(joint);
    press(() -> page.choose(6));
    assertThat(session.said).last().isEqualTo(ClipMove.of(ClipMove.Act.TOUCHED));
    tapping(session, page, resting, List.of(-4.0, -4.1), true);
    assertThat(page.view().hold()).contains("tap and flex");
    press(() -> page.choose(6));
    assertThat(session.said).as("nothing was seen of the tapping yet").hasSize(2);
    tapping(session, page, resting, List.of(-4.0, -4.1, -12.0), true);
    press(() -> page.choose(6));
    assertThat(session.said)
        .endsWith(ClipMove.of(ClipMove.Act.LEFT), ClipMove.of(ClipMove.Act.OFF));
  }

  private static void tapping(
      SearchingSession session,
      LocatePage page,
      ClipMove held,
      List<Double> course,
      boolean touching)
      throws Exception {
    session.state = new SearchState(session.state.search(), held, null, course, 0, touching);
    press(page::refresh);
  }

  @Test
  void aSearchThatIsOverIsGoneThroughStepByStep() throws Exception {
    LocatePage page =
        on(() -> new LocatePage(Views.tools(OPTIONS, null), null, ThinkViews.search(5), null));
    assertThat(page.view().tone()).isEqualTo(Tone.CAUTION);
    press(() -> page.across(-3));
    assertThat(page.view().headline()).isEqualTo("Measure here next: driver out");
    press(() -> page.across(-9));
    assertThat(page.view().done()).isEmpty();
  }

  /** Keeps what it is given. */
  private static final class Notes implements TrialKeeping {
    final List<WireCase> kept = new ArrayList<>();

    @Override
    public void keep(WireCase wires) {
      kept.add(wires);
    }

    @Override
    public WireStep.Trial judge(WireCase wires, String wire, String place) {
      return new WireStep.Trial(wire, place, 3, TrialVerdict.BETTER, List.of("hum", "level"));
    }

    @Override
    public long epochMs() {
      return 1_700_000_000_000L;
    }
  }

  @Test
  void fromOhmsToTheVerdictOfATrial() throws Exception {
    Notes notes = new Notes();
    TrialPage page =
        on(
            () ->
                new TrialPage(
                    Views.tools(OPTIONS, null), ThinkViews.wires("screened-lead", 4), notes, null));
    press(() -> page.choose(3));
    type(page, "47000", "46000");
    assertThat(page.view().headline()).isEqualTo("Is it a source, a load or dead?");
    type(page, "1.4", "0,2");
    assertThat(page.view().headline()).isEqualTo("Try it at preamp input");
    press(() -> page.choose(1));
    press(page::goOn);
    assertThat(page.view().headline()).as("one stroke").isEqualTo("Try it at preamp input");
    assertThat(said(page)).contains("Press Enter again").contains("W3 at preamp input");
    press(page::goOn);
    assertThat(page.view().headline()).isEqualTo("It belongs to preamp input");
    assertThat(notes.kept).hasSize(3);
    assertThat(notes.kept.get(2).steps()).last().isInstanceOf(WireStep.Dated.class);
    press(() -> page.choose(5));
    press(() -> page.choose(5));
    assertThat(page.view().headline()).isEqualTo("Try it at preamp input");
    press(() -> page.choose(4));
    press(() -> page.choose(7));
    assertThat(page.view().done().get(0)).as("47 typed into no field").doesNotContain("Moved");
    assertThat(said(page)).contains("Press 7 again").contains("Moved W3 to preamp input");
    press(() -> page.choose(7));
    assertThat(page.view().done().get(0)).startsWith("Moved W3 to preamp input");
  }

  private static String said(TrialPage page) {
    return ((JTextArea) Components.named(page.component(), "trial-said")).getText();
  }

  @Test
  void aShortIsReadAgainOnThePage() throws Exception {
    Notes notes = new Notes();
    TrialPage page =
        on(
            () ->
                new TrialPage(
                    Views.tools(OPTIONS, null), ThinkViews.wires("cotton-leads", 3), notes, null));
    assertThat(page.view().headline()).isEqualTo("Find the short first: IF feed tag");
    assertThat(page.view().tone()).isEqualTo(Tone.ALARM);
    press(
        () -> {
          ((JTextField) Components.named(page.component(), "wires.first")).setText("2400");
          page.goOn();
        });
    assertThat(notes.kept.get(0).steps()).last().asString().contains("PlaceOhms[place=IF feed tag");
    assertThat(page.view().headline()).isEqualTo("Supply off: read ohms first");
  }

  @Test
  void theClipIsMovedOffAndOnUnlessChosenOnPurpose() throws Exception {
    SearchingSession session = new SearchingSession(ThinkViews.search(2));
    LocatePage page = on(() -> new LocatePage(Views.tools(OPTIONS, null), session, null, null));
    JLabel line = (JLabel) Components.named(page.component(), "locate-hold");
    assertThat(line.getText()).startsWith("Switch off").contains("hands out");
    press(() -> page.choose(7));
    assertThat(line.getText()).contains("shock").contains("Press 7 again");
    assertThat(session.modes).isEmpty();
    press(() -> page.choose(7));
    assertThat(session.modes).containsExactly(BenchMode.HANDS_IN);
  }

  private static void type(TrialPage page, String one, String other) throws Exception {
    press(
        () -> {
          ((JTextField) Components.named(page.component(), "wires.first")).setText(one);
          ((JTextField) Components.named(page.component(), "wires.second")).setText(other);
          page.goOn();
        });
  }

  @Test
  void whatIsNoNumberIsSaidAndKeepsNothing() throws Exception {
    Notes notes = new Notes();
    TrialPage page =
        on(
            () ->
                new TrialPage(
                    Views.tools(OPTIONS, null), ThinkViews.wires("screened-lead", 4), notes, null));
    type(page, "many", "");
    assertThat(notes.kept).isEmpty();
    assertThat(Components.named(page.component(), "trial-said")).isNotNull();
  }

  @Test
  void arrowsGoToAnotherWireAndThroughTheSteps() throws Exception {
    TrialPage page =
        on(
            () ->
                new TrialPage(
                    Views.tools(OPTIONS, null), ThinkViews.wires("cotton-leads", 12), null, null));
    assertThat(page.view().headline()).isEqualTo("It belongs to IF feed tag");
    press(() -> page.move(1));
    assertThat(page.view().title()).startsWith("lead 2");
    press(() -> page.move(1));
    press(() -> page.across(-5));
    assertThat(page.view().headline()).isEqualTo("Try it at IF feed tag");
  }

  @Test
  void aRailAlarmRefusesTheClip() throws Exception {
    SearchState state = ThinkViews.search(2);
    LocateSession refused = state.search().withRailAlarms(List.of("B1 is too low"));
    SearchingSession session =
        new SearchingSession(new SearchState(refused, null, null, List.of(), 0));
    LocatePage page = on(() -> new LocatePage(Views.tools(OPTIONS, null), session, null, null));
    press(() -> page.hold(true));
    press(() -> page.choose(1));
    press(() -> page.choose(1));
    press(() -> page.choose(3));
    assertThat(session.said).isEmpty();
    assertThat(page.view().headline()).contains("Not yet");
  }
}
