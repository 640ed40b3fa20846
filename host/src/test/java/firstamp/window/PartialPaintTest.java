package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.WindowOptions;
import firstamp.bench.Snapshot;
import firstamp.window.present.BenchPresenter;
import firstamp.window.present.BenchView;
import firstamp.window.strips.FigureRow;
import firstamp.window.strips.StripsView;
import firstamp.window.strips.TimeView;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Painting only what changed gives the picture that painting all gives. */
@NeedsDisplay
@Timeout(value = 60, unit = TimeUnit.SECONDS)
final class PartialPaintTest extends BenchWindowCase {
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
