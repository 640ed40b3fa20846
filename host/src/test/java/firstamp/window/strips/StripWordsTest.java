package firstamp.window.strips;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.WindowOptions;
import firstamp.window.FakeSession;
import firstamp.window.RecordingGraphics;
import firstamp.window.widgets.Palette;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is painted into a strip is no component, so no layout watches over it. */
class StripWordsTest {
  private static final int LOWEST = 24;
  private static final int HIGHEST = 130;
  private static final int WIDTH = 1040;

  @ParameterizedTest
  @EnumSource(FakeSession.Scene.class)
  void nothingTouchesOrLeavesItsStripAtAnyHeight(FakeSession.Scene scene) {
    List<String> faults = new ArrayList<>();
    for (Locale locale : Words.LANGUAGES) {
      for (int height = LOWEST; height <= HIGHEST; height++) {
        for (StripsPicture.Strip strip : picture(scene, locale).strips()) {
          Rectangle2D area = new Rectangle2D.Double(10, 30, WIDTH, height);
          faults(painted(picture(scene, locale), strip, area), area)
              .forEach(fault -> faults.add(strip.name() + " " + area.getHeight() + ": " + fault));
        }
      }
    }
    assertThat(faults).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(value = FakeSession.Scene.class, names = "REPLAY")
  void aStripOfTheReplayStillTellsItsWindow(FakeSession.Scene scene) {
    StripsPicture picture = picture(scene, Locale.ENGLISH);
    Rectangle2D area = new Rectangle2D.Double(0, 0, WIDTH, 40);
    List<String> texts =
        painted(picture, picture.strips().get(2), area).stream()
            .map(RecordingGraphics.Ink::text)
            .toList();
    assertThat(texts).contains("B1 (clip 1)", "off beyond 9.80 V", "8.61 V", "7.79 V");
  }

  private static StripsPicture picture(FakeSession.Scene scene, Locale locale) {
    FakeSession session = new FakeSession(scene);
    TimeView time = new TimeView();
    time.advance(session.snapshot().times().nowMs(), session.snapshot().times().closedMs());
    return new StripMaker(new Words(locale), new Numbers(locale))
        .picture(session.snapshot(), time, WIDTH);
  }

  private static List<RecordingGraphics.Ink> painted(
      StripsPicture picture, StripsPicture.Strip strip, Rectangle2D area) {
    BufferedImage image = new BufferedImage(WIDTH + 20, 200, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    RecordingGraphics noting = RecordingGraphics.over(g);
    new StripPainter(Palette.of(WindowOptions.Theme.LIGHT)).paint(noting, area, strip, picture);
    g.dispose();
    return noting.inks();
  }

  private static List<String> faults(List<RecordingGraphics.Ink> inks, Rectangle2D area) {
    List<String> faults = new ArrayList<>();
    for (int at = 0; at < inks.size(); at++) {
      RecordingGraphics.Ink ink = inks.get(at);
      if (!area.contains(ink.box())) {
        faults.add("\"" + ink.text() + "\" leaves the strip: " + ink.box());
      }
      for (RecordingGraphics.Ink other : inks.subList(at + 1, inks.size())) {
        if (ink.touches(other, 1)) {
          faults.add("\"" + ink.text() + "\" touches \"" + other.text() + "\"");
        }
      }
    }
    return faults;
  }
}
