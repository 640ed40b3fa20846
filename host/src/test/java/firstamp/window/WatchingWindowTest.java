package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.Hearing;
import firstamp.app.Watched;
import firstamp.app.WindowOptions;
import firstamp.bench.Snapshot;
import firstamp.model.PedalJob;
import firstamp.window.frame.FrameKeys;
import firstamp.window.present.BenchPresenter;
import firstamp.window.present.BenchView;
import firstamp.window.present.Limit;
import firstamp.window.strips.FigureRow;
import firstamp.window.strips.StripChart;
import firstamp.window.strips.StripsView;
import firstamp.window.strips.TimeView;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.Component;
import java.awt.Graphics2D;
import java.awt.event.KeyEvent;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Watching in the real window: limits moved, words typed, the pedal, only what changed painted. */
@NeedsDisplay
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class WatchingWindowTest {
  private static final WindowOptions OPTIONS =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);

  private BenchWindow window;
  private FakeSession session;

  private void open(FakeSession.Scene scene) throws Exception {
    session = new FakeSession(scene);
    window = BenchWindow.show(session, OPTIONS);
    show();
  }

  @AfterEach
  void close() throws Exception {
    if (window != null) {
      SwingUtilities.invokeAndWait(() -> window.frame().dispose());
    }
  }

  private void show() throws Exception {
    SwingUtilities.invokeAndWait(
        () -> {
          window.panel().show(session.snapshot(), null, true);
          window.shell().tick();
        });
  }

  private void key(Component to, int id, int code, char character, long when) throws Exception {
    SwingUtilities.invokeAndWait(
        () -> to.dispatchEvent(new KeyEvent(to, id, when, 0, code, character)));
  }

  private void key(int code, char character) throws Exception {
    Component to = window.panel().component();
    key(to, KeyEvent.KEY_PRESSED, code, character, System.nanoTime() / 1_000_000);
    key(to, KeyEvent.KEY_RELEASED, code, character, System.nanoTime() / 1_000_000);
  }

  /** Drags the running limit to another value, all on the Swing thread of a painted window. */
  private void drag(double toAmps) throws Exception {
    paint();
    // In one go: a layout in between would move the strips from under the pointer.
    SwingUtilities.invokeAndWait(
        () -> {
          StripsView strips = window.panel().strips();
          Canvas canvas = strips.component();
          canvas.paint(
              new BufferedImage(canvas.getWidth(), canvas.getHeight(), BufferedImage.TYPE_INT_RGB)
                  .createGraphics());
          Limit limit =
              strips.limits().stream()
                  .filter(one -> one.kind() == firstamp.model.LimitKind.RUNNING_A)
                  .findFirst()
                  .orElseThrow();
          Rectangle2D area = strips.chart().areaOf(limit);
          int from = (int) Math.round(StripChart.yOf(area, limit.scale().place(limit.value())));
          int to = (int) Math.round(StripChart.yOf(area, limit.scale().place(toAmps)));
          int down = MouseEvent.BUTTON1_DOWN_MASK;
          send(canvas, MouseEvent.MOUSE_PRESSED, from, MouseEvent.BUTTON1, down);
          send(canvas, MouseEvent.MOUSE_DRAGGED, (from + to) / 2, MouseEvent.NOBUTTON, down);
          send(canvas, MouseEvent.MOUSE_DRAGGED, to, MouseEvent.NOBUTTON, down);
          send(canvas, MouseEvent.MOUSE_RELEASED, to, MouseEvent.BUTTON1, 0);
        });
  }

  private static void send(Component to, int id, int y, int button, int modifiers) {
    to.dispatchEvent(new MouseEvent(to, id, 1, modifiers, 500, y, 1, false, button));
  }

  private BufferedImage paint() throws Exception {
    BufferedImage[] image = new BufferedImage[1];
    SwingUtilities.invokeAndWait(
        () -> {
          Canvas canvas = window.panel().strips().component();
          image[0] =
              new BufferedImage(canvas.getWidth(), canvas.getHeight(), BufferedImage.TYPE_INT_RGB);
          Graphics2D g = image[0].createGraphics();
          canvas.paint(g);
          g.dispose();
        });
    return image[0];
  }

  @Test
  void aLimitDraggedTighterGoesToTheProbeAtOnce() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    drag(0.6);
    assertThat(session.wishes).hasSize(1);
    String[] wish = session.wishes.get(0).split(" ");
    assertThat(wish[1]).isEqualTo("RUNNING_A");
    assertThat(Double.parseDouble(wish[3])).isBetween(0.5, 0.7);
  }

  @Test
  void aLimitDraggedWiderWhileOnIsNotAskedFor() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    drag(1.8);
    show();
    assertThat(session.wishes).isEmpty();
  }

  @Test
  void aLimitDraggedWiderWhileOffIsConfirmedLineByLine() throws Exception {
    open(FakeSession.Scene.SHORT);
    SwingUtilities.invokeAndWait(() -> window.panel().toggleView());
    show();
    drag(3.0);
    show();
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_1, '1');
    key(KeyEvent.VK_1, '1');
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_1, '1');
    assertThat(session.wishes).singleElement().asString().startsWith("limit RUNNING_A 0 ");
  }

  @Test
  void aLimitIsMovedByKeysAlone() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_L, 'l');
    key(KeyEvent.VK_DOWN, KeyEvent.CHAR_UNDEFINED);
    key(KeyEvent.VK_DOWN, KeyEvent.CHAR_UNDEFINED);
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_1, '1');
    assertThat(session.wishes).containsExactly("limit RUNNING_A 0 0.905");
  }

  @Test
  void theSpaceBarOpensTheSwitchAlsoWhileALimitIsHeld() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_L, 'l');
    key(KeyEvent.VK_SPACE, ' ');
    assertThat(session.wishes).containsExactly("off");
  }

  @Test
  void wordsAreTypedIntoAMarkWhenNothingIsOn() throws Exception {
    open(FakeSession.Scene.OVER);
    key(KeyEvent.VK_W, 'w');
    show();
    JTextField field =
        (JTextField) Components.onSwing(() -> Components.named(window.frame(), "note-1"));
    SwingUtilities.invokeAndWait(() -> field.setText("hum"));
    for (char letter : new char[] {' ', 'm'}) {
      key(field, KeyEvent.KEY_TYPED, KeyEvent.VK_UNDEFINED, letter, 1);
    }
    assertThat(session.wishes).as("what is typed is text").isEmpty();
    SwingUtilities.invokeAndWait(field::postActionEvent);
    assertThat(session.wishes).singleElement().asString().startsWith("note 1 hum");
  }

  @Test
  void noWordsAreTypedWhileTheSetIsOn() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_W, 'w');
    show();
    assertThat(Components.onSwing(() -> Components.visible(window.frame())))
        .noneMatch(component -> component instanceof JTextField);
  }

  @Test
  void aMarkPedalTapsAMarkAndHeldOpensTheSwitch() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    SwingUtilities.invokeAndWait(() -> window.shell().pedal(PedalJob.MARK));
    Component to = window.panel().component();
    long now = firstamp.model.TimeSource.system().epochMillis();
    char none = KeyEvent.CHAR_UNDEFINED;
    // In one go: the window's own clock must not come between on a busy machine.
    SwingUtilities.invokeAndWait(
        () -> {
          to.dispatchEvent(new KeyEvent(to, KeyEvent.KEY_PRESSED, now, 0, FrameKeys.PEDAL, none));
          to.dispatchEvent(
              new KeyEvent(to, KeyEvent.KEY_RELEASED, now + 100, 0, FrameKeys.PEDAL, none));
        });
    SwingUtilities.invokeAndWait(() -> window.shell().keys().tick(now + 200));
    assertThat(session.wishes).containsExactly("mark ");
    key(to, KeyEvent.KEY_PRESSED, FrameKeys.PEDAL, none, now + 1000);
    SwingUtilities.invokeAndWait(() -> window.shell().keys().tick(now + 1700));
    assertThat(session.wishes).containsExactly("mark ", "off");
  }

  @Test
  void handsInIsOneKeyThereAndBack() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_H, 'h');
    key(KeyEvent.VK_H, 'h');
    assertThat(session.wishes).containsExactly("mode HANDS_IN", "mode USUAL");
  }

  @Test
  void theFirstLookStaysReadableAfterItAndInAReplay() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_T, 't');
    show();
    assertThat(isThere("first-look")).isTrue();
    key(KeyEvent.VK_T, 't');
    show();
    assertThat(isThere("first-look")).isFalse();
    close();
    open(FakeSession.Scene.REPLAY);
    key(KeyEvent.VK_T, 't');
    show();
    assertThat(isThere("first-look")).as("the trip picture is first").isFalse();
    key(KeyEvent.VK_T, 't');
    show();
    assertThat(isThere("first-look")).isTrue();
  }

  @Test
  void aLookThatKeepsTheSwitchOpenComesUpByItself() throws Exception {
    open(FakeSession.Scene.LOOK_SHORT);
    assertThat(isThere("first-look")).isTrue();
    key(KeyEvent.VK_T, 't');
    show();
    assertThat(isThere("first-look")).as("and not again").isFalse();
  }

  private boolean isThere(String name) throws Exception {
    return Components.onSwing(
        () ->
            Components.visible(window.frame()).stream()
                .anyMatch(part -> name.equals(part.getName())));
  }

  @Test
  void oneKeySilencesTheSoundAndTheWindowSaysSo() throws Exception {
    session = new FakeSession(FakeSession.Scene.RAIL_LOW);
    FakeHearing hearing = new FakeHearing();
    window =
        BenchWindow.show(null, new Watched(session, null, hearing, null, null, () -> {}), OPTIONS);
    show();
    assertThat(states()).doesNotContain("sound off");
    key(KeyEvent.VK_X, 'x');
    show();
    assertThat(hearing.state()).isEqualTo(Hearing.State.MUTED);
    assertThat(states()).contains("sound off");
    key(KeyEvent.VK_X, 'x');
    show();
    assertThat(hearing.state()).isEqualTo(Hearing.State.HEARD);
    assertThat(session.wishes).as("it is not seen by that").isEmpty();
  }

  private java.util.List<String> states() throws Exception {
    return Components.onSwing(
        () ->
            Components.visible(window.frame()).stream()
                .filter(part -> "state".equals(part.getName()))
                .map(part -> ((javax.swing.JLabel) part).getText())
                .toList());
  }

  /** Before, the gaps between the cards kept what had been painted there. */
  @Test
  void aFigureThatGoesLeavesNothingBehind() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    java.util.List<BenchView.FigureView> figures =
        new BenchPresenter(Locale.ENGLISH).view(session.snapshot(), null).figures();
    java.awt.Rectangle[] dirty = new java.awt.Rectangle[1];
    SwingUtilities.invokeAndWait(
        () -> {
          FigureRow row = new FigureRow(Palette.of(WindowOptions.Theme.LIGHT));
          window.frame().getContentPane().add(row.component());
          row.component().setBounds(0, 0, 1200, FigureRow.HEIGHT);
          row.show(figures);
          javax.swing.RepaintManager painting =
              javax.swing.RepaintManager.currentManager(row.component());
          painting.markCompletelyClean(row.component());
          row.show(figures.subList(0, 3));
          dirty[0] = painting.getDirtyRegion(row.component());
        });
    assertThat(dirty[0].width).isGreaterThanOrEqualTo(1200);
  }

  /** Before, a sentence that did not fit beside the buttons took their place. */
  @Test
  void theRowOfButtonsStaysWhateverIsSaid() throws Exception {
    open(FakeSession.Scene.OVER);
    for (int round = 0; round < 3; round++) {
      show();
      SwingUtilities.invokeAndWait(() -> window.frame().validate());
    }
    for (String name : java.util.List.of("notes", "view", "narrower", "wider", "follow")) {
      assertThat(isThere(name)).as(name).isTrue();
    }
  }

  private String below() throws Exception {
    show();
    return Components.onSwing(
        () ->
            ((javax.swing.text.JTextComponent) Components.named(window.frame(), "pointer"))
                .getText());
  }

  @Test
  void aKeyThatCanDoNothingSaysWhyUntilOneDoesSomething() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_U, 'u');
    assertThat(below()).isEqualTo("The job sheet lists no wire whose place is unknown.");
    key(KeyEvent.VK_Q, 'q');
    assertThat(below()).isEqualTo("This key belongs to a replay.");
    key(KeyEvent.VK_ENTER, '\n');
    assertThat(below()).isEqualTo("Nothing is being asked.");
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_H, 'h');
    assertThat(below()).doesNotContain("asked").doesNotContain("key");
  }

  @Test
  void theReasonIsSeenOnTheLookCardAndBehindAQuestionToo() throws Exception {
    open(FakeSession.Scene.LOOK_SHORT);
    assertThat(isThere("first-look")).isTrue();
    key(KeyEvent.VK_H, 'h');
    assertThat(below()).isEqualTo("\u201cHands in\u201d is for a set that is on.");
    key(KeyEvent.VK_F, 'f');
    assertThat(below()).isEqualTo("The job sheet gives no signal path to search.");
    close();
    open(FakeSession.Scene.ASKING);
    key(KeyEvent.VK_L, 'l');
    assertThat(below()).isEqualTo("First answer the question: 1 is yes, 0 is no.");
  }

  @Test
  void aReasonGoesWhenItIsSwitchedOff() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_W, 'w');
    assertThat(below()).isEqualTo("Words for marks are typed once the set is off.");
    session.set(new FakeSession(FakeSession.Scene.FALLING).snapshot());
    assertThat(below()).doesNotContain("Words for marks");
  }

  @Test
  void aCountdownIsStoppedByAKeyThatCouldDoNothing() throws Exception {
    session = LiveStates.COUNTDOWN.session();
    window = BenchWindow.show(session, OPTIONS);
    show();
    key(KeyEvent.VK_Q, 'q');
    assertThat(session.wishes).containsExactly("off");
  }

  @Test
  void aComputerThatMayFallAsleepIsRefusedBeforeAnythingIsTicked() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    SwingUtilities.invokeAndWait(
        () -> {
          window.panel().show(session.snapshot(), "Nothing keeps this computer awake.", true);
          window.panel().soak();
          window.panel().show(session.snapshot(), "Nothing keeps this computer awake.", true);
        });
    assertThat(isThere("question-yes")).isFalse();
    assertThat(
            Components.onSwing(
                () ->
                    ((javax.swing.text.JTextComponent) Components.named(window.frame(), "pointer"))
                        .getText()))
        .isEqualTo(
            "No unattended running while the computer may fall asleep."
                + " Nothing keeps this computer awake.");
    assertThat(session.wishes).isEmpty();
  }

  @Test
  void soakAsksLineByLineFirst() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    key(KeyEvent.VK_S, 's');
    show();
    assertThat(
            Components.onSwing(
                () ->
                    ((javax.swing.JLabel) Components.named(window.frame(), "question-title"))
                        .getText()))
        .isEqualTo("Leave the set on alone for 2 hours?");
    for (int line = 0; line < 3; line++) {
      key(KeyEvent.VK_1, '1');
    }
    assertThat(session.wishes).isEmpty();
    key(KeyEvent.VK_1, '1');
    assertThat(session.wishes).containsExactly("mode SOAK");
  }

  @Test
  void noModeIsChangedWhileNothingIsOn() throws Exception {
    open(FakeSession.Scene.OVER);
    key(KeyEvent.VK_H, 'h');
    key(KeyEvent.VK_S, 's');
    show();
    assertThat(session.wishes).isEmpty();
  }

  @Test
  void noFootAnswersAQuestion() throws Exception {
    open(FakeSession.Scene.ASKING);
    for (PedalJob job : PedalJob.values()) {
      SwingUtilities.invokeAndWait(() -> window.shell().pedal(job));
      for (int tap = 0; tap < 5; tap++) {
        key(FrameKeys.PEDAL, KeyEvent.CHAR_UNDEFINED);
      }
      assertThat(session.wishes)
          .as("%s", job)
          .isNotEmpty()
          .noneMatch(wish -> wish.startsWith("answer") || wish.startsWith("seen"));
    }
  }

  @Test
  void aReplayAsksWhatADraggedLimitWouldHaveDone() throws Exception {
    open(FakeSession.Scene.REPLAY);
    drag(3.0);
    assertThat(session.wishes).singleElement().asString().startsWith("limit RUNNING_A 0 ");
  }

  @Test
  void paintingOnlyWhatChangedGivesThePictureThatPaintingAllGives() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    Snapshot whole = session.snapshot();
    BufferedImage[] kept = new BufferedImage[1];
    int[] partly = new int[1];
    session.set(WatchScenes.at(whole, 9430));
    show();
    SwingUtilities.invokeAndWait(
        () -> {
          StripsView strips = window.panel().strips();
          Canvas canvas = strips.component();
          kept[0] =
              new BufferedImage(canvas.getWidth(), canvas.getHeight(), BufferedImage.TYPE_INT_RGB);
          for (double now = 6000; now <= 9430; now += 70) {
            java.awt.Rectangle dirty = strips.take(WatchScenes.at(whole, now));
            partly[0] += dirty.width > 0 && dirty.width < canvas.getWidth() ? 1 : 0;
            Graphics2D g = kept[0].createGraphics();
            if (now > 6000) {
              g.clip(dirty);
            }
            canvas.paint(g);
            g.dispose();
          }
        });
    assertThat(partly[0]).as("times only a part was painted").isGreaterThan(20);
    BufferedImage all = paint();
    int different = 0;
    for (int x = 0; x < all.getWidth(); x++) {
      for (int y = 0; y < all.getHeight(); y++) {
        different += differs(all.getRGB(x, y), kept[0].getRGB(x, y)) ? 1 : 0;
      }
    }
    assertThat(different).isZero();
  }

  @Test
  void whatComesBeforeTheFirstPaintingIsPaintedAsAWhole() throws Exception {
    open(FakeSession.Scene.HEALTHY);
    Snapshot whole = session.snapshot();
    java.awt.Rectangle dirty =
        Components.onSwing(
            () -> {
              StripsView strips =
                  new StripsView(
                      new WindowTheme(WindowOptions.Theme.LIGHT).palette(),
                      new Words(Locale.ENGLISH),
                      new Numbers(Locale.ENGLISH),
                      new TimeView(),
                      words -> {},
                      wish -> {});
              strips.component().setSize(900, 400);
              strips.take(WatchScenes.at(whole, 6000));
              return strips.take(WatchScenes.at(whole, 6070));
            });
    assertThat(dirty).isEqualTo(new java.awt.Rectangle(0, 0, 900, 400));
  }

  /** By more than a shade: a line that begins elsewhere has its smooth edge a little elsewhere. */
  private static boolean differs(int one, int other) {
    for (int shift = 0; shift <= 16; shift += 8) {
      if (Math.abs((one >> shift & 0xFF) - (other >> shift & 0xFF)) > 100) {
        return true;
      }
    }
    return false;
  }
}
