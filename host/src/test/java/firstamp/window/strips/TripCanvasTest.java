package firstamp.window.strips;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.WindowOptions;
import firstamp.bench.Snapshot;
import firstamp.model.TripCause;
import firstamp.window.FakeSession;
import firstamp.window.present.BenchView;
import firstamp.window.present.TripPresenter;
import firstamp.window.widgets.Palette;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class TripCanvasTest {
  private static final int WIDTH = 1000;
  private static final int HEIGHT = 420;

  private final Snapshot now = new FakeSession(FakeSession.Scene.SHORT).snapshot();
  private final Words words = new Words(Locale.ENGLISH);
  private final Numbers numbers = new Numbers(Locale.ENGLISH);
  private final BenchView.TripPicture picture = new TripPresenter(words, numbers).trip(now);

  @Test
  void namesTheCurrentThatTheTripNames() {
    assertThat((double) Collections.max(now.findings().trip().captureA()))
        .isGreaterThanOrEqualTo(now.findings().trip().value() - 1e-6);
    assertThat(picture.sentence()).contains(numbers.amps(now.findings().trip().value()).toString());
  }

  @Test
  void theTraceDoesNotCrossTheLimitBeforeTheLineThatSaysSo() {
    double zero = zero(picture);
    assertThat(firstRed(picture)).isBetween(zero - 0.5, zero + 5);
  }

  private Snapshot.TripView like(TripCause cause, double crossedToOffMs, List<Float> amps) {
    Snapshot.TripView trip = now.findings().trip();
    return new Snapshot.TripView(
        trip.number(),
        cause,
        trip.railName(),
        trip.atMs(),
        trip.value(),
        trip.atMost(),
        1.0,
        "A",
        crossedToOffMs,
        amps,
        -10,
        0.25,
        trip.highest(),
        trip.selfTestBits());
  }

  /** The surge was over the running limit before that one acted: nothing is red until it does. */
  @Test
  void aRunningLimitThatBeginsToActIsNoLimitCrossed() {
    BenchView.TripPicture stalled =
        new TripPresenter(words, numbers)
            .picture(like(TripCause.RUNNING, 0.55, Collections.nCopies(128, 1.5f)));
    assertThat(stalled.zero()).isEqualTo(BenchView.TripZero.BEGINS);
    assertThat(stalled.sentence()).contains("running limit acts").doesNotContain("crossed");
    assertThat(firstRed(stalled)).isBetween(zero(stalled) - 0.5, zero(stalled) + 5);
  }

  /** A clip that came off, a silent computer: no limit was crossed, so zero is the opening. */
  @ParameterizedTest
  @EnumSource(
      value = TripCause.class,
      names = {"CHASSIS_CLIP", "HOST_SILENCE", "SELF_TEST"})
  void whereNoLimitWasCrossedNoneIsShown(TripCause cause) {
    BenchView.TripPicture lost =
        new TripPresenter(words, numbers).picture(like(cause, 2, Collections.nCopies(128, 0.1f)));
    assertThat(lost.zero()).isEqualTo(BenchView.TripZero.OPEN);
    assertThat(lost.sentence()).doesNotContain("crossed");
    assertThat(lost.offMs()).isZero();
    assertThat(lost.firstMs()).isEqualTo(-12);
    assertThat(words.get("trip.picture.axis." + lost.zero().key())).contains("switch open");
  }

  /** Widths that the picture has on small screens. */
  @ParameterizedTest
  @ValueSource(ints = {640, 730, 830, 1000})
  void theSentenceKeepsItsEndInBothLanguages(int width) {
    for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
      Words own = new Words(locale);
      Numbers figures = new Numbers(locale);
      Palette palette = Palette.of(WindowOptions.Theme.LIGHT);
      TripCanvas canvas = new TripCanvas(palette, own, figures);
      canvas.show(new TripPresenter(own, figures).trip(now));
      BufferedImage image = new BufferedImage(width, HEIGHT, BufferedImage.TYPE_INT_RGB);
      Graphics2D g = image.createGraphics();
      canvas.component().setSize(width, HEIGHT);
      canvas.component().paint(g);
      g.dispose();
      int ground = new Color(palette.surface()).getRGB();
      for (int x = width - 15; x < width; x++) {
        for (int y = 0; y < 56; y++) {
          assertThat(image.getRGB(x, y)).as("%s at %d, %d", locale, x, y).isEqualTo(ground);
        }
      }
    }
  }

  private static double zero(BenchView.TripPicture picture) {
    double left = 16;
    return left + -picture.fromMs() / (picture.toMs() - picture.fromMs()) * (WIDTH - 2 * left);
  }

  private double firstRed(BenchView.TripPicture shown) {
    Palette palette = Palette.of(WindowOptions.Theme.LIGHT);
    TripCanvas canvas = new TripCanvas(palette, words, numbers);
    canvas.show(shown);
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
    return first;
  }
}
