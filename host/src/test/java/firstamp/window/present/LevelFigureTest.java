package firstamp.window.present;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.bench.LookScale;
import firstamp.bench.Snapshot;
import firstamp.window.FakeSession;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** What was not measured is not called "not calibrated"; what was, is. */
class LevelFigureTest {
  private final LevelFigure figure =
      new LevelFigure(new Words(Locale.ENGLISH), new Numbers(Locale.ENGLISH));

  private static Snapshot with(Snapshot.Levels levels) {
    Snapshot now = new FakeSession(FakeSession.Scene.SHORT).snapshot();
    LookScale uncalibrated = new LookScale(60.0 / 1024, 330, null, false);
    return new Snapshot(
        now.phase(),
        now.kind(),
        now.powerUp(),
        now.label(),
        now.sheet(),
        now.notice(),
        now.countdownS(),
        now.times(),
        new Snapshot.Figures(0.1, 12.0, List.of(), levels),
        now.limits(),
        now.findings(),
        now.link(),
        now.log(),
        now.marks(),
        now.questions(),
        now.course(),
        now.replay(),
        new Snapshot.Beside(null, null, null, null, false, null, uncalibrated, List.of()));
  }

  @Test
  void nothingMeasuredIsNotCalledUncalibrated() {
    assertThat(figure.of(with(new Snapshot.Levels(null, null, null))).more())
        .doesNotContain("calibrated");
    assertThat(figure.of(with(new Snapshot.Levels(-60.0, null, -20.0))).more())
        .contains("60", "20")
        .endsWith("not calibrated");
  }
}
