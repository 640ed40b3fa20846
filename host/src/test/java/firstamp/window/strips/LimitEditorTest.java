package firstamp.window.strips;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.model.LimitKind;
import firstamp.run.LimitMove;
import firstamp.window.present.Limit;
import firstamp.window.widgets.LaneScale;
import java.util.List;
import org.junit.jupiter.api.Test;

class LimitEditorTest {
  private final LimitEditor editor = new LimitEditor();

  private static Limit limit(LimitKind kind, double value) {
    return new Limit(kind, 0, value, "limit", LaneScale.even(0, 3));
  }

  @Test
  void goesFromLimitToLimitAndLetsGoBehindTheLast() {
    List<Limit> limits = List.of(limit(LimitKind.RUNNING_A, 1), limit(LimitKind.SUPPLY_MAX_V, 13));
    editor.next(limits);
    assertThat(editor.held().kind()).isEqualTo(LimitKind.RUNNING_A);
    editor.next(limits);
    assertThat(editor.held().kind()).isEqualTo(LimitKind.SUPPLY_MAX_V);
    editor.next(limits);
    assertThat(editor.held()).isNull();
  }

  @Test
  void isAWishOnlyOnceItWasMoved() {
    editor.hold(limit(LimitKind.RUNNING_A, 1));
    assertThat(editor.take()).isNull();
    editor.hold(limit(LimitKind.RUNNING_A, 1));
    editor.nudge(-1);
    assertThat(editor.take()).isEqualTo(new LimitMove(LimitKind.RUNNING_A, 0, 0.95));
    assertThat(editor.held()).isNull();
  }

  @Test
  void everyStepMovesAndValuesAreRound() {
    editor.hold(limit(LimitKind.RUNNING_A, 0.12));
    double before = editor.value();
    for (int step = 0; step < 40; step++) {
      editor.nudge(-1);
      assertThat(editor.value()).isLessThan(before);
      before = editor.value();
    }
    assertThat(LimitEditor.rounded(0.8237)).isCloseTo(0.825, within(1e-12));
    assertThat(LimitEditor.rounded(13.17)).isCloseTo(13.0, within(1e-12));
  }

  @Test
  void neverMovesToZeroOrBelow() {
    editor.hold(limit(LimitKind.RUNNING_A, 1));
    editor.moveTo(-0.3);
    editor.moveTo(0);
    editor.moveTo(Double.NaN);
    assertThat(editor.value()).isEqualTo(1);
  }
}
