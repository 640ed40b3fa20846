package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.session.Snapshot;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Collections;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class TripCanvasTest {
  private static final int WIDTH = 1000;
  private static final int HEIGHT = 420;

  private final Snapshot now = new FakeSession(FakeSession.Scene.SHORT).snapshot();
  private final Words words = new Words(Locale.ENGLISH);
  private final Numbers numbers = new Numbers(Locale.ENGLISH);
  private final BenchView.TripPicture picture = new TripPresenter(words, numbers).trip(now);

  @Test
  void namesTheCurrentThatTheTripNames() {
    assertThat((double) Collections.max(now.trip().captureA()))
        .isGreaterThanOrEqualTo(now.trip().value() - 1e-6);
    assertThat(picture.sentence()).contains(numbers.amps(now.trip().value()).toString());
  }

  @Test
  void theTraceDoesNotCrossTheLimitBeforeTheLineThatSaysSo() {
    Palette palette = Palette.of(WindowOptions.Theme.LIGHT);
    TripCanvas canvas = new TripCanvas(palette, words, numbers);
    canvas.show(picture);
    BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    canvas.component().setSize(WIDTH, HEIGHT);
    canvas.component().paint(g);
    g.dispose();
    int outside = new Color(palette.outside()).getRGB();
    int first = WIDTH;
    for (int x = 0; x < WIDTH; x++) {
      for (int y = 0; y < HEIGHT; y++) {
        if (image.getRGB(x, y) == outside) {
          first = Math.min(first, x);
        }
      }
    }
    double left = 16;
    double zero =
        left + -picture.fromMs() / (picture.toMs() - picture.fromMs()) * (WIDTH - 2 * left);
    assertThat((double) first).isBetween(zero - 0.5, zero + 5);
  }
}
